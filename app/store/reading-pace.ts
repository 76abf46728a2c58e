import type { Moving, MovingStore } from '../canvas/model.ts';
import type { Clock } from '../platform/clock.ts';

/** A hand that holds still from one look to the next wants to read. */
const LOOK_MS = 80;

/** While it moves words follow at least so often: nobody reads them, but they show that something changes. */
const LONGEST_MS = 400;

/**
 * A running gesture as the margin tells it: its start and its end at once, what lies between whenever the hand
 * pauses; the drawing itself follows every move. Text that changes with every move cannot be read, and costs
 * layout and paint that the drag is in need of.
 */
export function atReadingPace(source: MovingStore, clock: Clock): MovingStore {
  const listeners = new Set<() => void>();
  const nothing = (): void => {};
  let told: Moving | null = source.get();
  /** Looks now and then, which costs less than a timer for every move. */
  let endWatch = nothing;
  let seen: Moving | null = null;
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
    if (hasPaused || ++looks * LOOK_MS >= LONGEST_MS) tell();
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
