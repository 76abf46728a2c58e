import type { Module, Ribbon, SeatedOn, Take } from '../layout/layout.ts';
import { UnionFind } from './union-find.ts';

/**
 * A piece of a take that no seat joins to the rest: its modules and ribbons, by index in the take, in document
 * order. What happens in one part changes nothing in how another is wired.
 */
export interface Part {
  readonly modules: readonly number[];
  readonly ribbons: readonly number[];
}

/** Modules that no ribbon sits on make parts of so many, since a part costs more than a lone module. */
const LONE_TOGETHER = 16;

/** Numbers everything that a ribbon can sit on; a board's headers one by one, since the board joins nothing. */
class Numbering {
  readonly #numbers = new Map<string, number>();

  /** The number of a thing; a new one where it has none yet. */
  of(key: string): number {
    const known = this.#numbers.get(key);
    if (known !== undefined) return known;
    const fresh = this.#numbers.size;
    this.#numbers.set(key, fresh);
    return fresh;
  }

  get size(): number {
    return this.#numbers.size;
  }
}

function keyOf(on: SeatedOn): string {
  if ('module' in on) return `m${on.module}`;
  if ('ribbon' in on) return `r${on.ribbon}`;
  return `b${JSON.stringify([on.board, on.header])}`;
}

/** A ribbon and all that it sits on, itself first. */
const endsOf = ({ id, seats }: Ribbon): string[] => [`r${id}`, ...seats.map(({ on }) => keyOf(on))];

type Things = Pick<Take, 'modules' | 'ribbons'>;

/** Sorts some of a take's modules and ribbons into parts: those with ribbons by their first ribbon, then the others. */
function partition({ modules, ribbons }: Things, some: Part): Part[] {
  const numbering = new Numbering();
  const numbers = some.ribbons.map((index) =>
    endsOf(ribbons[index] as Ribbon).map((key) => numbering.of(key)),
  );
  const sets = new UnionFind(numbering.size + some.modules.length);
  for (const [own, ...others] of numbers) for (const other of others) sets.join(own as number, other);

  const byRoot = new Map<number, { readonly modules: number[]; readonly ribbons: number[] }>();
  const parts: Part[] = [];
  numbers.forEach(([own], i) => {
    const index = some.ribbons[i] as number;
    const root = sets.find(own as number);
    const known = byRoot.get(root);
    if (known) known.ribbons.push(index);
    else {
      const part = { modules: [], ribbons: [index] };
      byRoot.set(root, part);
      parts.push(part);
    }
  });
  let lone: number[] = [];
  for (const index of some.modules) {
    const { id } = modules[index] as Module;
    const part = byRoot.get(sets.find(numbering.of(`m${id}`)));
    if (part) part.modules.push(index);
    else if (lone.push(index) === LONE_TOGETHER) {
      parts.push({ modules: lone, ribbons: [] });
      lone = [];
    }
  }
  if (lone.length > 0) parts.push({ modules: lone, ribbons: [] });
  return parts;
}

const indicesOf = (list: readonly unknown[]): number[] => [...list.keys()];

/** A take sorted into parts, and which of them holds what, looked up when it is first asked for. */
class Sorted {
  readonly things: Things;
  readonly parts: readonly Part[];
  #partOf?: ReadonlyMap<string, Part>;

  constructor(things: Things, parts: readonly Part[]) {
    this.things = things;
    this.parts = parts;
  }

  get partOf(): ReadonlyMap<string, Part> {
    if (this.#partOf) return this.#partOf;
    const { modules, ribbons } = this.things;
    const partOf = new Map<string, Part>();
    for (const part of this.parts) {
      for (const index of part.modules) partOf.set(`m${(modules[index] as Module).id}`, part);
      for (const index of part.ribbons)
        for (const key of endsOf(ribbons[index] as Ribbon)) partOf.set(key, part);
    }
    this.#partOf = partOf;
    return partOf;
  }
}

/** Kept by the list of ribbons, which is the very same while modules are dragged. */
const kept = new WeakMap<readonly Ribbon[], Sorted>();

/** What others are likely to differ little from: a ribbon that is laid or lifted is the only one that changes. */
let last: Sorted | undefined;

/** More ribbons than these, and all are sorted anew. */
const FEW = 8;

const areSame = (a: readonly { readonly id: string }[], b: Things['modules']): boolean =>
  a === b || (a.length === b.length && a.every(({ id }, i) => id === b[i]?.id));

/** Indices of ribbons that differ, up to the end of the longer list; undefined where they are many. */
function fewChanged(before: readonly Ribbon[], now: readonly Ribbon[]): number[] | undefined {
  const length = Math.max(before.length, now.length);
  const changed: number[] = [];
  for (let i = 0; i < length; i++) if (before[i] !== now[i] && changed.push(i) > FEW) return undefined;
  return changed;
}

/** Parts with ribbons by their first ribbon, then the others: sums over them come out alike to the last bit. */
const inOrder = (a: Part, b: Part): number =>
  (a.ribbons[0] ?? Infinity) - (b.ribbons[0] ?? Infinity) || (a.modules[0] ?? 0) - (b.modules[0] ?? 0);

const byNumber = (a: number, b: number): number => a - b;

/** Sorts anew only the parts that the changed ribbons were in or come into; all others stay the very same. */
function sortAgain(
  before: Sorted,
  { modules, ribbons }: Things,
  changed: readonly number[],
): readonly Part[] {
  const { partOf } = before;
  const touched = new Set<Part>();
  for (const index of changed) {
    for (const ribbon of [before.things.ribbons[index], ribbons[index]]) {
      for (const key of ribbon ? endsOf(ribbon) : []) {
        const part = partOf.get(key);
        if (part) touched.add(part);
      }
    }
  }
  const own = new Set([...[...touched].flatMap((part) => part.ribbons), ...changed]);
  const some: Part = {
    modules: [...touched].flatMap((part) => part.modules).sort(byNumber),
    ribbons: [...own].filter((index) => index < ribbons.length).sort(byNumber),
  };
  const others = before.parts.filter((part) => !touched.has(part));
  return [...others, ...partition({ modules, ribbons }, some)].sort(inOrder);
}

/** The parts of a take: those with ribbons in the order of their first ribbon, then modules without any. Costs as much as what changed since the last one, if that is little. */
export function partsOf({ modules, ribbons }: Take): readonly Part[] {
  const known = kept.get(ribbons);
  if (known && areSame(known.things.modules, modules)) return known.parts;
  const things = { modules, ribbons };
  const before = last && areSame(last.things.modules, modules) ? last : undefined;
  const changed = before && fewChanged(before.things.ribbons, ribbons);
  const parts =
    before && changed
      ? sortAgain(before, things, changed)
      : partition(things, { modules: indicesOf(modules), ribbons: indicesOf(ribbons) });
  const sorted = new Sorted(things, parts);
  kept.set(ribbons, sorted);
  // While a hand is at it, each take differs from the one at rest by one ribbon: that one stays, with its look-up.
  if (!changed || changed.length === 0) last = sorted;
  return parts;
}
