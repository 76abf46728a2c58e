import type { JointTarget, Point } from '../../src/index.ts';
import { drawAim } from '../canvas/draw/aim.ts';
import type { Overlay } from '../canvas/model.ts';
import type { RibbonEnd } from '../store/aim.ts';

/**
 * Draws, over what moves, a connector in hand and what it could sit on.
 * @param heldAt - where it hangs while it is over nothing, CSS px of the sheet
 */
export const aimAt = (
  { ribbon, connector }: RibbonEnd,
  places: readonly JointTarget[],
  heldAt?: Point,
): Overlay => ({
  draw: (ctx, paper, take) =>
    drawAim(ctx, paper, take, { ribbon: ribbon.id, connector, places, ...(heldAt && { heldAt }) }),
});
