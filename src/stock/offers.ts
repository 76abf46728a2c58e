import type { Edit } from '../edit/edit.ts';
import { mergeKit } from '../edit/merge-kit.ts';
import { isKnownAs, type TakenKind } from '../edit/take-kinds.ts';
import type { Bus, Kit, ModuleKind } from '../layout/layout.ts';
import { saysTheSame } from '../layout/says-the-same.ts';
import { differencesOf } from './differences.ts';
import {
  type AnyKind,
  type KindSort,
  kindKey,
  listIn,
  type MyStock,
  markOf,
  type StockDeed,
  wholeMarkOf,
} from './my-stock.ts';

/**
 * How a kind of a layout stands to my stock.
 * same: nothing to say. counts: the same thing, of which other counts or notes are kept. newer: my stock has gone on from
 * what the layout has. other: the layout has what my stock never had. here: my stock has none. stock: the layout has none.
 */
type Standing = 'same' | 'counts' | 'newer' | 'other' | 'here' | 'stock';

export interface Offer {
  /** Names the offer as it stands: another content on either side makes another. */
  readonly key: string;
  readonly sort: KindSort;
  readonly standing: Standing;
  readonly name: string;
  /** The layout's own, and mine. */
  readonly here?: AnyKind;
  readonly kept?: AnyKind;
  /** "depth: 32 mm here, 35 mm in my stock". */
  readonly differences: readonly string[];
}

/** A kit whose buses are another's where both have one of the same id: kinds are compared by their own facts alone. */
function withBusesOf(kit: Kit, other: Kit): Kit {
  const theirs = new Map(other.buses.map((bus) => [bus.id, bus]));
  return { ...kit, buses: kit.buses.map((bus): Bus => theirs.get(bus.id) ?? bus) };
}

function standingOf(
  stock: MyStock,
  sort: KindSort,
  here: AnyKind,
  kept: AnyKind,
  isThing: boolean,
): Standing {
  if (isThing) {
    const { id: _, ...mine } = kept;
    const { id: __, ...theirs } = here;
    // Where the buses are called otherwise the kinds are as well; their counts are what is left to differ.
    return saysTheSame(mine, theirs) || differencesOf(sort, here, kept, 'counts').length === 0
      ? 'same'
      : 'counts';
  }
  return stock.earlier[kindKey(sort, kept.id)]?.includes(markOf(sort, here)) ? 'newer' : 'other';
}

function offersOf(stock: MyStock, kit: Kit, sort: KindSort, idOf: ReadonlyMap<string, string>): Offer[] {
  const mine = listIn(stock.layout.kit, sort);
  const byId = new Map(mine.map((kind) => [kind.id, kind]));
  const met = new Set<string>();
  const here = listIn(kit, sort).map((own): Offer => {
    const same =
      byId.get(idOf.get(own.id) ?? '') ??
      (sort === 'bus' ? undefined : mine.find((kind) => isKnownAs(kind as ModuleKind, own as ModuleKind)));
    const kept = same ?? byId.get(own.id);
    const key = [kindKey(sort, own.id), wholeMarkOf(own), kept ? wholeMarkOf(kept) : ''].join(' ');
    if (!kept) return { key, sort, standing: 'here', name: own.name, here: own, differences: [] };
    met.add(kept.id);
    const standing = standingOf(stock, sort, own, kept, same !== undefined);
    const differences = differencesOf(sort, own, kept, standing === 'counts' ? 'counts' : 'all');
    return { key, sort, standing, name: own.name, here: own, kept, differences };
  });
  const others = mine
    .filter(({ id }) => !met.has(id))
    .map((kept): Offer => {
      const key = `${kindKey(sort, kept.id)} ${wholeMarkOf(kept)}`;
      return { key, sort, standing: 'stock', name: kept.name, kept, differences: [] };
    });
  return [...here, ...others];
}

/** How every kind and bus of a layout's kit stands to my stock, and what my stock has besides. */
export function offersFor(stock: MyStock, kit: Kit): readonly Offer[] {
  const { busOf } = mergeKit(stock.layout.kit, kit);
  const { moduleKindOf, ribbonKindOf } = mergeKit(withBusesOf(stock.layout.kit, kit), kit);
  return [
    ...offersOf(stock, kit, 'bus', busOf),
    ...offersOf(stock, kit, 'module', moduleKindOf),
    ...offersOf(stock, kit, 'ribbon', ribbonKindOf),
  ];
}

const taken = ({ sort }: Offer, from: AnyKind, instead: AnyKind | undefined): TakenKind => ({
  sort,
  id: from.id,
  ...(instead && { instead: instead.id }),
});

/** Mine into the layout, in the place of what it has; its buses stay its own. */
export function takeFromStock(stock: MyStock, kit: Kit, offers: readonly Offer[]): Edit | undefined {
  const kinds = offers.flatMap((offer) => (offer.kept ? [taken(offer, offer.kept, offer.here)] : []));
  if (kinds.length === 0) return undefined;
  const replaces = offers.some(({ sort, here }) => sort !== 'bus' && here);
  const from = replaces ? withBusesOf(stock.layout.kit, kit) : stock.layout.kit;
  return { type: 'take-kinds', from, kinds };
}

/**
 * The layout's into my stock: in the place of what is there, or beside it.
 */
export function keepInStock(
  stock: MyStock,
  kit: Kit,
  offers: readonly Offer[],
  how: 'instead' | 'beside' = 'instead',
): StockDeed {
  const isInstead = how === 'instead';
  const kinds = offers.flatMap((offer) =>
    offer.here ? [taken(offer, offer.here, isInstead ? offer.kept : undefined)] : [],
  );
  const replaces = isInstead && offers.some(({ sort, kept }) => sort !== 'bus' && kept);
  const seen = offers.flatMap(({ kept }) => (kept ? [[kept.id, wholeMarkOf(kept)] as const] : []));
  return {
    do: 'keep',
    from: replaces ? withBusesOf(kit, stock.layout.kit) : kit,
    kinds,
    seen: Object.fromEntries(seen),
  };
}

/** Those that ask for a decision, but for those that were left. */
export const openOffers = (stock: MyStock, offers: readonly Offer[]): readonly Offer[] =>
  offers.filter(
    ({ standing, key }) => ['newer', 'other', 'counts'].includes(standing) && !stock.left.includes(key),
  );
