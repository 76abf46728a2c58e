import { fail, ok, type Result } from '../../src/index.ts';

/**
 * Why the browser did not keep or give something. blocked: it lets no page keep anything; full: no room; newer: a newer
 * version of this program has been here; broken: anything else.
 */
export type StorageFault = 'blocked' | 'full' | 'newer' | 'broken';

/** A thing on the shelf, by its id. What stands there may be of any age and make: whoever reads it looks at it closely. */
interface ShelfItem {
  readonly id: string;
}

/** What was there before a change, and what is there after it. */
interface Changed {
  readonly before: unknown;
  readonly after: unknown;
}

/** The browser's own keeping of layouts, and of other things that have ids. */
export interface Shelf {
  all(): Promise<Result<readonly unknown[], StorageFault>>;
  /** `undefined` where there is none of that id. */
  read(id: string): Promise<Result<unknown, StorageFault>>;
  /** Looks and writes in one go, so that nobody comes between; `null` leaves what is there. */
  change(id: string, next: (before: unknown) => ShelfItem | null): Promise<Result<Changed, StorageFault>>;
  /** Writes without a look, as the last thing that a page does; whether it arrives is not known. */
  putNow(item: ShelfItem): void;
  remove(id: string): Promise<Result<void, StorageFault>>;
  /** Asks the browser not to clear what is kept to make room. */
  persist(): Promise<boolean>;
}

/** Where things stand: a database of its own for each sort of thing. */
interface Room {
  readonly name: string;
  readonly store: string;
}

const LAYOUTS: Room = { name: 'ribbonwright', store: 'layouts' };
const VERSION = 1;

/** A browser that does not answer for so long will not, ms. */
const PATIENCE_MS = 8000;

const FAULTS: Readonly<Record<string, StorageFault>> = {
  QuotaExceededError: 'full',
  SecurityError: 'blocked',
  InvalidAccessError: 'blocked',
  // What some browsers say in a private window, a second time as well.
  InvalidStateError: 'blocked',
  TimeoutError: 'blocked',
  VersionError: 'newer',
};

const nameOf = (error: unknown): string =>
  typeof error === 'object' && error !== null && 'name' in error ? String(error.name) : '';

/** What a connection says that was closed behind the page's back, as some systems do to pages that rested long. */
const isDead = (error: unknown): boolean =>
  ['InvalidStateError', 'UnknownError', 'AbortError'].includes(nameOf(error));

function inTime<T>(promise: Promise<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new DOMException('no answer', 'TimeoutError')), PATIENCE_MS);
    promise.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}

function connect(
  factory: IDBFactory,
  { name, store }: Room,
  end: (base: IDBDatabase) => void,
): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = factory.open(name, VERSION);
    request.onupgradeneeded = () => request.result.createObjectStore(store, { keyPath: 'id' });
    request.onerror = () => reject(request.error);
    request.onsuccess = () => {
      const base = request.result;
      base.onclose = () => end(base);
      // A newer version of the program waits for this page to let go.
      base.onversionchange = () => end(base);
      resolve(base);
    };
  });
}

/** An answer means that it is on the disk, where the browser can be asked for that. */
const STRICT: IDBTransactionOptions = { durability: 'strict' };

type Work<T> = (store: IDBObjectStore, answer: (value: T) => void) => void;

function transact<T>(base: IDBDatabase, store: string, mode: IDBTransactionMode, work: Work<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    const transaction = base.transaction(store, mode, STRICT);
    let answer: T;
    transaction.oncomplete = () => resolve(answer);
    transaction.onabort = () => reject(transaction.error);
    work(transaction.objectStore(store), (value) => {
      answer = value;
    });
  });
}

/** Even to ask for the store throws where the browser forbids it, so it is asked for anew each time. */
export function browserShelf(factory: () => IDBFactory = () => window.indexedDB, room = LAYOUTS): Shelf {
  let opening: Promise<IDBDatabase> | null = null;
  let base: IDBDatabase | null = null;
  /** One that has died long ago must not take the one after it along. */
  const drop = (dead: IDBDatabase | null): void => {
    dead?.close();
    if (dead !== base) return;
    opening = null;
    base = null;
  };
  const open = async (): Promise<IDBDatabase> => {
    opening ??= connect(factory(), room, drop);
    base = await opening;
    return base;
  };

  async function attempt<T>(
    mode: IDBTransactionMode,
    work: Work<T>,
    again = true,
  ): Promise<Result<T, StorageFault>> {
    let used: IDBDatabase | null = null;
    const run = async (): Promise<T> => {
      used = await open();
      return transact(used, room.store, mode, work);
    };
    try {
      return ok(await inTime(run()));
    } catch (error) {
      drop(used);
      if (again && isDead(error)) return attempt(mode, work, false);
      if (error instanceof TypeError) return fail('blocked');
      return fail(FAULTS[nameOf(error)] ?? 'broken');
    }
  }

  return {
    all: () =>
      attempt<readonly unknown[]>('readonly', (store, answer) => {
        const request = store.getAll();
        request.onsuccess = () => answer(request.result);
      }),
    read: (id) =>
      attempt<unknown>('readonly', (store, answer) => {
        const request = store.get(id);
        request.onsuccess = () => answer(request.result);
      }),
    change: (id, next) =>
      attempt<Changed>('readwrite', (store, answer) => {
        const request = store.get(id);
        request.onsuccess = () => {
          const before: unknown = request.result;
          const after = next(before);
          if (after) store.put(after);
          answer({ before, after: after ?? before });
        };
      }),
    putNow(item) {
      try {
        const transaction = base?.transaction(room.store, 'readwrite', STRICT);
        transaction?.objectStore(room.store).put(item);
        transaction?.commit();
      } catch {
        // The page goes; there is nobody left to tell.
      }
    },
    remove: (id) =>
      attempt<void>('readwrite', (store) => {
        store.delete(id);
      }),
    async persist() {
      try {
        return (await navigator.storage.persisted()) || (await navigator.storage.persist());
      } catch {
        return false;
      }
    },
  };
}
