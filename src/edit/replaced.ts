import { nouns } from '../layout/schema.ts';

/*
 * A kind in place of another: what this program knows of it is new as a whole, what a newer one wrote besides stays,
 * and every part that is the same as before is the very object that it was.
 */

type Plain = Readonly<Record<string, unknown>>;

const isPlain = (value: unknown): value is Plain =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const isSameList = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((item, i) => item === b[i]);

function sharedObject(before: Plain, after: Plain): Plain {
  const keys = Object.keys(after);
  const shared = Object.fromEntries(keys.map((key) => [key, sharing(before[key], after[key])]));
  const same = keys.length === Object.keys(before).length;
  return same && keys.every((key) => Object.hasOwn(before, key) && shared[key] === before[key])
    ? before
    : shared;
}

/** Data equal to `after`, made of the parts of `before` where they are equal. */
function sharing<T>(before: unknown, after: T): T {
  if (Array.isArray(before) && Array.isArray(after)) {
    const shared = after.map((item, i) => sharing(partnerOf(before, item, i), item));
    return (isSameList(before, shared) ? before : shared) as T;
  }
  return (isPlain(before) && isPlain(after) ? sharedObject(before, after) : after) as T;
}

/** What stood for an item before: what has its id, or its place where the list has no ids. */
function partnerOf(before: readonly unknown[], item: unknown, i: number): unknown {
  if (!isPlain(item) || !Object.hasOwn(item, 'id')) return before[i];
  return before.find((other) => isPlain(other) && other.id === item.id);
}

type Noun = keyof typeof nouns;

/** The new object with the keys of the old one that this program does not know. */
export function withStrangeKeys<T extends object>(noun: Noun, before: object | undefined, after: T): T {
  const known = new Set(Object.keys(nouns[noun].entries));
  const strange = Object.entries(before ?? {}).filter(
    ([key]) => !known.has(key) && !Object.hasOwn(after, key),
  );
  return strange.length > 0 ? { ...after, ...Object.fromEntries(strange) } : after;
}

/** A thing whose parts have no keys that a newer program could have written. */
export const replacedAlone = <T extends object>(noun: Noun, before: T, after: T): T =>
  sharing(before, withStrangeKeys(noun, before, after));

/**
 * @param parts - the list of the object whose items may have keys of their own that this program does not know
 */
export function replaced<T extends object, K extends keyof T>(
  noun: Noun,
  before: T,
  after: T,
  parts: K,
  partNoun: Noun,
): T {
  const old = before[parts] as readonly object[];
  const list = (after[parts] as readonly object[]).map((part, i) =>
    withStrangeKeys(partNoun, partnerOf(old, part, i) as object | undefined, part),
  );
  return replacedAlone(noun, before, { ...after, [parts]: list });
}
