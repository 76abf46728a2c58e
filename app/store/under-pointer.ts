import { type Box, boardBox, moduleBox } from '../../src/index.ts';
import { marksOf } from '../canvas/draw/marks.ts';
import { hitPile, hitTest, SLOP } from '../canvas/hit-test.ts';
import type { Hit } from '../canvas/model.ts';
import { type Editor, shownAnalysis } from '../editor.ts';
import type { Point, Pointer } from '../tools/pointer.ts';
import { sheetNow, toSheet } from './view.ts';

/*
 * What lies under a pointer. Apart from `view.ts`, which the first picture needs and this it does not.
 */

const slopOf = ({ kind }: Pointer): number => (kind === 'touch' ? SLOP.touch : SLOP.mouse);

export function hitAt(editor: Editor, pointer: Pointer): Hit | null {
  const { x, y } = toSheet(editor, pointer);
  const { hidden } = editor.session.getState();
  return hitTest(sheetNow(editor), shownAnalysis(editor).derived, x, y, slopOf(pointer), hidden);
}

/** Everything under a pointer, the uppermost first. */
export function pileAt(editor: Editor, pointer: Pointer): Hit[] {
  const { x, y } = toSheet(editor, pointer);
  const { hidden } = editor.session.getState();
  return hitPile(sheetNow(editor), shownAnalysis(editor).derived, x, y, slopOf(pointer), hidden);
}

const holds = ({ left, right, top, bottom }: Box, { x, y }: Point): boolean =>
  x >= left && x <= right && y >= top && y <= bottom;

/** The module whose panel lies under a point, whatever lies over it. */
export function moduleUnder(editor: Editor, point: Point): string | null {
  const sheet = sheetNow(editor);
  const at = toSheet(editor, point);
  const { modules } = shownAnalysis(editor).derived.places;
  return modules.findLast((module) => holds(moduleBox(sheet, module), at))?.id ?? null;
}

/** The board that is drawn under a point, whatever lies over it; the front shows none. */
export function boardUnder(editor: Editor, point: Point): string | null {
  const { side, hidden } = editor.session.getState();
  if (side === 'front' || hidden.has('boards')) return null;
  const sheet = sheetNow(editor);
  const at = toSheet(editor, point);
  const { boards } = shownAnalysis(editor).derived.places;
  return boards.findLast((board) => holds(boardBox(sheet, board), at))?.id ?? null;
}

/** A mark's reach, px. */
const MARK_PX = 14;

/** Keys of the notes whose mark lies under a point, worst first. */
export function notesAt(editor: Editor, point: Point): string[] {
  const sheet = sheetNow(editor);
  const { x, y } = toSheet(editor, point);
  const { focus } = editor.session.getState();
  const isNear = (from: Point, reach: number) => (mark: Point) =>
    Math.hypot(mark.x - from.x, mark.y - from.y) <= reach;
  const { derived, notes } = shownAnalysis(editor);
  const mark = marksOf(sheet, derived, notes, focus).find(isNear({ x, y }, MARK_PX));
  if (!mark) return [];
  return notes
    .filter((note) => marksOf(sheet, derived, [note], focus).some(isNear(mark, 2 * MARK_PX)))
    .map(({ key }) => key);
}
