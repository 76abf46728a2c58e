import { exceeds } from '../geometry/exceeds.ts';
import type { PlacedHeader, PlacedModule } from '../geometry/place.ts';
import type { RibbonFacts } from '../layout/kit-index.ts';
import { remember } from '../layout/remember.ts';
import { ownedLeft } from '../wiring/stock.ts';
import type { Island } from '../wiring/supply-net.ts';
import type { Program, ProgramRow } from './engine.ts';
import { type Group, headersOf, islandOf, linesAt, type Patch, patchesOf } from './groups.ts';
import { type LeadPlan, stopModules } from './leads.ts';
import type { Task, Wish } from './task.ts';

/** A group as a column of the program: it is made as a whole or not at all. */
export interface GroupColumn {
  readonly group: Group;
  readonly column: number;
  /** Modules that are fed together if it is made, those included that what stays joins to them; empty without a voltage. */
  readonly island: readonly PlacedModule[];
  /** As they stand. */
  readonly islands: readonly Island[];
}

export interface LeadColumn {
  readonly lead: LeadPlan;
  readonly column: number;
}

/** The program, and which of its columns means what. */
export interface PlanModel {
  readonly program: Program;
  readonly groups: readonly GroupColumn[];
  readonly leads: readonly LeadColumn[];
  /** Members left unlinked, and islands left without a feed. */
  readonly unlinked: readonly { readonly wish: Wish; readonly column: number }[];
  readonly unfed: readonly { readonly island: Island; readonly column: number }[];
  /** How many of a kind are to be bought. */
  readonly bought: readonly { readonly facts: RibbonFacts; readonly column: number }[];
}

/** Builds rows over columns that are told one after the other. */
class Builder {
  readonly most: number[] = [];
  readonly whole: boolean[] = [];
  readonly rows: ProgramRow[] = [];

  column(most: number, whole: boolean): number {
    this.most.push(most);
    this.whole.push(whole);
    return this.most.length - 1;
  }

  row(least: number, most: number, entries: readonly (readonly [column: number, weight: number])[]): void {
    const sums = new Map<number, number>();
    for (const [column, weight] of entries) sums.set(column, (sums.get(column) ?? 0) + weight);
    this.rows.push({ least, most, columns: [...sums.keys()], weights: [...sums.values()] });
  }

  atMostOne(columns: readonly number[]): void {
    if (columns.length > 1)
      this.row(
        Number.NEGATIVE_INFINITY,
        1,
        columns.map((column) => [column, 1]),
      );
  }
}

/** More ribbons than any rack has. */
const MANY = 1e5;

const ANY = Number.POSITIVE_INFINITY;

function pushTo<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
}

/** Points of the rows at which patches could meet: any two that clash have such a point in common. */
function addClashes(builder: Builder, groups: readonly GroupColumn[], bodyMm: number): void {
  interface Shrunk extends Patch {
    readonly column: number;
  }
  const byRow = new Map<Patch['row'], Shrunk[]>();
  for (const { group, column } of groups)
    for (const patch of patchesOf(group)) {
      const shrunk = { ...patch, fromMm: patch.fromMm + bodyMm / 2, toMm: patch.toMm - bodyMm / 2, column };
      if (exceeds(shrunk.toMm, shrunk.fromMm)) pushTo(byRow, patch.row, shrunk);
    }
  for (const patches of byRow.values()) {
    const startsAlong = [...new Set(patches.map(({ fromMm }) => fromMm))];
    const startsUp = [...new Set(patches.map(({ lowMm }) => lowMm))];
    const told = new Set<string>();
    for (const x of startsAlong)
      for (const y of startsUp) {
        const over = patches.filter(
          (patch) =>
            !exceeds(patch.fromMm, x) &&
            exceeds(patch.toMm, x) &&
            !exceeds(patch.lowMm, y) &&
            exceeds(patch.highMm, y),
        );
        const columns = [...new Set(over.map(({ column }) => column))];
        const key = columns.join();
        if (!told.has(key)) builder.atMostOne(columns);
        told.add(key);
      }
  }
}

/** Lines that arrive at a module of a group from the module that is fed. */
function linesWithin({ group }: GroupColumn, module: PlacedModule): ReadonlySet<string> {
  let found: ReadonlySet<string> = NONE;
  for (const { facts, seats } of group.placings)
    for (const { connector, header } of seats) {
      if (header.owner !== module || header.isolated) continue;
      const lines = linesAt(facts)[connector] as ReadonlySet<string>;
      found = found.size === 0 ? lines : new Set([...found, ...lines]);
    }
  return found;
}

