import type { Moving, MovingStore } from '../canvas/model.ts';
import type { Clock } from '../platform/clock.ts';

/** Words that change faster cannot be read; the drawing itself follows every move. */
const PACE_MS = 100;

/**
 * A running gesture as the margin tells it: its start and its end at once, what lies between ten times a
 * second. Text that changes with every move costs layout and paint that the drag is in need of.
 */
export function atReadingPace(source: MovingStore, clock: Clock): MovingStore {
  const listeners = new Set<() => void>();
  let told: Moving | null = source.get();
  let endPause: (() => void) | null = null;

  const tell = (): void => {
    endPause?.();
    endPause = null;
    const now = source.get();
    if (now === told) return;
    told = now;
    if (now) endPause = clock.after(PACE_MS, tell);
    for (const listener of listeners) listener();
  };

  source.subscribe(() => {
    if (endPause === null || source.get() === null) tell();
  });

  return {
    get: () => told,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
