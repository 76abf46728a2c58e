import type { Address } from '../../app/platform/address.ts';
import type { Channel } from '../../app/platform/channel.ts';
import type { Clipboard, ClipboardEar } from '../../app/platform/clipboard.ts';
import type { Clock } from '../../app/platform/clock.ts';
import type { Files } from '../../app/platform/files.ts';
import type { Journal, JournalEntry } from '../../app/platform/journal.ts';
import type { Going, PageLife } from '../../app/platform/page-life.ts';
import type { Photographs } from '../../app/platform/photographs.ts';
import type { Preferences } from '../../app/platform/preferences.ts';
import type { Shelf, StorageFault } from '../../app/platform/storage.ts';
import type { TabLock } from '../../app/platform/tab-lock.ts';
import { fail, ok } from '../../src/index.ts';

/** Time passes only when a test says so. */
export function fakeClock(): Clock & { pass(ms: number): void } {
  let now = 1_000_000;
  let waiting: { readonly at: number; readonly then: () => void }[] = [];
  return {
    now: () => now,
    after(ms, then) {
      const entry = { at: now + ms, then };
      waiting.push(entry);
      return () => {
        waiting = waiting.filter((other) => other !== entry);
      };
    },
    pass(ms) {
      now += ms;
      const due = waiting.filter(({ at }) => at <= now);
      waiting = waiting.filter(({ at }) => at > now);
      for (const { then } of due) then();
    },
  };
}

/** Keeps for as long as the page lives. */
export function fakePreferences(kept: Record<string, unknown> = {}): Preferences {
  return {
    read: (key) => ok(kept[key]),
    write: (key, value) => {
      kept[key] = value;
      return ok(undefined);
    },
  };
}

export function fakeJournal(): Journal & { readonly entries: Map<string, JournalEntry> } {
  const entries = new Map<string, JournalEntry>();
  return {
    entries,
    note: (entry) => void entries.set(entry.id, entry),
    of: (id) => entries.get(id),
    all: () => [...entries.values()],
    clear: (id) => void entries.delete(id),
  };
}

/** A clipboard of the test's own: `press` sends what the browser would send for its keys. */
export function fakeClipboard(): Clipboard & {
  text: string | null;
  press(key: 'copy' | 'cut' | 'paste'): void;
} {
  let ear: ClipboardEar | null = null;
  return {
    text: null,
    put(text) {
      this.text = text;
    },
    kept() {
      return this.text;
    },
    listen(other) {
      ear = other;
      return () => {
        ear = null;
      };
    },
    press(key) {
      if (key === 'paste') ear?.pasted(this.text ?? '');
      else this.text = (key === 'copy' ? ear?.copied() : ear?.cut()) ?? this.text;
    },
  };
}

/** Hands out one text and keeps what is saved. */
export function fakeFiles(text: string | null = null): Files & { readonly saved: Map<string, string> } {
  const saved = new Map<string, string>();
  return {
    saved,
    pick: async () => ok(text),
    read: async (file) => ok(await file.text()),
    save: async (title, content) => {
      saved.set(title, content);
      return ok(true);
    },
  };
}

/** Hands out one picture, whatever it is asked. */
export function fakePhotographs(): Photographs & { readonly shelf: ReturnType<typeof fakeShelf> } {
  const picture = { image: new Blob(['picture']), widthPx: 100, heightPx: 200 };
  return { shelf: fakeShelf(), pick: async () => ok(picture), read: async () => ok(picture) };
}

/** Names in a row, so that a test can tell them. */
export function fakeIds(prefix = 'fresh'): () => string {
  let count = 0;
  return () => `${prefix}-${++count}`;
}

/** A shelf in memory that several tabs may share; `fault` makes the next answers fail. */
export function fakeShelf(items = new Map<string, unknown>()): Shelf & {
  readonly items: Map<string, unknown>;
  fault: StorageFault | null;
  writes: number;
  persistAsked: number;
} {
  // What is stored is a copy, as a browser's is.
  const copy = (item: unknown): unknown => structuredClone(item);
  return {
    items,
    fault: null,
    writes: 0,
    persistAsked: 0,
    async all() {
      return this.fault ? fail(this.fault) : ok([...items.values()].map(copy));
    },
    async read(id) {
      return this.fault ? fail(this.fault) : ok(copy(items.get(id)));
    },
    async change(id, next) {
      if (this.fault) return fail(this.fault);
      const before = copy(items.get(id));
      const after = next(before);
      if (after) {
        items.set(after.id, copy(after));
        this.writes++;
      }
      return ok({ before, after: after ?? before });
    },
    putNow(item) {
      if (!this.fault) items.set(item.id, copy(item));
    },
    async remove(id) {
      if (this.fault) return fail(this.fault);
      items.delete(id);
      return ok(undefined);
    },
    async persist() {
      this.persistAsked++;
      return true;
    },
  };
}

/** The locks of one browser: each tab asks it for a door of its own. */
export function fakeLocks(): TabLock {
  interface Wish {
    readonly resolve: (isHeld: boolean) => void;
    readonly lost: () => void;
    isOver: boolean;
  }
  const holders = new Map<string, Wish>();
  const waiting = new Map<string, Wish[]>();
  const grant = (name: string, wish: Wish): void => {
    holders.set(name, wish);
    wish.resolve(true);
  };
  return {
    take(name, how, lost) {
      let wish: Wish | undefined;
      const held = new Promise<boolean>((resolve) => {
        wish = { resolve, lost, isOver: false };
        const holder = holders.get(name);
        if (!holder || how === 'from-other') {
          grant(name, wish);
          holder?.lost();
        } else if (how === 'now') {
          resolve(false);
        } else {
          waiting.set(name, [...(waiting.get(name) ?? []), wish]);
        }
      });
      return {
        held,
        release() {
          if (!wish || wish.isOver) return;
          wish.isOver = true;
          if (holders.get(name) !== wish) return;
          holders.delete(name);
          const next = waiting.get(name)?.find(({ isOver }) => !isOver);
          waiting.set(name, waiting.get(name)?.filter((one) => one !== next && !one.isOver) ?? []);
          if (next) grant(name, next);
        },
      };
    },
  };
}

/** The air between tabs: a door for each, none of which hears itself. */
export function fakeAir(): () => Channel {
  const ears = new Set<{ readonly hear: (message: unknown) => void; readonly by: Channel }>();
  return () => {
    const channel: Channel = {
      post(message) {
        for (const { hear, by } of ears)
          if (by !== channel) queueMicrotask(() => hear(structuredClone(message)));
      },
      listen(hear) {
        const ear = { hear, by: channel };
        ears.add(ear);
        return () => ears.delete(ear);
      },
    };
    return channel;
  };
}

/** A page that goes when the test says so. */
export function fakePageLife(): PageLife & { go(going: Going): void } {
  const listeners = new Set<(going: Going) => void>();
  return {
    onGoing(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    go(going) {
      for (const listener of listeners) listener(going);
    },
  };
}

/** An address of the test's own; `go` puts something else behind its sign. */
export function fakeAddress(page = 'https://example.org/rack/'): Address & { go(fragment: string): void } {
  let fragment = '';
  const ears = new Set<() => void>();
  return {
    whole: () => page + fragment,
    clear: () => {
      fragment = '';
    },
    listen(changed) {
      ears.add(changed);
      return () => ears.delete(changed);
    },
    go(other) {
      fragment = other;
      for (const changed of ears) changed();
    },
  };
}
