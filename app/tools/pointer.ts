/** CSS px from the stage's top left corner. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** What a tool needs to know of a mouse, pen or finger; made from a browser's event or by a test. */
export interface Pointer extends Point {
  readonly id: number;
  readonly kind: 'mouse' | 'pen' | 'touch';
  /** 0: main, 1: middle. */
  readonly button: number;
  readonly shift: boolean;
  readonly alt: boolean;
  /** Ctrl, or the command key. */
  readonly mod: boolean;
}

/** A state machine that a pressed pointer drives until it is let go. */
export interface Tool {
  down(pointer: Pointer): void;
  move(pointer: Pointer): void;
  up(pointer: Pointer): void;
  /** Escape, a pointer taken away and a window left behind all come here: everything is as before. */
  cancel(): void;
  /** Whether a key means something meanwhile. */
  press?(key: string): boolean;
}

/** How far a press may wander and still be a tap. */
const SLOP_PX = { mouse: 4, pen: 6, touch: 10 } as const;

export const hasWandered = (from: Pointer, to: Pointer): boolean =>
  Math.hypot(to.x - from.x, to.y - from.y) > SLOP_PX[from.kind];
