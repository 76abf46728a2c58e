import type { Moving, MovingStore } from '../canvas/model.ts';
import type { Clock } from '../platform/clock.ts';

/** A hand that holds still for so long wants to read. */
const PAUSE_MS = 80;

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
  let endPause = nothing;
  let endLongest = nothing;

  const tell = (): void => {
    endPause();
    endLongest();
    endLongest = nothing;
    const now = source.get();
    if (now === told) return;
    told = now;
    for (const listener of listeners) listener();
  };

  source.subscribe(() => {
    const isStartOrEnd = told === null || source.get() === null;
    if (isStartOrEnd) return tell();
    endPause();
    endPause = clock.after(PAUSE_MS, tell);
    if (endLongest === nothing) endLongest = clock.after(LONGEST_MS, tell);
  });

  return {
    get: () => told,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
