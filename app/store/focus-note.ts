import { type Note, spotsOf } from '../../src/index.ts';
import { xOf, yOf } from '../canvas/sheet.ts';
import { type Editor, shownAnalysis } from '../editor.ts';
import { freeStage, lookAt, sheetNow, viewportNow } from './view.ts';

/** Nearer to an edge than this counts as out of sight, px. */
const EDGE_PX = 24;

/** Brings the first place of a note into the middle of the free stage, if it is out of sight. */
function reveal(editor: Editor, note: Note): void {
  const [spot] = spotsOf(note, shownAnalysis(editor).derived);
  const row = spot && sheetNow(editor).rowById.get(spot.row);
  if (!row) return;
  const viewport = viewportNow(editor);
  const { stage } = editor.session.getState();
  const { left, right, top, bottom } = freeStage(editor);
  const x = viewport.x + xOf(row, spot.xMm);
  const y = viewport.y + yOf(row, spot.yMm);
  const outside = (at: number, from: number, to: number) => at < from + EDGE_PX || at > to - EDGE_PX;
  const [x1, y1] = [stage.width - right, stage.height - bottom];
  if (!outside(x, left, x1) && !outside(y, top, y1)) return;
  lookAt(editor, { ...viewport, x: viewport.x + (left + x1) / 2 - x, y: viewport.y + (top + y1) / 2 - y });
}

/** Lets the subjects of a note stand out, brings them into sight, and unfolds the notes where they are folded. */
export function focusNote(editor: Editor, note: Note): void {
  editor.session.setState({ focus: note.key, fold: 'notes' });
  reveal(editor, note);
}
