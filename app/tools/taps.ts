import type { Clock } from '../platform/clock.ts';
import { hasWandered, type Pointer } from './pointer.ts';

/** How long after a tap another one at the same place makes it a double tap, ms; common practice, no source. */
const DOUBLE_MS = 350;

/** How a tap follows the one before it: not at its place, at once, or there again after a while. */
type Tap = 'first' | 'double' | 'again';

export interface Taps {
  tell(pointer: Pointer): Tap;
  /** What comes next follows nothing. */
  forget(): void;
}

export function createTaps(clock: Clock): Taps {
  let last: Pointer | null = null;
  let isQuick = false;
  let stop = (): void => {};

  return {
    tell(pointer) {
      const isThere = last !== null && last.kind === pointer.kind && !hasWandered(last, pointer);
      const tap = !isThere ? 'first' : isQuick ? 'double' : 'again';
      stop();
      last = pointer;
      isQuick = tap !== 'double';
      stop = clock.after(DOUBLE_MS, () => {
        isQuick = false;
      });
      return tap;
    },
    forget() {
      stop();
      last = null;
      isQuick = false;
    },
  };
}
