import { type Berth, headerBodyMm, socketBodyMm, waysOf, whyNotOn } from '../../src/index.ts';
import type { Place } from '../canvas/model.ts';
import { type Editor, shownAnalysis } from '../editor.ts';
import { NO_STARTS } from '../store/hints.ts';
import { berthsThat } from './berths.ts';
import { inHandOf } from './in-hand.ts';

function placeOf({ on, row, xMm, yMm }: Berth): Place {
  const { longMm, wideMm } =
    on.type === 'header'
      ? headerBodyMm(on.header.bus.pins, on.header.keyed)
      : socketBodyMm(waysOf(on.ribbon, on.connector));
  const lies = on.type === 'header' && on.header.axis === 'horizontal';
  const [x, y] = lies ? [longMm, wideMm] : [wideMm, longMm];
  return { row: row.index, xMm, yMm, halfXMm: x / 2, halfYMm: y / 2 };
}

/** Where the ribbon in hand can start; none on the front, where nothing is wired. */
function startsNow(editor: Editor): readonly Place[] {
  const { inHand, side } = editor.session.getState();
  const held = inHandOf(inHand, editor.layouts.layout().kit);
  if (held?.type !== 'ribbon' || side === 'front') return NO_STARTS;
  const { derived } = shownAnalysis(editor);
  const facts = derived.kit.ribbons.get(held.kind.id);
  return facts ? berthsThat(editor, ({ on }) => !whyNotOn(derived, facts, on)).map(placeOf) : NO_STARTS;
}

/** Keeps the places on which the ribbon in hand can start marked: found when it is taken up, not while it moves. */
export function markStarts(editor: Editor): () => void {
  const { session, layouts, hints } = editor;
  const mark = (): void => {
    const starts = startsNow(editor);
    if (starts.length > 0 || hints.getState().starts.length > 0) hints.setState({ starts });
  };
  const ends = [
    session.subscribe((now, then) => {
      if (now.inHand !== then.inHand || now.side !== then.side || now.take !== then.take) mark();
    }),
    layouts.store.subscribe((now, then) => {
      if (now.history.present !== then.history.present) mark();
    }),
  ];
  mark();
  return () => {
    for (const end of ends) end();
    hints.setState({ starts: NO_STARTS });
  };
}
