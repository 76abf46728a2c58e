import { type Note, type Point, spotsOf, xOf, yOf } from '../../src/index.ts';
import { type Editor, shownAnalysis } from '../editor.ts';
import { freeStage, lookAt, sheetNow, viewportNow } from './view.ts';

/** Nearer to an edge than this counts as out of sight, px. */
const EDGE_PX = 24;

/** Brings a place of the sheet, px, into the middle of the free stage, if it is out of sight. */
export function reveal(editor: Editor, spot: Point): void {
  const viewport = viewportNow(editor);
  const { stage } = editor.session.getState();
  const { left, right, top, bottom } = freeStage(editor);
  const x = viewport.x + spot.x;
  const y = viewport.y + spot.y;
  const outside = (at: number, from: number, to: number) => at < from + EDGE_PX || at > to - EDGE_PX;
  const [x1, y1] = [stage.width - right, stage.height - bottom];
  if (!outside(x, left, x1) && !outside(y, top, y1)) return;
  lookAt(editor, { ...viewport, x: viewport.x + (left + x1) / 2 - x, y: viewport.y + (top + y1) / 2 - y });
}

/** Lets the subjects of a note stand out, brings them into sight, and unfolds the notes where they are folded, but for By list, which holds them too. */
export function focusNote(editor: Editor, note: Note): void {
  const { fold } = editor.session.getState();
  editor.session.setState({ focus: note.key, fold: fold === 'list' ? fold : 'notes' });
  const [spot] = spotsOf(note, shownAnalysis(editor).derived);
  const row = spot && sheetNow(editor).rowById.get(spot.row);
  if (row) reveal(editor, { x: xOf(row, spot.xMm), y: yOf(row, spot.yMm) });
}
