import { useSyncExternalStore } from 'react';
import type { Level, Verdict } from '../../src/index.ts';
import { useAnalysis, useEditor } from '../hooks.ts';
import { judging } from '../store/analysis.ts';
import { LevelMark } from './icon.tsx';

/** How the take stands, in words; live while something is dragged. */
export function VerdictLine() {
  const { gestures } = useEditor();
  const still = useAnalysis();
  const judge = useSyncExternalStore(judging.subscribe, judging.get);
  const moving = useSyncExternalStore(gestures.inWords.subscribe, gestures.inWords.get);
  const { notes, derived } = moving ?? still;
  // Nothing is said to be without conflict before the checks have looked.
  const verdict = judge?.verdictOf(notes, derived);
  const worst = verdict && worstOf(verdict);
  return (
    <p className="verdict">
      {worst && <LevelMark level={worst} />}
      <span>{verdict?.text ?? 'Checking…'}</span>
    </p>
  );
}

function worstOf({ damage, faults, state }: Verdict): Level | null {
  if (damage > 0) return 'damage';
  if (faults > 0) return 'fault';
  return state === 'incomplete' ? 'reminder' : null;
}
