import type { Layout } from '../../src/index.ts';
import { browserJournal, type Journal, type JournalEntry } from '../platform/journal.ts';
import { browserPreferences, type Preferences } from '../platform/preferences.ts';
import { browserShelf, type Shelf, type StorageFault } from '../platform/storage.ts';
import type { LayoutStore } from '../store/layout-store.ts';
import { isKept, type KeptLayout, latestOf, withUnsaved } from './kept-layout.ts';
import { openKept } from './open-kept.ts';

/** What a page begins with. */
export type Beginning =
  | { readonly is: 'nothing' }
  /** Without a record where the page before went before the shelf had it. */
  | { readonly is: 'kept'; readonly layout: Layout; readonly record: KeptLayout | null }
  /** It stays where it is. */
  | { readonly is: 'unreadable'; readonly title: string; readonly why: string }
  | { readonly is: 'fault'; readonly fault: StorageFault };

/** The key under which a tab remembers its own layout, which another tab may have overtaken as the last one, and all tabs together the last. */
const MINE = 'layout';

/** What this tab keeps for itself; a page loaded again is the same tab. */
export const tabMemory = (): Preferences => browserPreferences(() => window.sessionStorage);

/** What all tabs keep together: which layout was worked on last, however the clock is put. */
export const sharedMemory = (): Preferences => browserPreferences();

/** Notes from now on which layout is worked on. */
export function rememberIn(memories: readonly Preferences[], { store, layout }: LayoutStore): () => void {
  const note = (): void => {
    for (const memory of memories) memory.write(MINE, layout().id ?? '');
  };
  note();
  return store.subscribe((now, then) => {
    if (now.history.present !== then.history.present) note();
  });
}

/** What never came as far as the shelf, told like a record. */
const asRecord = ({ id, title, text, changed }: JournalEntry): KeptLayout => ({
  id,
  title,
  text,
  created: changed,
  changed,
  opened: changed,
  epoch: 1,
  revision: 0,
});

/** The layout that this tab had before, or the one that was worked on last: as noted, or where nothing is noted, by the times. */
export async function findBeginning(
  shelf: Shelf,
  memories: readonly Preferences[],
  journal: Journal,
): Promise<Beginning> {
  const found = await shelf.all();
  if (!found.ok) return { is: 'fault', fault: found.error };
  const onShelf = found.value.filter(isKept);
  const ids = new Set(found.value.map((item) => (item as { readonly id?: unknown }).id));
  const kept = [
    ...onShelf.map((record) => withUnsaved(record, journal.of(record.id))),
    ...journal.all().flatMap((entry) => (ids.has(entry.id) ? [] : asRecord(entry))),
  ];
  const [noted] = memories.flatMap((memory) => {
    const id = memory.read(MINE);
    return kept.filter((record) => id.ok && record.id === id.value);
  });
  const record = noted ?? latestOf(kept);
  if (!record) return { is: 'nothing' };
  const opened = await openKept(record);
  if (opened.ok) return { is: 'kept', layout: opened.value, record: ids.has(record.id) ? record : null };
  return { is: 'unreadable', title: record.title, why: opened.error };
}

/** Begins with the browser's own shelf, which whoever keeps the layout goes on to use. */
export async function begin(): Promise<{ readonly shelf: Shelf; readonly beginning: Beginning }> {
  const shelf = browserShelf();
  return { shelf, beginning: await findBeginning(shelf, [tabMemory(), sharedMemory()], browserJournal()) };
}
