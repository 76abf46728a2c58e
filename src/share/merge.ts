import type { Layout, Take } from '../layout/layout.ts';
import { openDocument } from '../layout/open.ts';
import { referenceIssues } from '../layout/references.ts';
import { saysTheSame } from '../layout/says-the-same.ts';
import {
  differingParts,
  type Identified,
  KIT_LISTS,
  keyOf,
  type Part,
  type Room,
  SPLIT,
  TAKE_LISTS,
} from './merge-parts.ts';
import { partsAt } from './merge-reach.ts';

export type Side = 'mine' | 'theirs';

/** Keys of the parts that come from the other layout; of all other parts mine stay. */
export type Chosen = ReadonlySet<string>;

type Fields = Readonly<Record<string, unknown>>;
type ListRoom = Exclude<Room, 'layout' | 'kit' | 'take' | `order/${string}`>;

const isList = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((one, i) => one === b[i]);

/** Things of both lists: in the order of the first, what stands in the other alone behind what it follows there. */
function woven<T extends Identified>(base: readonly T[], other: readonly T[]): readonly string[] {
  const there = new Set(base.map(({ id }) => id));
  const behind = new Map<string, string[]>();
  let last = '';
  for (const { id } of other) {
    if (there.has(id)) last = id;
    else behind.set(last, [...(behind.get(last) ?? []), id]);
  }
  return [
    ...(there.has('') ? [] : (behind.get('') ?? [])),
    ...base.flatMap(({ id }) => [id, ...(behind.get(id) ?? [])]),
  ];
}

class Merger {
  readonly #chosen: Chosen;

  constructor(chosen: Chosen) {
    this.#chosen = chosen;
  }

  #isTheirs(room: Room, id: string, take?: string): boolean {
    return this.#chosen.has(keyOf(room, id, take));
  }

  #fields<T extends object>(
    room: 'layout' | 'kit' | 'take',
    take: string | undefined,
    mine: T,
    theirs: T,
  ): T {
    const merged = { ...mine } as Record<string, unknown>;
    for (const name of new Set([...Object.keys(mine), ...Object.keys(theirs)])) {
      if (SPLIT[room].has(name) || !this.#isTheirs(room, name, take)) continue;
      if (Object.hasOwn(theirs, name)) merged[name] = (theirs as Fields)[name];
      else delete merged[name];
    }
    return merged as T;
  }

  #list<T extends Identified>(
    room: ListRoom,
    take: string | undefined,
    mine: readonly T[],
    theirs: readonly T[],
    both: (own: T, other: T) => T = (own, other) => (this.#isTheirs(room, own.id, take) ? other : own),
  ): readonly T[] {
    const own = new Map(mine.map((thing) => [thing.id, thing]));
    const others = new Map(theirs.map((thing) => [thing.id, thing]));
    const ids = this.#isTheirs(`order/${room}`, '', take) ? woven(theirs, mine) : woven(mine, theirs);
    const merged = ids.flatMap((id): T[] => {
      const [one, other] = [own.get(id), others.get(id)];
      if (one && other) return [both(one, other)];
      const left = this.#isTheirs(room, id, take) ? other : one;
      return left ? [left] : [];
    });
    return isList(merged, mine) ? mine : merged;
  }

  #take(mine: Take, theirs: Take): Take {
    const merged: Record<string, unknown> = { ...this.#fields('take', mine.id, mine, theirs) };
    for (const list of TAKE_LISTS)
      merged[list] = this.#list<Identified>(`take/${list}`, mine.id, mine[list], theirs[list]);
    const isMine = Object.keys(merged).length === Object.keys(mine).length;
    return isMine && Object.keys(merged).every((key) => merged[key] === (mine as unknown as Fields)[key])
      ? mine
      : (merged as unknown as Take);
  }

  layout(mine: Layout, theirs: Layout): Layout {
    const kit: Record<string, unknown> = { ...this.#fields('kit', undefined, mine.kit, theirs.kit) };
    for (const list of KIT_LISTS)
      kit[list] = this.#list<Identified>(`kit/${list}`, undefined, mine.kit[list], theirs.kit[list]);
    return {
      ...this.#fields('layout', undefined, mine, theirs),
      kit: kit as unknown as Layout['kit'],
      takes: this.#list('takes', undefined, mine.takes, theirs.takes, (own, other) => this.#take(own, other)),
    };
  }
}

/** The layout of mine with the chosen parts of the other one; it may not open yet. Its id stays. */
const mergeParts = (mine: Layout, theirs: Layout, chosen: Chosen): Layout =>
  new Merger(chosen).layout(mine, theirs);

export interface Merged {
  readonly layout: Layout;
  readonly chosen: Chosen;
  /** Keys of parts that had to come along from the same side. */
  readonly along: readonly string[];
}

/**
 * A mixture of two layouts that opens: what a part needs, and what cannot stand beside it, comes from the side on which
 * it stood with it.
 *
 * @param toward - the side that the last choice was for; parts that have to come along come from there
 */
export function merge(mine: Layout, theirs: Layout, wanted: Chosen, toward: Side): Merged {
  const parts = differingParts(mine, theirs);
  const byKey = new Map(parts.map((part) => [part.key, part]));
  const chosen = new Set([...wanted].filter((key) => byKey.has(key)));
  const along: string[] = [];
  /** Whether it had to be turned. */
  const turn = ({ key }: Part): boolean => {
    if (chosen.has(key) === (toward === 'theirs')) return false;
    if (toward === 'theirs') chosen.add(key);
    else chosen.delete(key);
    along.push(key);
    return true;
  };
  for (;;) {
    const layout = mergeParts(mine, theirs, chosen);
    const { places } = referenceIssues(layout);
    if (places.length === 0 && openDocument(layout).ok) return { layout, chosen, along };
    const reached = places.flatMap((path) => partsAt(layout, path, mine, theirs));
    const turned = reached.filter((key) => {
      const part = byKey.get(key);
      return part !== undefined && turn(part);
    });
    // One side as a whole always opens.
    if (turned.length === 0 && parts.filter(turn).length === 0) return { layout, chosen, along };
  }
}

/** Who has changed a part since a layout that both come from. */
export type ChangedBy = Side | 'both';

/** @param before - the parts of the common layout held against mine: what differs there was changed by me */
export function changedBy(
  part: Part,
  sinceMine: ReadonlySet<string>,
  sinceTheirs: ReadonlySet<string>,
): ChangedBy {
  if (!sinceMine.has(part.key)) return 'theirs';
  return sinceTheirs.has(part.key) ? 'both' : 'mine';
}

/** Keys of what differs. */
export const differingKeys = (mine: Layout, theirs: Layout): ReadonlySet<string> =>
  new Set(differingParts(mine, theirs).map(({ key }) => key));

/** Of several layouts the one that another was most likely made from; the first of those that are as near. */
export function nearestTo(theirs: Layout, candidates: readonly Layout[]): Layout | undefined {
  let [best, least]: [Layout | undefined, number] = [undefined, Number.POSITIVE_INFINITY];
  for (const candidate of candidates) {
    const count = differingKeys(candidate, theirs).size;
    if (count < least) [best, least] = [candidate, count];
  }
  return best;
}

/** Whether the two say the same, whatever they are called as files. */
export const isSameContent = (mine: Layout, theirs: Layout): boolean =>
  saysTheSame({ ...mine, id: '', parent: '' }, { ...theirs, id: '', parent: '' });
