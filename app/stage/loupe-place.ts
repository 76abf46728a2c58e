import type { Box } from '../../src/index.ts';
import type { Point } from '../tools/pointer.ts';

/** Width and height of the loupe, CSS px. */
export const LOUPE_PX = 124;

/** Between a finger's point and the loupe, and between the loupe and the edges, px. */
const OFF_PX = 36;
const EDGE_PX = 8;

const clamp = (value: number, least: number, most: number): number => Math.max(least, Math.min(value, most));

/** Where the loupe lies, px of the stage: above the finger, or beside it where there is no room above. */
export function loupePlace({ x, y }: Point, stage: { readonly width: number; readonly height: number }): Box {
  const box = (left: number, top: number): Box => {
    const [within, below] = [
      clamp(left, EDGE_PX, stage.width - LOUPE_PX - EDGE_PX),
      clamp(top, EDGE_PX, stage.height - LOUPE_PX - EDGE_PX),
    ];
    return { left: within, top: below, right: within + LOUPE_PX, bottom: below + LOUPE_PX };
  };
  if (y - OFF_PX - LOUPE_PX >= EDGE_PX) return box(x - LOUPE_PX / 2, y - OFF_PX - LOUPE_PX);
  // A right hand hides what lies right of its finger.
  const hasLeft = x - OFF_PX - LOUPE_PX >= EDGE_PX;
  return box(hasLeft ? x - OFF_PX - LOUPE_PX : x + OFF_PX, y - LOUPE_PX / 2);
}
