import type { JointTarget, Point as SheetPoint } from '../../src/index.ts';
import { placeBox } from '../canvas/draw/aim.ts';
import { gripOn, SLOP } from '../canvas/hit-test.ts';
import type { Hit } from '../canvas/model.ts';
import { type Editor, shownAnalysis } from '../editor.ts';
import { ribbonsIn } from '../store/selection.ts';
import { sheetNow, toSheet } from '../store/view.ts';
import type { Point, Pointer } from './pointer.ts';

export type Grip = Extract<Hit, { type: 'ribbon' }>;

/** Where a pointer is on a selected ribbon: it is drawn above all others, and so it is taken hold of first. */
export function gripAt(editor: Editor, pointer: Pointer): Grip | null {
  const { selection, side } = editor.session.getState();
  const { derived } = shownAnalysis(editor);
  if (side === 'front') return null;
  const slop = pointer.kind === 'touch' ? SLOP.touch : SLOP.mouse;
  const [sheet, point] = [sheetNow(editor), toSheet(editor, pointer)];
  for (const { id } of ribbonsIn(derived.take, selection).toReversed()) {
    const ribbon = derived.wiring.ribbonById.get(id);
    const grip = ribbon && gripOn(sheet, derived, ribbon, point, slop);
    if (grip) return grip;
  }
  return null;
}

/** The middle of something that a connector could sit on, px of the sheet. */
export function placePoint(editor: Editor, place: JointTarget): SheetPoint | undefined {
  const box = placeBox(sheetNow(editor), shownAnalysis(editor).derived, place);
  return box && { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 };
}

/** The nearest of some places, if it is within so many px of a point of the stage. */
export function nearestPlace(
  editor: Editor,
  places: readonly JointTarget[],
  point: Point,
  reachPx: number,
): JointTarget | undefined {
  const at = toSheet(editor, point);
  let [nearest, least]: [JointTarget | undefined, number] = [undefined, reachPx];
  for (const place of places) {
    const middle = placePoint(editor, place);
    const off = middle ? Math.hypot(middle.x - at.x, middle.y - at.y) : Number.POSITIVE_INFINITY;
    if (off <= least) [nearest, least] = [place, off];
  }
  return nearest;
}
