import { exceeds } from '../geometry/exceeds.ts';
import type { PlacedHeader, PlacedModule } from '../geometry/place.ts';
import { heightUOf } from '../layout/defaults.ts';
import type { BusFacts, RibbonFacts } from '../layout/kit-index.ts';
import type { Module } from '../layout/layout.ts';
import { ownedLeft } from '../wiring/stock.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import type { Score } from './choose.ts';
import { isChainable } from './placing.ts';
import type { Task } from './task.ts';

/** Rows that modules need for their widths alone, height by height, those with pinned modules among them. */
export function leastRowsOf({ places, take }: WholeTake, pinned: readonly Module[]): number {
  const heights = new Set(places.modules.map(({ facts }) => heightUOf(facts.kind)));
  let rows = 0;
  for (const height of heights) {
    const here = take.rows.filter(({ heightU }) => heightU === height);
    const must = here.filter(({ id }) => pinned.some(({ row }) => row === id));
    const others = here.filter((row) => !must.includes(row)).sort((a, b) => b.widthHp - a.widthHp);
    let widths = places.modules.reduce(
      (sum, { facts: { kind } }) => sum + (heightUOf(kind) === height ? kind.widthHp : 0),
      0,
    );
    for (const { widthHp } of must) widths -= widthHp;
    rows += must.length;
    for (const { widthHp } of others) {
      if (widths <= 1e-6) break;
      widths -= widthHp;
      rows++;
    }
  }
  return rows;
}

/** Pieces of a kind that may be used for nothing, and what each links at most. */
interface Stock {
  readonly facts: RibbonFacts;
  readonly free: number;
  readonly each: number;
}

/** The fewest of some pieces that link so many, the largest first; and how many more it takes of what is bought. */
function fewestPieces(
  stock: readonly Stock[],
  needed: number,
): { readonly owned: number; readonly bought: number } {
  let left = needed;
  let owned = 0;
  for (const { free, each } of [...stock].sort((a, b) => b.each - a.each)) {
    if (left <= 0 || each <= 0) break;
    const used = Math.min(free, Math.ceil(left / each));
    owned += used;
    left -= used * each;
  }
  const largest = stock.reduce((most, { each }) => Math.max(most, each), 0);
  return { owned, bought: left > 0 && largest > 0 ? Math.ceil(left / largest) : 0 };
}

const priceOf = (stock: readonly Stock[]): number =>
  stock.reduce((least, { facts }) => Math.min(least, facts.kind.price ?? 0), Number.POSITIVE_INFINITY);

function stockOf(
  { base, kept }: Task,
  kinds: readonly RibbonFacts[],
  eachOf: (facts: RibbonFacts) => number,
): Stock[] {
  return kinds.map((facts) => {
    const left = ownedLeft({ ...base.take, ribbons: kept }, facts.kind);
    const isForNothing = left === undefined || facts.kind.price === 0;
    return { facts, free: isForNothing ? Number.POSITIVE_INFINITY : Math.max(0, left), each: eachOf(facts) };
  });
}

/** What must be linked on one bus, and with what. */
interface BusNeeds {
  readonly stock: readonly Stock[];
  readonly members: number;
  /** More than all hosts may take. */
  readonly tooMany: number;
}

function needsOn(task: Task, bus: BusFacts): BusNeeds {
  const { base, wishes } = task;
  const onBus = ({ headers }: PlacedModule, role: PlacedHeader['role']) =>
    headers.filter((header) => header.bus === bus && header.role === role);
  const counts = wishes
    .filter((wish) => wish.bus === bus)
    .map(({ module }) => Math.min(...onBus(module, 'member').map((header) => header.counts)))
    .sort((a, b) => a - b);
  const hosts = base.places.modules.flatMap((module) => onBus(module, 'host')).length;
  const perHost = bus.bus.membersPerHost ?? Number.POSITIVE_INFINITY;
  const kinds = [...base.kit.ribbons.values()].filter((facts) => facts.bus === bus);
  const room = kinds.length > 0 ? hosts * perHost : 0;
  const longest = kinds.reduce((most, { connectors }) => Math.max(most, connectors.length), 0);
  // Without plugs a host has one ribbon, and no more members than that has connectors for.
  const seats = kinds.some((facts) => isChainable(facts, kinds)) ? ANY : hosts * (longest - 1);
  let members = 0;
  for (
    let taken = counts[0] ?? 0;
    members < Math.min(counts.length, seats) && !exceeds(taken, room);
    members++
  )
    taken += counts[members + 1] ?? 0;
  const most = exceeds(counts[0] ?? 1, 0) ? Math.floor(perHost / (counts[0] ?? 1) + 1e-6) : ANY;
  return {
    stock: stockOf(task, kinds, ({ connectors }) => Math.min(connectors.length - 1, most)),
    members,
    tooMany: counts.length - members,
  };
}

const ANY = Number.POSITIVE_INFINITY;

const freeOnBoards = ({ base }: Task): number =>
  base.places.boards.reduce(
    (sum, { headers }) => sum + headers.filter((header) => !base.wiring.seatedOn.has(header)).length,
    0,
  );

/**
 * What no wiring of the modules can do better than, wherever they stand: each number of the score holds among those
 * with the numbers before it. A ribbon links no more members than it has connectors besides one for its host or for
 * another ribbon; each member that is linked joins two islands at most; each lead feeds one island for each connector
 * but one.
 */
export function leastScoreOf(task: Task): Omit<Score, 'worstLossMv'> {
  const { base, kept, unfed } = task;
  const buses = [...task.free.keys()].map((bus) => ({ bus, ...needsOn(task, bus) }));
  const islands = new Set(unfed.map((module: PlacedModule) => base.supplyNet.islandOf(module))).size;
  const merged = buses.reduce((sum, { bus, members }) => sum + (bus.carriesVoltage ? members : 0), 0);
  const leads = [...base.kit.ribbons.values()].filter((facts) => !facts.flat && facts.bus.carriesVoltage);
  const ofLeads = stockOf(task, leads, ({ connectors }) => connectors.length - 1);
  const wanting = Math.max(0, islands - merged);
  const fed = Math.min(wanting, freeOnBoards(task) * Math.max(0, ...ofLeads.map(({ each }) => each)));
  const all = [
    ...buses.map(({ stock, members }) => ({ stock, needed: members })),
    { stock: ofLeads, needed: fed },
  ].map(({ stock, needed }) => ({ stock, needed, ...fewestPieces(stock, needed) }));
  const cost = all.reduce((sum, { stock, bought }) => sum + (bought > 0 ? bought * priceOf(stock) : 0), 0);
  const ribbons = all.reduce((sum, { stock, needed, owned, bought }) => {
    if (bought === 0 || cost === 0) return sum + owned + bought;
    // Where something is bought anyway, more of it may take the place of smaller pieces.
    const endless = stock.map((each) => ({ ...each, free: Number.POSITIVE_INFINITY }));
    return sum + fewestPieces(endless, needed).owned;
  }, 0);
  return {
    unlinked: buses.reduce((sum, { tooMany }) => sum + tooMany, 0),
    unfed: wanting - fed,
    cost,
    unpriced: 0,
    ribbons: kept.length + ribbons,
  };
}
