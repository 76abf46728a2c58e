import type { Layout } from '../../src/index.ts';
import { browserPreferences, type Preferences } from '../platform/preferences.ts';
import { browserShelf, type Shelf, type StorageFault } from '../platform/storage.ts';
import { isKept, type KeptLayout, latestOf } from './kept-layout.ts';
import { openKept } from './open-kept.ts';

/** What a page begins with. */
export type Beginning =
  | { readonly is: 'nothing' }
  | { readonly is: 'kept'; readonly layout: Layout; readonly record: KeptLayout }
  /** It stays where it is. */
  | { readonly is: 'unreadable'; readonly title: string; readonly why: string }
  | { readonly is: 'fault'; readonly fault: StorageFault };

/** The key under which a tab remembers its own layout, which another tab may have overtaken as the last one. */
const MINE = 'layout';

/** What this tab keeps for itself; a page loaded again is the same tab. */
export const tabMemory = (): Preferences => browserPreferences(() => window.sessionStorage);

export function rememberIn(memory: Preferences, id: string): void {
  memory.write(MINE, id);
}

/** The layout that this tab had before, or the one that was worked on last. */
export async function findBeginning(shelf: Shelf, memory: Preferences): Promise<Beginning> {
  const found = await shelf.all();
  if (!found.ok) return { is: 'fault', fault: found.error };
  const kept = found.value.filter(isKept);
  const mine = memory.read(MINE);
  const record = (mine.ok && kept.find(({ id }) => id === mine.value)) || latestOf(kept);
  if (!record) return { is: 'nothing' };
  const opened = await openKept(record);
  if (opened.ok) return { is: 'kept', layout: opened.value, record };
  return { is: 'unreadable', title: record.title, why: opened.error };
}

/** Begins with the browser's own shelf, which whoever keeps the layout goes on to use. */
export async function begin(): Promise<{ readonly shelf: Shelf; readonly beginning: Beginning }> {
  const shelf = browserShelf();
  return { shelf, beginning: await findBeginning(shelf, tabMemory()) };
}
