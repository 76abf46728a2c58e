import type { Pointer, Tool } from '../tools/pointer.ts';
import { downward, type Facing, rightward } from './facing.ts';
import { movedBy, type Position, type Reach } from './position.ts';

export interface PlugDrag {
  /** Where it is when it is taken hold of. */
  readonly from: Position;
  readonly reach: Reach;
  readonly facing: Facing;
  /** From one pin to the next on the screen, px. */
  readonly pitch: { readonly x: number; readonly y: number };
  readonly show: (position: Position) => void;
}

/** A connector in the hand: it snaps from pin to pin, stays where it is let go, and springs back when called off. */
export function plugDrag({ from, reach, facing, pitch, show }: PlugDrag): Tool {
  let start: Pointer | null = null;
  return {
    down(pointer) {
      start = pointer;
    },
    move(pointer) {
      if (!start) return;
      const right = Math.round((pointer.x - start.x) / pitch.x);
      const down = Math.round((pointer.y - start.y) / pitch.y);
      show(movedBy(from, right * rightward(facing), down * downward(facing), reach));
    },
    up() {
      start = null;
    },
    cancel() {
      if (start) show(from);
      start = null;
    },
  };
}
