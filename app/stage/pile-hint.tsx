import { useSession } from '../hooks.ts';

/** Beside a tap: how many things lie there, which of them is selected, and how to come to the next. */
export function PileHint() {
  const pile = useSession((session) => session.pile);
  const isTold = useSession((session) => session.pile?.selection === session.selection);
  if (!pile || !isTold) return null;
  const { x, y, at, of } = pile;
  return (
    <p className="pile-hint" aria-hidden="true" style={{ left: `min(${x}px, 100% - 240px)`, top: y }}>
      <b>
        {at} of {of}
      </b>{' '}
      here · tap again for the next
    </p>
  );
}
