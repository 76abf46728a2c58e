import type { Clock } from '../platform/clock.ts';
import type { Offline } from '../platform/service-worker.ts';
import type { Keeper, KeepStore } from '../store/keep.ts';

/** A new version that does not take over in so long is loaded all the same, ms. */
const PATIENCE_MS = 4000;

interface Doors {
  readonly offline: Offline;
  readonly keep: KeepStore;
  readonly keeper: Pick<Keeper, 'flush'>;
  readonly clock: Clock;
  readonly tell: (banner: string) => void;
  readonly reload: () => void;
}

/**
 * Offers a new version when it is ready, and loads it when it is wanted here or in another tab: parts of the program that
 * were not loaded yet are gone with the old one. What is not saved is saved before, and where it cannot be the page stays.
 */
export function followUpdates({ offline, keep, keeper, clock, tell, reload }: Doors): void {
  let isLeaving = false;
  const leave = async (): Promise<void> => {
    if (isLeaving) return;
    isLeaving = true;
    if (await keeper.flush()) {
      reload();
      return;
    }
    isLeaving = false;
    tell('A new version is ready, but the layout is not saved. Save it as a file, then load the page again.');
  };
  void offline.start({
    ready(updates) {
      const update = async (): Promise<void> => {
        if (!(await keeper.flush())) {
          tell('The layout is not saved. Save it as a file before you load the new version.');
          return;
        }
        updates.switch();
        clock.after(PATIENCE_MS, () => void leave());
      };
      keep.setState({ update: () => void update() });
    },
    switched: () => void leave(),
  });
}
