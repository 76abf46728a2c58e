import { type ReactNode, useId, useState } from 'react';
import type { Edit } from '../../src/index.ts';
import { useEditor } from '../hooks.ts';
import { Problem } from '../kinds/field.tsx';
import { EffectLines } from './effect-lines.tsx';
import { useEffectOf } from './use-effect-of.ts';

interface Props {
  /** Nothing while something is amiss with what was typed. */
  readonly step: Edit | null;
  readonly label: string;
  /** It was to be done, and something is amiss. */
  readonly onAmiss?: () => void;
  readonly onDone: () => void;
  /** Spoken when it is done. */
  readonly said: string;
  /** Nothing has been changed yet: nothing is to be told. */
  readonly isIdle?: boolean;
  readonly children?: ReactNode;
}

/** Says what a step would affect, and carries it out: one step, one undo. */
export function StepBar({ step, label, onAmiss, onDone, said, isIdle = false, children }: Props) {
  const { layouts, session } = useEditor();
  const [refused, setRefused] = useState<string>();
  const { refusal, effect } = useEffectOf(isIdle ? null : step);
  const id = useId();
  const run = (): void => {
    if (!step) {
      onAmiss?.();
      return;
    }
    const done = layouts.run(step);
    setRefused(done.ok ? undefined : done.error);
    if (!done.ok) return;
    session.setState({ spoken: said });
    onDone();
  };
  const words = refusal ?? (isIdle ? undefined : refused);
  return (
    <div className="step-bar">
      <div className="words" aria-live="polite">
        <Problem id={id} words={words} />
        {effect && !words && <EffectLines effect={effect} />}
      </div>
      <div className="deeds">
        {children}
        <button
          type="button"
          className="do"
          aria-disabled={isIdle || undefined}
          onClick={() => !isIdle && run()}
        >
          {label}
        </button>
      </div>
    </div>
  );
}
