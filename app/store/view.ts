import { layOutSheet, mmOf, mmToHp, rowAt, type Sheet } from '../../src/index.ts';
import type { Viewport } from '../canvas/model.ts';
import { clampViewport, fitViewport, type Insets } from '../canvas/viewport.ts';
import { type Editor, shownAnalysis } from '../editor.ts';
import type { Point } from '../tools/pointer.ts';
import type { RailPlace } from '../tools/slide.ts';
import type { StageSize } from './session.ts';

/** Stages narrower than this have their notes and tray folded to the bottom; of usual text, px. */
const NARROW_PX = 760;

const hasNoMargin = ({ width, text }: StageSize): boolean => width < NARROW_PX * text;

export const isNarrow = (stage: StageSize): boolean => stage.width > 0 && hasNoMargin(stage);

/** What the margin covers of a wide stage: notes and title block, of usual text, and the ground around them. */
const MARGIN_PX = 330;
const AROUND_MARGIN_PX = 32;

export const insetsOf = (stage: StageSize): Insets =>
  hasNoMargin(stage)
    ? { top: 0, right: 0, bottom: 0, left: 0 }
    : { top: 0, right: MARGIN_PX * stage.text + AROUND_MARGIN_PX, bottom: 12, left: 12 };

/** Share of a narrow stage that an open fold covers. */
const FOLD_SHARE = 0.55;

/** What panels cover of the stage at this moment. */
export function freeStage({ session }: Editor): Insets {
  const { stage, fold } = session.getState();
  const insets = insetsOf(stage);
  return fold !== null && hasNoMargin(stage) ? { ...insets, bottom: FOLD_SHARE * stage.height } : insets;
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
