import type { KeyboardEvent, ReactNode, RefObject } from 'react';
import { useEditor } from '../hooks.ts';
import '../style/fold-panel.css';
import { useKeysWhileOpen } from './use-keys-while-open.ts';

interface Props {
  readonly title: string;
  /** What it is called where the title alone would not tell. */
  readonly label?: string;
  /** Classes of its own. */
  readonly name?: string;
  readonly ref?: RefObject<HTMLElement | null>;
  /** A key that it takes for itself; whether it did. */
  readonly onKey?: (event: KeyboardEvent<HTMLElement>) => boolean;
  readonly children: ReactNode;
}

/** A panel beside the drawing that has the keys while it is open, and gives them back when it goes. */
export function FoldPanel({ title, label = title, name, ref: given, onKey, children }: Props) {
  const { session } = useEditor();
  const { ref, giveBack } = useKeysWhileOpen(given);
  const close = (): void => {
    giveBack();
    session.setState({ fold: null });
  };
  return (
    <section
      ref={ref}
      className={name === undefined ? 'fold-panel' : `fold-panel ${name}`}
      aria-label={label}
      tabIndex={-1}
      onKeyDown={(event) => {
        const isTaken = onKey?.(event) ?? false;
        if (event.key !== 'Escape' && !isTaken) return;
        event.stopPropagation();
        if (!isTaken) close();
      }}
    >
      <div className="fold-head">
        <h2>{title}</h2>
        <button type="button" className="plain" onClick={close}>
          Done
        </button>
      </div>
      {children}
    </section>
  );
}
