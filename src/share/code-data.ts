import type { Coder } from './coder.ts';
import { Unusable } from './unusable.ts';

/** Objects and lists of a layout, and data that nothing is known of. While reading, all values are undefined. */

export type Data = Readonly<Record<string, unknown>>;

/** One field of a noun; `got` holds the fields before it. */
export interface Field {
  readonly key: string;
  readonly optional?: true;
  code(value: never, got: Data): unknown;
}

const byCodeUnit = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/**
 * An object of known fields, in the order in which they are told: which of the optional ones are there, each value, and
 * the keys that nobody knows.
 */
export function object<T>(
  coder: Coder,
  value: T | undefined,
  slot: string,
  fields: readonly Field[],
  ...along: readonly unknown[]
): T {
  const given = value as Data | undefined;
  const got: Record<string, unknown> = {};
  for (const { key, optional, code } of fields) {
    const isThere =
      !optional ||
      coder.flag(
        given && Object.hasOwn(given, key),
        `${slot}.${key}?`,
        'optional',
        coder.recent(slot, key),
        ...along,
      );
    if (optional) coder.recall(slot, key, isThere);
    if (isThere) got[key] = code(given?.[key] as never, got);
  }
  const known = new Set(fields.map(({ key }) => key));
  const more = given && Object.keys(given).filter((key) => !known.has(key));
  if (coder.flag(more && more.length > 0, `${slot}…?`, 'unknown keys')) {
    // No field can be hidden behind an accident of the language: each key is the object's own.
    for (const [key, item] of entries(coder, given, more, slot))
      Object.defineProperty(got, key, { value: item, enumerable: true, configurable: true, writable: true });
  }
  return got as T;
}

function* entries(
  coder: Coder,
  given: Data | undefined,
  keys: readonly string[] | undefined,
  slot: string,
): Generator<[string, unknown]> {
  const count = coder.whole(keys?.length, `${slot}…#`, 'keys');
  const sorted = keys && [...keys].sort(byCodeUnit);
  for (let i = 0; i < count; i++) {
    coder.spend(1);
    const key = coder.scalar(sorted?.[i], 'text', 'key', { with: [`${slot} ${i}`] });
    yield [key, anything(coder, sorted && given?.[sorted[i] as string], `${slot}.${key}`)];
  }
}

const SORTS = ['null', 'false', 'true', 'number', 'text', 'list', 'object'] as const;

function sortOf(value: unknown): number {
  if (value === null) return 0;
  if (typeof value === 'boolean') return value ? 2 : 1;
  if (typeof value === 'number') return 3;
  if (typeof value === 'string') return 4;
  return Array.isArray(value) ? 5 : 6;
}

/** How deep data may lie in data; a document that opens is less deep. */
const DEEPEST = 70;

/** Data that nothing is known of. */
function anything(coder: Coder, value: unknown, slot: string, depth = 0): unknown {
  if (depth > DEEPEST) throw new Unusable('damaged');
  const sort = SORTS[coder.place(value === undefined ? 0 : sortOf(value), SORTS.length, 'sort', slot)];
  switch (sort) {
    case 'null':
      return null;
    case 'false':
    case 'true':
      return sort === 'true';
    case 'number':
      return coder.scalar(value as number | undefined, 'number', `${slot}=`);
    case 'text':
      return coder.scalar(value as string | undefined, 'text', `${slot}"`);
    case 'list':
      return list(coder, value as readonly unknown[] | undefined, 'list', (item) =>
        anything(coder, item, `${slot}[]`, depth + 1),
      );
    default: {
      const got = {};
      const given = value as Data | undefined;
      for (const [key, item] of entriesBelow(coder, given, slot, depth))
        Object.defineProperty(got, key, {
          value: item,
          enumerable: true,
          configurable: true,
          writable: true,
        });
      return got;
    }
  }
}

function* entriesBelow(
  coder: Coder,
  given: Data | undefined,
  slot: string,
  depth: number,
): Generator<[string, unknown]> {
  const keys = given && Object.keys(given).sort(byCodeUnit);
  const count = coder.whole(keys?.length, 'keys', slot);
  let before = '';
  for (let i = 0; i < count; i++) {
    coder.spend(1);
    const key: string = coder.scalar(keys?.[i], 'text', 'key', { with: [`${slot} ${before}`] });
    before = key;
    yield [key, anything(coder, keys && given?.[key], `${slot}.${key}`, depth + 1)];
  }
}

export function list<T>(
  coder: Coder,
  items: readonly T[] | undefined,
  slot: string,
  one: (item: T | undefined, soFar: readonly T[]) => T,
  ...along: readonly unknown[]
): T[] {
  const count = coder.whole(items?.length, `${slot}#`, ...along);
  const got: T[] = [];
  for (let i = 0; i < count; i++) {
    coder.spend(1);
    got.push(one(items?.[i], got));
  }
  return got;
}

/** Whether two values say the very same; the order of keys says nothing. */
function isSame(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && isSame((a as Data)[key], (b as Data)[key]))
  );
}

const LIKE = { same: 0, twin: 1, none: 2 } as const;

/**
 * A list much of which may stand in another list too: each item is the same as one there, or goes by the id of one
 * there, or is new. Those there are taken to come in order.
 */
export function twins<T extends { readonly id: string }>(
  coder: Coder,
  items: readonly T[] | undefined,
  slot: string,
  others: readonly T[] | undefined,
  one: (item: T | undefined, twin: T | undefined, soFar: readonly T[]) => T,
): T[] {
  if (!others || others.length === 0)
    return list(coder, items, slot, (item, soFar) => one(item, undefined, soFar));
  const left = [...others];
  let next = 0;
  let before: number = LIKE.none;
  return list(
    coder,
    items,
    slot,
    (item, soFar) => {
      coder.spend(Math.ceil(left.length / 64));
      const at = item === undefined ? -1 : left.findIndex(({ id }) => id === item.id);
      const like = at < 0 ? LIKE.none : isSame(left[at], item) ? LIKE.same : LIKE.twin;
      const told = left.length === 0 ? LIKE.none : coder.whole(like, `${slot}~`, before);
      before = told;
      if (told >= LIKE.none) return one(item, undefined, soFar);
      const ahead = coder.whole(at < 0 ? 0 : (at - next + left.length) % left.length, `${slot}>`);
      const found = (next + ahead) % left.length;
      const [twin] = left.splice(found, 1);
      if (!twin || ahead > others.length) throw new Unusable('damaged');
      next = found >= left.length ? 0 : found;
      return told === LIKE.same ? twin : one(item, twin, soFar);
    },
    others.length,
  );
}