const NONE: ReadonlySet<string> = new Set();

/** What a group asks of the lead that feeds it. */
interface Demand {
  /** Lines that its modules need. */
  readonly lines: ReadonlySet<string>;
  /** Modules from which its ribbons bring all others what they need. */
  readonly suits: ReadonlySet<PlacedModule>;
}

const demandOf = remember((column: GroupColumn): Demand => {
  const { island } = column;
  const within = island.map((module) => linesWithin(column, module));
  const joined = island.filter((_, i) => within[i] !== NONE);
  const brought = (module: PlacedModule, lines: ReadonlySet<string> | undefined): boolean =>
    module.facts.needs.every((line) => lines?.has(line));
  const isAlwaysBrought = [...new Set(within)].every(
    (lines) => lines === NONE || joined.every((module) => brought(module, lines)),
  );
  const suits = (fed: PlacedModule, from: number): boolean =>
    island.every(
      (module, i) =>
        module === fed || within[i] === NONE || (brought(module, within[from]) && brought(module, within[i])),
    );
  return {
    lines: new Set(island.flatMap(({ facts }) => facts.needs)),
    suits: new Set(isAlwaysBrought && joined.length === island.length ? island : island.filter(suits)),
  };
});

/** Whether a lead brings an island all it needs, if it feeds it at a module. */
export function brings(column: GroupColumn, fed: PlacedModule, lines: ReadonlySet<string>): boolean {
  const demand = demandOf(column);
  if (!demand.suits.has(fed)) return false;
  for (const line of demand.lines) if (!lines.has(line)) return false;
  return true;
}

export interface Candidates {
  readonly groups: readonly Group[];
  readonly leads: readonly LeadPlan[];
}

/** What can be chosen: each thing is made as a whole or not at all. */
export interface Columns {
  readonly groups: readonly GroupColumn[];
  readonly leads: readonly LeadColumn[];
}

/** Groups that could be fed, and leads that bring a module what it needs. */
export function columnsOf({ base }: Task, { groups: all, leads: allLeads }: Candidates): Columns {
  const { islandOf: standing } = base.supplyNet;
  let column = 0;
  const groups: GroupColumn[] = [];
  for (const group of all) {
    const islands = [...new Set(islandOf(group).map(standing))];
    if (islands.filter(isFed).length > 1) continue;
    const island = islands.flatMap(({ modules }) => modules);
    groups.push({ group, island, islands, column: column++ });
  }
  const leads = allLeads
    .filter(({ stops, lines }) =>
      stops.every(({ header }, i) =>
        (header.owner as PlacedModule).facts.needs.every((line) =>
          (lines[i] as ReadonlySet<string>).has(line),
        ),
      ),
    )
    .map((lead): LeadColumn => ({ lead, column: column++ }));
  return { groups, leads };
}

const isFed = (island: Island): boolean => island.feeds.length > 0;

export const draws = (modules: readonly PlacedModule[]): boolean =>
  modules.some(({ facts }) => facts.draws.length > 0);

