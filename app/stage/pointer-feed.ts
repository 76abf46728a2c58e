import type { Pointer } from '../tools/pointer.ts';

interface RawPointer {
  readonly pointerId: number;
  readonly pointerType: string;
  readonly clientX: number;
  readonly clientY: number;
  readonly button: number;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
}

const kindOf = (type: string): Pointer['kind'] => (type === 'touch' || type === 'pen' ? type : 'mouse');

/** A browser's event as tools read it. */
export const pointerOf = (
  event: RawPointer,
  stage: { readonly left: number; readonly top: number },
): Pointer => ({
  id: event.pointerId,
  kind: kindOf(event.pointerType),
  x: event.clientX - stage.left,
  y: event.clientY - stage.top,
  button: event.button,
  shift: event.shiftKey,
  alt: event.altKey,
  mod: event.ctrlKey || event.metaKey,
});

export interface FrameFeed {
  /** @param at - when it happened, ms on the clock of the browser's events */
  push(pointer: Pointer, at: number): void;
  /** Hands over what waits, before something that must come after it. */
  flush(): void;
  drop(): void;
}

/** Moves that come no faster are handed on at once: browsers send them with the frame that will show them. */
const FRAME_MS = 7;

/** Hands on the last move of each pointer about once a frame: some mice send many more than a screen shows. */
export function createFrameFeed(take: (pointer: Pointer) => void): FrameFeed {
  const waiting = new Map<number, Pointer>();
  let frame = 0;
  let last = Number.NEGATIVE_INFINITY;
  const drop = (): void => {
    cancelAnimationFrame(frame);
    frame = 0;
    waiting.clear();
  };
  const flush = (): void => {
    const moves = [...waiting.values()];
    drop();
    for (const move of moves) take(move);
  };
  return {
    push(pointer, at) {
      const isNext = waiting.size === 0 && at - last >= FRAME_MS;
      last = at;
      if (isNext) {
        take(pointer);
        return;
      }
      waiting.set(pointer.id, pointer);
      if (frame === 0) frame = requestAnimationFrame(flush);
    },
    flush,
    drop,
  };
}
