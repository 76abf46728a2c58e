import type { Layout } from '../../src/index.ts';
import type { JournalEntry } from '../platform/journal.ts';

/** A layout as the browser keeps it. Its text is opened like any file; title and times can be told without that. */
export interface KeptLayout {
  readonly id: string;
  readonly title: string;
  /** The layout as JSON. */
  readonly text: string;
  /** Times in ms since 1970. */
  readonly created: number;
  readonly changed: number;
  /** When it was last on a screen as the layout that is worked on. */
  readonly opened: number;
  /** Rises each time that a tab begins to write it: a tab that knows an older one must not write. */
  readonly epoch: number;
  /** Rises with each writing. */
  readonly revision: number;
}

const NUMBERS = ['created', 'changed', 'opened', 'epoch', 'revision'] as const;

/** Whether what was found on the shelf can be told as a layout; what is in its text is another question. */
export function isKept(found: unknown): found is KeptLayout {
  if (typeof found !== 'object' || found === null) return false;
  const item = found as Record<string, unknown>;
  return (
    typeof item.id === 'string' &&
    typeof item.title === 'string' &&
    typeof item.text === 'string' &&
    NUMBERS.every((key) => Number.isFinite(item[key]))
  );
}

export const lastUsed = ({ opened, changed }: KeptLayout): number => Math.max(opened, changed);

/** The layout that was worked on last. */
export const latestOf = (kept: readonly KeptLayout[]): KeptLayout | undefined =>
  kept.reduce<KeptLayout | undefined>(
    (best, one) => (best && lastUsed(best) >= lastUsed(one) ? best : one),
    undefined,
  );

export const firstRecord = (layout: Layout, id: string, now: number): KeptLayout => ({
  id,
  title: layout.title,
  text: JSON.stringify(layout),
  created: now,
  changed: now,
  opened: now,
  epoch: 1,
  revision: 1,
});

/** The same record with another content. */
export const rewritten = (before: KeptLayout, layout: Layout, now: number): KeptLayout => ({
  ...before,
  title: layout.title,
  text: JSON.stringify(layout),
  changed: now,
  opened: now,
  revision: before.revision + 1,
});

/** Whether a note was made by the tab that wrote the record last: then it is what that tab did next, or did last. */
const goesOnFrom = ({ epoch }: JournalEntry, record: KeptLayout): boolean => epoch === record.epoch;

/** The record with what was done after it was written; the very record where that is nothing. */
export function withUnsaved(record: KeptLayout, entry: JournalEntry | undefined): KeptLayout {
  if (!entry || !goesOnFrom(entry, record) || entry.text === record.text) return record;
  const { title, text, changed } = entry;
  return { ...record, title, text, changed: Math.max(changed, record.changed) };
}

/** The same layout under an id of its own; it remembers which one it comes from. */
export function asCopy(layout: Layout, id: string): Layout {
  return { ...layout, id, ...(layout.id !== undefined && { parent: layout.id }) };
}
