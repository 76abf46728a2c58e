import type { RibbonFacts } from '../layout/kit-index.ts';
import type { DerivedTake } from '../wiring/derived-take.ts';

/** How many of one kind a take uses, against how many are owned. */
export interface Count {
  readonly sort: 'module' | 'ribbon' | 'lead';
  readonly id: string;
  readonly name: string;
  readonly used: number;
  /** Absent: nobody counts them. */
  readonly owned?: number;
  /** What one costs; absent: not known. */
  readonly price?: number;
}

/** Owned and not used; less than nothing where some are missing. Nothing where nobody counts them. */
export const leftOf = ({ owned, used }: Count): number | undefined =>
  owned === undefined ? undefined : owned - used;

/** How many are to be bought; of what nobody counts none is said to be. */
export const shortOf = (count: Count): number => Math.max(0, -(leftOf(count) ?? 0));

/** A loose ribbon that carries a voltage. */
const isLead = ({ flat, bus }: RibbonFacts): boolean => !flat && bus.carriesVoltage;

function usedByKind(parts: readonly { readonly kind: string }[]): ReadonlyMap<string, number> {
  const used = new Map<string, number>();
  for (const { kind } of parts) used.set(kind, (used.get(kind) ?? 0) + 1);
  return used;
}

type Counted = Pick<Count, 'owned' | 'price'>;

const own = ({ owned, price }: Counted): Counted => ({
  ...(owned !== undefined && { owned }),
  ...(price !== undefined && { price }),
});

/** Every kind of the kit with its count in one take, in the kit's order: modules, ribbons, leads. */
export function inventoryOf({ kit, take }: DerivedTake): readonly Count[] {
  const modules = usedByKind(take.modules);
  const ribbons = usedByKind(take.ribbons);
  const ofModules = [...kit.modules.values()].map(
    ({ kind }): Count => ({
      sort: 'module',
      id: kind.id,
      name: kind.name,
      used: modules.get(kind.id) ?? 0,
      ...own(kind),
    }),
  );
  const ofRibbons = [...kit.ribbons.values()].map((facts): Count => {
    const { kind } = facts;
    const sort = isLead(facts) ? 'lead' : 'ribbon';
    return { sort, id: kind.id, name: kind.name, used: ribbons.get(kind.id) ?? 0, ...own(kind) };
  });
  const isOf = (sort: Count['sort']) => (count: Count) => count.sort === sort;
  return [...ofModules, ...ofRibbons.filter(isOf('ribbon')), ...ofRibbons.filter(isOf('lead'))];
}

/** What is to be bought, and what that costs as far as prices are known. */
interface Shopping {
  readonly pieces: number;
  readonly cost: number;
  /** Pieces among them of which nobody knows the price. */
  readonly unpriced: number;
}

export function shoppingFor(counts: readonly Count[]): Shopping {
  const short = counts.filter((count) => shortOf(count) > 0);
  const pieces = (list: readonly Count[]): number => list.reduce((sum, count) => sum + shortOf(count), 0);
  const cost = short.reduce((sum, count) => sum + shortOf(count) * (count.price ?? 0), 0);
  return { pieces: pieces(short), cost, unpriced: pieces(short.filter(({ price }) => price === undefined)) };
}
