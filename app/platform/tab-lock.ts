/** A hold on a name that one tab alone can have, or a wait for it. */
export interface Grip {
  /** Whether it is held; answers when that is known. */
  readonly held: Promise<boolean>;
  /** Lets go, or waits no longer. */
  release(): void;
}

/** now: at once or not at all. when-free: as soon as nobody has it. from-other: away from whoever has it. */
export type HowToTake = 'now' | 'when-free' | 'from-other';

export interface TabLock {
  /** @param lost - told when another tab has taken it away */
  take(name: string, how: HowToTake, lost: () => void): Grip;
}

const PREFIX = 'ribbonwright/';

/** Where the browser has no locks every tab may write: the epochs in the records make the one that came last the writer. */
const noLocks: TabLock = {
  take: (_name, how) => ({
    held: how === 'when-free' ? new Promise(() => {}) : Promise.resolve(true),
    release: () => {},
  }),
};

const OPTIONS: Readonly<Record<HowToTake, LockOptions>> = {
  now: { ifAvailable: true },
  'when-free': {},
  'from-other': { steal: true },
};

export function browserTabLock(locks: LockManager | null = navigator.locks ?? null): TabLock {
  if (!locks) return noLocks;
  return {
    take(name, how, lost) {
      const end = new AbortController();
      const released = new Promise<void>((resolve) => {
        end.signal.addEventListener('abort', () => resolve());
      });
      // A request that waits is called off by its signal; the other sorts answer at once and may have none.
      const options = how === 'when-free' ? { signal: end.signal } : OPTIONS[how];
      const held = new Promise<boolean>((resolve) => {
        let isHeld = false;
        const hold = (lock: Lock | null): Promise<void> | undefined => {
          if (!lock || end.signal.aborted) {
            resolve(false);
            return undefined;
          }
          isHeld = true;
          resolve(true);
          return released;
        };
        locks.request(PREFIX + name, options, hold).catch(() => {
          if (isHeld && !end.signal.aborted) lost();
          resolve(false);
        });
      });
      return { held, release: () => end.abort() };
    },
  };
}
