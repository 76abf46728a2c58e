import { type ReactNode, useEffect, useState } from 'react';
import { type DerivedTake, type Mend, mendsOf, type Note, seatRehearsed } from '../../src/index.ts';
import { perform, start } from '../actions/action.ts';
import { feedAllThatNeed } from '../actions/feed-all.ts';
import { rehearseSeat } from '../actions/rehearse.ts';
import { useAnalysis, useEditor, useGesture } from '../hooks.ts';
import { findMends, mendsKnown } from '../store/mend-search.ts';

interface Props {
  readonly note: Note;
  /** One is offered until the note is touched, then all, each with its reason. */
  readonly inFull: boolean;
  /** What else can be done with the note, at the end of its line. */
  readonly children?: ReactNode;
}

interface Found {
  readonly key: string;
  /** The take that they were found for: it may have changed since, for a moment. */
  readonly derived: DerivedTake;
  readonly mends: readonly Mend[];
}

/** What mends a note of the take as it stands in the document; none for one that only a gesture brings. */
function useMends({ key }: Note): Found | null {
  const editor = useEditor();
  const { derived, notes } = useAnalysis();
  const isMoving = useGesture(({ running }) => running);
  const [found, setFound] = useState<Found | null>(null);
  useEffect(() => {
    const standing = notes.find((note) => note.key === key);
    if (!standing) setFound(null);
    if (isMoving || !standing) return undefined;
    const show = (mends: readonly Mend[]) => setFound({ key, derived, mends });
    const before = mendsKnown(derived, standing);
    if (before) show(before);
    return before ? undefined : findMends(editor, derived, standing, show);
  }, [editor, derived, notes, key, isMoving]);
  return found?.key === key ? found : null;
}

/** The remedies that the program can carry out, each one tap and one undo; the words of the note where there is none. */
export function Mends({ note, inFull, children }: Props) {
  const editor = useEditor();
  const { derived, notes } = useAnalysis();
  const found = useMends(note);
  const unfed = notes.filter(({ check }) => check === 'unpowered');
  const seat = seatRehearsed(note, derived);
  const shown = found?.mends.slice(0, inFull ? undefined : 1) ?? [];
  const carryOut = ({ label, edit }: Mend) => {
    const isStale = found?.derived !== derived;
    const now = isStale ? mendsOf(derived, note).find((mend) => mend.label === label)?.edit : edit;
    if (now) perform(editor, now);
  };
  return (
    <>
      {shown.length === 0 && <p>{note.remedy}</p>}
      {shown.map((mend) => (
        <div key={mend.label} className="remedy">
          <button type="button" className="mend" onClick={() => carryOut(mend)}>
            {mend.label}
          </button>
          {inFull && mend.why && <p>{mend.why}</p>}
        </div>
      ))}
      {unfed.length > 1 && unfed[0]?.key === note.key && (
        <div className="remedy">
          <button type="button" className="mend" onClick={() => start(editor, feedAllThatNeed)}>
            {feedAllThatNeed.label(editor)}
          </button>
        </div>
      )}
      <span className="besides">
        <button
          type="button"
          className="put-away"
          onClick={() => editor.session.setState({ help: `check/${note.check}` })}
        >
          Why?
        </button>
        {seat && (
          <button type="button" className="put-away" onClick={() => rehearseSeat(editor, seat)}>
            Rehearse
          </button>
        )}
        {children}
      </span>
    </>
  );
}