/** The whole choice as a program: which groups are made, which leads feed them, what is left and what is bought. */
export function modelOf(task: Task, { groups, leads }: Columns): PlanModel {
  const { base, wishes } = task;
  const builder = new Builder();
  const { islandOf: standing } = base.supplyNet;
  for (const _ of [...groups, ...leads]) builder.column(1, true);

  const onHeader = new Map<PlacedHeader, number[]>();
  const asMember = new Map<string, number[]>();
  const inIsland = new Map<Island, GroupColumn[]>();
  for (const column of groups) {
    for (const header of headersOf(column.group)) pushTo(onHeader, header, column.column);
    const members = headersOf(column.group).filter(({ role }) => role === 'member');
    for (const key of new Set(members.map(({ owner, bus }) => `${owner.id} ${bus.bus.id}`)))
      pushTo(asMember, key, column.column);
    for (const island of column.islands) pushTo(inIsland, island, column);
  }
  const unlinked = wishes.map((wish) => {
    const column = builder.column(1, false);
    const by = asMember.get(`${wish.module.id} ${wish.bus.bus.id}`) ?? [];
    builder.row(
      1,
      1,
      [...by, column].map((each) => [each, 1]),
    );
    return { wish, column };
  });
  for (const [header, columns] of onHeader) if (header.role === 'host') builder.atMostOne(columns);
  const standingRoots = new Map<string, number[]>();
  for (const { group, column } of groups) {
    const root = group.placings.find((placing) => placing.kept)?.kept;
    if (root !== undefined) pushTo(standingRoots, root, column);
  }
  for (const columns of standingRoots.values()) builder.atMostOne(columns);
  addClashes(builder, groups, base.limits.connectorBodyMm);

  const stopsIn = new Map<
    Island,
    { readonly column: number; readonly lead: LeadPlan; readonly stop: number }[]
  >();
  for (const { lead, column } of leads)
    stopModules(lead).forEach((module, stop) => {
      pushTo(stopsIn, standing(module), { column, lead, stop });
    });
  const unfed = base.supplyNet.islands
    .filter((island) => !isFed(island) && draws(island.modules))
    .map((island) => {
      const column = builder.column(1, true);
      const feeding = [...(stopsIn.get(island) ?? []), ...(inIsland.get(island) ?? [])].map(
        (each) => each.column,
      );
      builder.row(
        1,
        ANY,
        [...feeding, column].map((each) => [each, 1]),
      );
      return { island, column };
    });
  for (const group of groups) {
    if (!draws(group.island) || group.islands.some(isFed)) continue;
    const feeding = group.islands.flatMap((island) =>
      (stopsIn.get(island) ?? []).filter(({ lead, stop }) =>
        brings(group, stopModules(lead)[stop] as PlacedModule, lead.lines[stop] as ReadonlySet<string>),
      ),
    );
    const headers = new Set(headersOf(group.group));
    const wider = group.islands
      .flatMap((island) => inIsland.get(island) ?? [])
      .filter((other) => other !== group && !headersOf(other.group).some((header) => headers.has(header)))
      .filter((other) => other.group.placings[0]?.facts.bus !== group.group.placings[0]?.facts.bus);
    builder.row(0, ANY, [
      ...[...feeding, ...wider].map(({ column }): readonly [number, number] => [column, 1]),
      [group.column, -1],
    ]);
  }
  for (const [island, stops] of stopsIn)
    for (const { column, lead, stop } of stops) {
      const module = stopModules(lead)[stop] as PlacedModule;
      const unsuitable = (inIsland.get(island) ?? []).filter(
        (group) =>
          !brings(group, module, lead.lines[stop] as ReadonlySet<string>) ||
          stopModules(lead).some((other) => other !== module && group.island.includes(other)),
      );
      if (unsuitable.length > 0) addClique(builder, column, island, unsuitable);
    }
  addBoardRows(builder, leads);
  const bought = addStock(builder, task, groups, leads);
  const { most, whole, rows } = builder;
  return { program: { most, whole, rows }, groups, leads, unlinked, unfed, bought };
}

/** Groups on one header exclude one another already, so that one row does for all of them. */
function addClique(builder: Builder, lead: number, island: Island, groups: readonly GroupColumn[]): void {
  const byHeader = new Map<PlacedHeader | undefined, number[]>();
  for (const { group, column } of groups) {
    const header = headersOf(group).find(({ owner }) => island.modules.includes(owner as PlacedModule));
    pushTo(byHeader, header, column);
  }
  for (const columns of byHeader.values()) builder.atMostOne([lead, ...columns]);
}

/** No board gives more headers than it has, nor any part of it from which some leads reach. */
function addBoardRows(builder: Builder, leads: readonly LeadColumn[]): void {
  const seen = new Set<string>();
  for (const { lead } of leads) {
    const places = new Set(lead.places);
    const key = lead.places
      .map(({ owner, id }) => `${owner.id}/${id}`)
      .sort()
      .join();
    if (seen.has(key)) continue;
    seen.add(key);
    const within = leads.filter((other) => other.lead.places.every((place) => places.has(place)));
    if (within.length > places.size)
      builder.row(
        Number.NEGATIVE_INFINITY,
        places.size,
        within.map(({ column }) => [column, 1]),
      );
  }
}

function addStock(
  builder: Builder,
  { base, kept }: Task,
  groups: readonly GroupColumn[],
  leads: readonly LeadColumn[],
): PlanModel['bought'] {
  const uses = new Map<RibbonFacts, (readonly [number, number])[]>();
  for (const { group, column } of groups)
    for (const { facts, kept: stays } of group.placings)
      if (!stays) pushTo(uses, facts, [column, 1] as const);
  for (const { lead, column } of leads) pushTo(uses, lead.facts, [column, 1] as const);
  return [...uses].flatMap(([facts, entries]) => {
    const left = ownedLeft({ ...base.take, ribbons: kept }, facts.kind);
    if (left === undefined) return [];
    const column = builder.column(MANY, false);
    builder.row(Number.NEGATIVE_INFINITY, Math.max(left, 0), [...entries, [column, -1]]);
    return [{ facts, column }];
  });
}
