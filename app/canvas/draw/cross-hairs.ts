import type { Point } from '../../../src/index.ts';
import type { Context } from './paper.ts';

const ARMS = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
] as const;

/** Four arms about a point, each from so far to so far out, px. */
export function addCrossHairs(ctx: Context, { x, y }: Point, from: number, to: number): void {
  for (const [dx, dy] of ARMS) {
    ctx.moveTo(x + dx * from, y + dy * from);
    ctx.lineTo(x + dx * to, y + dy * to);
  }
}
