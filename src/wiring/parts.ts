import type { Ribbon, SeatedOn, Take } from '../layout/layout.ts';
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

const ribbonKey = ({ id }: Ribbon): string => `r${id}`;

function partition({ modules, ribbons }: Take): Part[] {
  const numbering = new Numbering();
  const ends = ribbons.map((ribbon) => [ribbonKey(ribbon), ...ribbon.seats.map(({ on }) => keyOf(on))]);
  const numbers = ends.map((keys) => keys.map((key) => numbering.of(key)));
  const sets = new UnionFind(numbering.size + modules.length);
  for (const [own, ...others] of numbers) for (const other of others) sets.join(own as number, other);

  const byRoot = new Map<number, { readonly modules: number[]; readonly ribbons: number[] }>();
  const parts: Part[] = [];
  numbers.forEach(([own], index) => {
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
  modules.forEach(({ id }, index) => {
    const part = byRoot.get(sets.find(numbering.of(`m${id}`)));
    if (part) part.modules.push(index);
    else if (lone.push(index) === LONE_TOGETHER) {
      parts.push({ modules: lone, ribbons: [] });
      lone = [];
    }
  });
  if (lone.length > 0) parts.push({ modules: lone, ribbons: [] });
  return parts;
}

interface Kept {
  readonly modules: readonly { readonly id: string }[];
  readonly parts: readonly Part[];
}

/** Kept by the list of ribbons, which is the very same while modules are dragged. */
const kept = new WeakMap<readonly Ribbon[], Kept>();

const areSame = (a: Kept['modules'], b: Kept['modules']): boolean =>
  a.length === b.length && a.every(({ id }, i) => id === b[i]?.id);

/** The parts of a take: those with ribbons in the order of their first ribbon, then modules without any. */
export function partsOf(take: Take): readonly Part[] {
  const known = kept.get(take.ribbons);
  if (known && areSame(known.modules, take.modules)) return known.parts;
  const parts = partition(take);
  kept.set(take.ribbons, { modules: take.modules, parts });
  return parts;
}
