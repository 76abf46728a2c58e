import { typeOf } from '../layout/defaults.ts';
import type { RibbonFacts } from '../layout/kit-index.ts';
import { lengthMmOf } from '../wiring/shortest-lead.ts';
import { ownedLeft } from '../wiring/stock.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import { type Cut, piecesOf, toMake } from './cut-list.ts';

/** What can take the place of something that is to be bought. */
interface Substitute {
  readonly name: string;
  readonly count: number;
  readonly longerByMm: number;
}

/** One kind of thing that a take needs. */
export interface PartLine {
  readonly sort: 'module' | 'flat ribbon' | 'lead' | 'supply' | 'board';
  readonly name: string;
  readonly needed: number;
  /** Absent: nobody counts them. */
  readonly owned?: number;
  /** Absent where nobody counts what is owned. */
  readonly toBuy?: number;
  readonly substitutes: readonly Substitute[];
  /** Of one; absent: not known. */
  readonly price?: number;
  /** Of what is to be bought; absent where it or its price is not known. */
  readonly cost?: number;
}

/** What ribbons are made of. */
interface Material {
  readonly name: string;
  readonly amount: number;
  readonly unit: 'mm' | 'pieces';
}

export interface PartsList {
  readonly lines: readonly PartLine[];
  /** For every ribbon that is not owned, were it made and not bought. */
  readonly materials: readonly Material[];
  /** Of all that has a cost. */
  readonly cost: number;
  /** Names of what is to be bought and has no price. */
  readonly unpriced: readonly string[];
  /** Names of what nobody counts. */
  readonly uncounted: readonly string[];
}

type Needed = Pick<PartLine, 'sort' | 'name' | 'needed'> & {
  readonly owned?: number | undefined;
  readonly price?: number | undefined;
  readonly substitutes?: readonly Substitute[];
};

function lineOf({ sort, name, needed, owned, price, substitutes = [] }: Needed): PartLine {
  const toBuy = owned === undefined ? undefined : Math.max(0, needed - owned);
  return {
    sort,
    name,
    needed,
    substitutes,
    ...(owned !== undefined && { owned }),
    ...(toBuy !== undefined && { toBuy }),
    ...(price !== undefined && { price }),
    ...(toBuy === 0 && { cost: 0 }),
    ...(toBuy !== undefined && toBuy > 0 && price !== undefined && { cost: toBuy * price }),
  };
}

function counted<T>(things: readonly T[]): Map<T, number> {
  const counts = new Map<T, number>();
  for (const thing of things) counts.set(thing, (counts.get(thing) ?? 0) + 1);
  return counts;
}

/** What two loose kinds must have in common for one to do for the other: all but their length and their names. */
const ends = ({ kind, ways }: RibbonFacts): string =>
  JSON.stringify([
    kind.bus,
    kind.awg,
    ...kind.connectors.map((connector, i) => [typeOf(connector), ways[i], connector.key ?? 'none']),
  ]);

/**
 * Owned leads that are left and long enough for leads that are to be bought, each promised once. The shortest is
 * asked for first and gets the shortest that does, so that as many as can be are spared. Only leads with two ends: a
 * ribbon with more has its places.
 */
function findSubstitutes(
  take: WholeTake,
  used: ReadonlyMap<RibbonFacts, number>,
): Map<RibbonFacts, Substitute[]> {
  const isLead = ({ flat, connectors }: RibbonFacts): boolean => !flat && connectors.length === 2;
  const byLength = (a: RibbonFacts, b: RibbonFacts): number => lengthMmOf(a) - lengthMmOf(b);
  const left = new Map(
    [...take.kit.ribbons.values()]
      .filter(isLead)
      .map((facts): [RibbonFacts, number] => [facts, ownedLeft(take.take, facts.kind) ?? 0]),
  );
  const spares = [...left.keys()].filter((facts) => (left.get(facts) ?? 0) > 0).sort(byLength);
  const found = new Map<RibbonFacts, Substitute[]>();
  for (const facts of [...used.keys()].filter(isLead).sort(byLength)) {
    let missing = -(left.get(facts) ?? 0);
    const list: Substitute[] = [];
    for (const spare of spares) {
      const longerByMm = lengthMmOf(spare) - lengthMmOf(facts);
      const count = Math.min(missing, left.get(spare) ?? 0);
      if (count <= 0 || longerByMm < 0 || ends(spare) !== ends(facts)) continue;
      list.push({ name: spare.kind.name, count, longerByMm });
      left.set(spare, (left.get(spare) ?? 0) - count);
      missing -= count;
    }
    found.set(facts, list);
  }
  return found;
}

function materialsFor(cuts: readonly Cut[]): Material[] {
  const amounts = new Map<string, Material>();
  const add = (name: string, amount: number, unit: Material['unit']): void => {
    amounts.set(name, { name, amount: (amounts.get(name)?.amount ?? 0) + amount, unit });
  };
  for (const { cutMm, conductors, awg } of cuts)
    add(`Ribbon, ${conductors} conductors, AWG ${awg}`, cutMm, 'mm');
  for (const { connectors } of cuts) {
    for (const { type, ways, isFolded } of connectors) {
      add(`${type === 'plug' ? 'Plug' : 'Socket'}, ${ways} contacts`, 1, 'pieces');
      if (isFolded) add(`Strain relief clip, ${ways} contacts`, 1, 'pieces');
    }
  }
  return [...amounts.values()];
}

/** What a take needs, what of it is owned, and what the rest costs. Each kind once, as the kit lists them. */
export function partsListOf(take: WholeTake): PartsList {
  const { places, wiring, kit } = take;
  const modules = counted(places.modules.map(({ facts }) => facts));
  const ribbons = counted(wiring.ribbons.map(({ facts }) => facts));
  const substitutes = findSubstitutes(take, ribbons);
  const needed: Needed[] = [
    ...[...kit.modules.values()].flatMap((facts): Needed[] => {
      const { name, owned, price } = facts.kind;
      const count = modules.get(facts);
      return count ? [{ sort: 'module', name, needed: count, owned, price }] : [];
    }),
    ...[...kit.ribbons.values()].flatMap((facts): Needed[] => {
      const { name, owned, price } = facts.kind;
      const count = ribbons.get(facts);
      const sort = facts.flat ? 'flat ribbon' : 'lead';
      const more = substitutes.get(facts) ?? [];
      return count ? [{ sort, name, needed: count, owned, price, substitutes: more }] : [];
    }),
    ...take.take.supplies.map(({ name }): Needed => ({ sort: 'supply', name, needed: 1 })),
    ...places.boards.map(({ name }): Needed => ({ sort: 'board', name, needed: 1 })),
  ];
  const lines = needed.map(lineOf);
  return {
    lines,
    materials: materialsFor(toMake(piecesOf(take)).map(({ cut }) => cut)),
    cost: lines.reduce((sum, { cost }) => sum + (cost ?? 0), 0),
    unpriced: lines
      .filter(({ toBuy, cost }) => toBuy !== undefined && cost === undefined)
      .map(({ name }) => name),
    uncounted: lines.filter(({ owned }) => owned === undefined).map(({ name }) => name),
  };
}
