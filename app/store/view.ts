import { mmToHp } from '../../src/index.ts';
import { marksOf } from '../canvas/draw/marks.ts';
import { hitPile, hitTest, SLOP } from '../canvas/hit-test.ts';
import type { Hit, Size, Viewport } from '../canvas/model.ts';
import { type Box, layOutSheet, mmOf, moduleBox, rowAt, type Sheet } from '../canvas/sheet.ts';
import { clampViewport, fitViewport, type Insets } from '../canvas/viewport.ts';
import { type Editor, shownAnalysis } from '../editor.ts';
import type { Point, Pointer } from '../tools/pointer.ts';
import type { RailPlace } from '../tools/slide.ts';

/** Stages narrower than this have their notes and tray folded to the bottom. */
export const NARROW_PX = 760;

/** What the margin covers of a wide stage: notes, title block and the ground around them. */
const MARGIN_PX = 362;

export const insetsOf = ({ width }: Size): Insets =>
  width < NARROW_PX
    ? { top: 0, right: 0, bottom: 0, left: 0 }
    : { top: 0, right: MARGIN_PX, bottom: 12, left: 12 };

/** Share of a narrow stage that an open fold covers. */
const FOLD_SHARE = 0.55;

/** What panels cover of the stage at this moment. */
export function freeStage({ session }: Editor): Insets {
  const { stage, fold } = session.getState();
  const insets = insetsOf(stage);
  return fold !== null && stage.width < NARROW_PX ? { ...insets, bottom: FOLD_SHARE * stage.height } : insets;
}

/** Where the sheet lies now, fitted unless it was moved. */
export function viewportNow(editor: Editor): Viewport {
  const { viewport, side, stage } = editor.session.getState();
  return viewport ?? fitViewport(shownAnalysis(editor).derived.places.rows, side, stage, insetsOf(stage));
}

/** Moves the sheet, but never out of sight. */
export function lookAt(editor: Editor, viewport: Viewport): void {
  const { stage } = editor.session.getState();
  const { rows } = shownAnalysis(editor).derived.places;
  editor.session.setState({ viewport: clampViewport(viewport, rows, stage, insetsOf(stage)) });
}

/** The sheet as it stands in the document, at the scale of the viewport. */
export function sheetNow(editor: Editor): Sheet {
  return layOutSheet(
    shownAnalysis(editor).derived,
    editor.session.getState().side,
    viewportNow(editor).scale,
  );
}

export function toSheet(editor: Editor, { x, y }: Point): Point {
  const viewport = viewportNow(editor);
  return { x: x - viewport.x, y: y - viewport.y };
}

/** The place on the rails under a point of the stage. */
export function railUnder(editor: Editor, point: Point): RailPlace | undefined {
  const { x, y } = toSheet(editor, point);
  const row = rowAt(sheetNow(editor), y);
  return row && { row: row.placed.index, atHp: mmToHp(mmOf(row, x)) };
}

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

/** A mark's reach, px. */
const MARK_PX = 14;

/** Keys of the notes whose mark lies under a point, worst first. */
export function notesAt(editor: Editor, point: Point): string[] {
  const sheet = sheetNow(editor);
  const { x, y } = toSheet(editor, point);
  const { focus } = editor.session.getState();
  const isNear = (from: Point, reach: number) => (mark: Point) =>
    Math.hypot(mark.x - from.x, mark.y - from.y) <= reach;
  const { notes } = shownAnalysis(editor);
  const mark = marksOf(sheet, notes, focus).find(isNear({ x, y }, MARK_PX));
  if (!mark) return [];
  return notes
    .filter((note) => marksOf(sheet, [note], focus).some(isNear(mark, 2 * MARK_PX)))
    .map(({ key }) => key);
}
