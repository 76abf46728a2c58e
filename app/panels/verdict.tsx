import { useSyncExternalStore } from 'react';
import { firstChecks, verdictOf } from '../../src/index.ts';
import { useAnalysis, useEditor } from '../hooks.ts';
import { checksInUse } from '../store/analysis.ts';
import { LevelMark } from './icon.tsx';
import { useShownNotes } from './use-notes.ts';

/** How the take stands, in words; live while something is dragged. */
export function VerdictLine() {
  const { gestures } = useEditor();
  const still = useAnalysis();
  const text = useSyncExternalStore(gestures.inWords.subscribe, () => {
    const { notes, derived } = gestures.inWords.get() ?? still;
    return verdictOf(notes, derived).text;
  });
  const worst = useShownNotes((notes) => {
    const { damage, faults, state } = verdictOf(notes);
    if (damage > 0) return 'damage';
    if (faults > 0) return 'fault';
    return state === 'incomplete' ? 'reminder' : null;
  });
  // Nothing is said to be without conflict before all checks have looked.
  const isJudged = useSyncExternalStore(checksInUse.subscribe, checksInUse.get) !== firstChecks;
  return (
    <p className="verdict">
      {worst && <LevelMark level={worst} />}
      <span>{isJudged || worst === 'damage' ? text : 'Checking…'}</span>
    </p>
  );
}
