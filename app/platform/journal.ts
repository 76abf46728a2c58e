/** What was done to a layout and may not be on the shelf yet. */
export interface JournalEntry {
  readonly id: string;
  readonly title: string;
  /** The layout as JSON. */
  readonly text: string;
  /** Of the record that it goes on from: it tells which tab has written. */
  readonly epoch: number;
  /** Time in ms since 1970. */
  readonly changed: number;
}

/**
 * The last edits, kept in the very moment in which they are made: the shelf answers later, and a page that is closed
 * may not be there to hear it. One entry for each layout, until the shelf has it.
 */
export interface Journal {
  note(entry: JournalEntry): void;
  of(id: string): JournalEntry | undefined;
  all(): readonly JournalEntry[];
  clear(id: string): void;
}

const PREFIX = 'ribbonwright.unsaved.';

/** Longer ones are left to the shelf alone, letters: the browser has room for about five million in all. */
const MOST = 1_500_000;

function read(text: string | null): JournalEntry | undefined {
  const found: unknown = text === null ? undefined : JSON.parse(text);
  if (typeof found !== 'object' || found === null) return undefined;
  const { id, title, text: layout, epoch, changed } = found as Record<string, unknown>;
  const areTexts = typeof id === 'string' && typeof title === 'string' && typeof layout === 'string';
  if (!areTexts || typeof epoch !== 'number' || typeof changed !== 'number') return undefined;
  return { id, title, text: layout, epoch, changed };
}

/** Where the browser forbids it, or has no room, there is the shelf alone. */
export function browserJournal(storage: () => Storage = () => window.localStorage): Journal {
  function attempt<T>(work: (storage: Storage) => T, otherwise: T): T {
    try {
      return work(storage());
    } catch {
      return otherwise;
    }
  }
  const of = (id: string): JournalEntry | undefined =>
    attempt((kept) => read(kept.getItem(PREFIX + id)), undefined);
  const clear = (id: string): void => attempt((kept) => kept.removeItem(PREFIX + id), undefined);
  return {
    note(entry) {
      // An older one must not stand for it.
      if (entry.text.length > MOST) clear(entry.id);
      else attempt((kept) => kept.setItem(PREFIX + entry.id, JSON.stringify(entry)), undefined);
    },
    of,
    all: () =>
      attempt(Object.keys, [])
        .filter((key) => key.startsWith(PREFIX))
        .flatMap((key) => of(key.slice(PREFIX.length)) ?? []),
    clear,
  };
}
