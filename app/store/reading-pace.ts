import type { Clock } from '../platform/clock.ts';

/** A hand that holds still from one look to the next wants to read. */
const LOOK_MS = 80;

/** While it moves words in the margin follow at least so often: nobody reads them, but they show that something changes. */
const LONGEST_MS = 400;

/** Something that a hand changes while a gesture runs; `null` before and after. */
interface Running<T> {
  get(): T | null;
  subscribe(listener: () => void): () => void;
}

/**
 * A running gesture as words tell it: its start and its end at once, what lies between whenever the hand
 * pauses; the drawing itself follows every move. Text that changes with every move cannot be read, and costs
 * layout and paint that the drag is in need of.
 * @param longestMs - told at least so often while the hand moves on
 */
export function atReadingPace<T>(source: Running<T>, clock: Clock, longestMs = LONGEST_MS): Running<T> {
  const listeners = new Set<() => void>();
  const nothing = (): void => {};
  let told: T | null = source.get();
  /** Looks now and then, which costs less than a timer for every move. */
  let endWatch = nothing;
  let seen: T | null = null;
  let looks = 0;

  const tell = (): void => {
    endWatch();
    endWatch = nothing;
    looks = 0;
    const now = source.get();
    if (now === told) return;
    told = now;
    for (const listener of listeners) listener();
  };

  const look = (): void => {
    const hasPaused = source.get() === seen;
    if (hasPaused || ++looks * LOOK_MS >= longestMs) tell();
    else watch();
  };
  const watch = (): void => {
    seen = source.get();
    endWatch = clock.after(LOOK_MS, look);
  };

  source.subscribe(() => {
    const isStartOrEnd = told === null || source.get() === null;
    if (isStartOrEnd) tell();
    else if (endWatch === nothing) watch();
  });

  return {
    get: () => told,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
