import type { PinEnd } from '../layout/layout.ts';
import type { Knot } from './knot.ts';
import type { Point } from './sheet.ts';

const TOWARDS: Record<PinEnd, readonly [x: number, y: number]> = {
  up: [0, -1],
  down: [0, 1],
  left: [-1, 0],
  right: [1, 0],
};

/** The tick that a connector bears at the stripe. */
export function tickCorners({ x, y, halfWidth, halfHeight }: Knot, end: PinEnd): Point[] {
  const [dx, dy] = TOWARDS[end];
  const size = Math.max(3.2, Math.min(halfWidth, halfHeight) * 0.72);
  const tipX = x + dx * (halfWidth - 1);
  const tipY = y + dy * (halfHeight - 1);
  const baseX = tipX - dx * size * 1.3;
  const baseY = tipY - dy * size * 1.3;
  return [
    { x: tipX, y: tipY },
    { x: baseX + dy * size, y: baseY + dx * size },
    { x: baseX - dy * size, y: baseY - dx * size },
  ];
}
