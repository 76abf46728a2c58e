import { type Hit, type SelectionKey, selectionKey } from '../canvas/model.ts';

/** The module that was hit, also by one of its headers. */
export function moduleOf(hit: Hit | null): string | null {
  if (hit?.type === 'module') return hit.id;
  return hit?.type === 'header' ? hit.module : null;
}

/** What a tap on it selects. */
export function keyOf(hit: Hit | null): SelectionKey | null {
  const module = moduleOf(hit);
  if (module !== null) return selectionKey('module', module);
  if (hit?.type === 'ribbon' || hit?.type === 'board') return selectionKey(hit.type, hit.id);
  return hit?.type === 'row' && hit.on ? selectionKey('row', hit.id) : null;
}

export function toggled<T>(set: ReadonlySet<T>, item: T): ReadonlySet<T> {
  const other = new Set(set);
  if (!other.delete(item)) other.add(item);
  return other;
}
