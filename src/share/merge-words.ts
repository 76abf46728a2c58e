import type { Layout } from '../layout/layout.ts';
import { compareLayouts, type Difference } from './compare.ts';
import type { Part, Room } from './merge-parts.ts';

const SORTS: Partial<Readonly<Record<Room, Difference['sort']>>> = {
  layout: 'layout',
  kit: 'layout',
  takes: 'take',
  'kit/modules': 'kind',
  'kit/ribbons': 'kind',
  'take/rows': 'row',
  'take/supplies': 'supply',
  'take/modules': 'module',
  'take/ribbons': 'ribbon',
};

const NOUNS: Partial<Readonly<Record<Room, string>>> = {
  'kit/voltages': 'voltage',
  'kit/buses': 'bus',
  'kit/modules': 'kind of module',
  'kit/ribbons': 'kind of ribbon',
};

/** Fields whose difference is told in a sentence of its own. */
const FIELDS: Readonly<Record<string, string>> = {
  'layout/notes': 'Its notes differ.',
  'kit/limits': 'The limits of the checks differ.',
  'take/accepted': 'Other notes are put away.',
  'take/built': 'What was done and measured at the bench differs.',
};

const LISTS: Readonly<Record<string, string>> = {
  takes: 'The takes',
  'kit/voltages': 'The voltages',
  'kit/buses': 'The buses',
  'kit/modules': 'The kinds of module',
  'kit/ribbons': 'The kinds of ribbon',
  'take/rows': 'The rows',
  'take/supplies': 'The supplies',
  'take/modules': 'The modules in the list',
  'take/ribbons': 'The ribbons in the list',
};

function nameOf({ id, mine, theirs }: Part): string {
  const { label, name } = (theirs ?? mine) as { readonly label?: unknown; readonly name?: unknown };
  const found = [label, name].find((each) => typeof each === 'string' && each !== '');
  return String(found ?? id);
}

function plainWords(part: Part): string {
  const { room, id, mine, theirs } = part;
  if (room.startsWith('order/')) return `${LISTS[room.slice('order/'.length)]} stand in another order.`;
  if (room === 'layout' || room === 'kit' || room === 'take') {
    if (room === 'take' && id === 'name') return `It is called ${String(theirs)}.`;
    return FIELDS[`${room}/${id}`] ?? `“${id.slice(0, 40)}” differs.`;
  }
  const noun = NOUNS[room];
  const name = noun ? `${noun} ${nameOf(part)}` : nameOf(part);
  if (mine === undefined) return `${noun ? `New ${name}` : `${name} added`}.`;
  if (theirs === undefined) return `${noun ? `Without the ${name}` : `${name} removed`}.`;
  return `${noun ? `The ${name}` : name} differs in small things.`;
}

/** Words for each part by its key: what would be found in the other layout that is not so in mine. */
export function partWords(mine: Layout, theirs: Layout, parts: readonly Part[]): ReadonlyMap<string, string> {
  const told = new Map<string, string[]>();
  for (const { sort, id, take, words } of compareLayouts(mine, theirs)) {
    const at = JSON.stringify([take ?? '', sort, id]);
    told.set(at, [...(told.get(at) ?? []), words]);
  }
  return new Map(
    parts.map((part) => {
      const sort = SORTS[part.room];
      const found = sort && told.get(JSON.stringify([part.take ?? '', sort, part.id]));
      // Kinds of module come before kinds of ribbon, which may bear the same id.
      const words = part.room === 'kit/ribbons' ? found?.at(-1) : found?.[0];
      return [part.key, words ?? plainWords(part)];
    }),
  );
}
