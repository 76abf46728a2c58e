import type { PlacedHeader, PlacedModule } from '../geometry/place.ts';
import { GND } from '../layout/defaults.ts';
import { groupBy } from '../layout/group-by.ts';
import type { KitIndex } from '../layout/kit-index.ts';
import { remember } from '../layout/remember.ts';
import type { Island } from '../wiring/supply-net.ts';
import { type ProgramRow, type Search, togetherAtMost } from './engine.ts';
import { type Group, headersOf, islandOf } from './groups.ts';
import type { LeadPlan } from './leads.ts';
import {
  aloneLoss,
  boardOhms,
  currentsOf,
  groupLoss,
  type IslandLoss,
  leadOhms,
  ownLossMv,
  signsOf,
} from './losses.ts';
import type { Columns, GroupColumn, PlanModel } from './model.ts';
import type { Task } from './task.ts';

/** What leads lose with one group, or with a module alone. */
export interface Pair {
  readonly island: IslandLoss;
  /** At least, with what must be lost on the way to the board, mV. */
  readonly leastMv: number;
}

interface GroupPair extends Pair {
  readonly group: GroupColumn;
  readonly header: PlacedHeader;
}

/** Leads to one header that lose the same. */
export interface AlikeLeads {
  readonly columns: readonly number[];
  /** One of them. */
  readonly lead: LeadPlan;
  readonly fed: PlacedModule;
  readonly ohms: readonly number[];
  readonly boardOhms: number;
  readonly alone: Pair;
}

interface LeadPairs extends AlikeLeads {
  readonly groups: readonly GroupPair[];
}

const ANY = Number.POSITIVE_INFINITY;

/** What leads lose with groups. */
export class LossRows {
  readonly leads: readonly AlikeLeads[];
  readonly isShareKnown: boolean;
  /** No board has a lead of its own in which islands could lose together. */
  readonly isFree: boolean;
  /** Ribbons may join grounds of islands: then what is lost in ground has more than one way to go. */
  readonly mayMesh: boolean;
  /** Only what is certain is told. */
  readonly isCautious: boolean;
  readonly #model: Columns;
  readonly #leastMv: LeastMv;
  readonly #lossOf: (group: Group) => IslandLoss;
  #pairs: readonly LeadPairs[] | undefined;

  constructor(task: Task, model: Columns, isAllFed: boolean, isCautious = false) {
    const { kit } = task.base;
    const shares = boardShares(task, model, isAllFed);
    this.isShareKnown = shares.isKnown;
    this.isFree = shares.isFree;
    this.mayMesh = mayMesh(task, model);
    this.isCautious = isCautious;
    this.#model = model;
    this.#leastMv = leastMvOf(task, shares.least, isCautious);
    this.#lossOf = remember((group) => groupLoss(group, kit));
    this.leads = alikeLeads(model, kit, this.#leastMv);
  }

  /** What leads lose with a group that they feed: worked out when it is asked for, since few groups ever are. */
  pairWith({ fed, ohms, boardOhms }: AlikeLeads, { group }: GroupColumn): Pair {
    const island = this.#lossOf(group);
    return { island, leastMv: this.#leastMv(island, fed, ohms, boardOhms) };
  }

  /** All leads with all groups. */
  get pairs(): readonly LeadPairs[] {
    this.#pairs ??= this.#allPairs();
    return this.#pairs;
  }

  #allPairs(): LeadPairs[] {
    const fed = this.#model.groups.flatMap((group) =>
      fedHeadersOf(group).map((header) => ({ group, header })),
    );
    const at = groupBy(fed, ({ header }) => header.owner as PlacedModule);
    return this.leads.map((leads) => ({
      ...leads,
      groups: (at.get(leads.fed) ?? []).map(({ group, header }) => ({
        group,
        header,
        ...this.pairWith(leads, group),
      })),
    }));
  }
}

/** Headers of modules that share a voltage through a group. */
export const fedHeadersOf = ({ group, island }: GroupColumn): readonly PlacedHeader[] =>
  headersOf(group).filter(({ owner }) => island.includes(owner as PlacedModule));

/** Tells the program which groups a lead may feed if no module is to lose more than so much. */
export class LossBounds {
  readonly #task: Task;
  readonly #model: PlanModel;
  readonly #search: Pick<Search, 'addRow' | 'addColumn'>;
  readonly #rows: LossRows;
  readonly #told = new Map<number, Set<number>>();
  /** By island and board: whether the one is fed from the other. */
  #fedFrom: ReadonlyMap<string, number> | undefined;

  constructor(task: Task, model: PlanModel, search: Pick<Search, 'addRow' | 'addColumn'>, rows: LossRows) {
    this.#task = task;
    this.#model = model;
    this.#search = search;
    this.#rows = rows;
  }

  /** Whether the program knows all of what is lost; else it only knows that it is no less. */
  get isExact(): boolean {
    return this.#rows.isCautious || this.#rows.isShareKnown || this.#fedFrom !== undefined;
  }

  /** Asks for plans in which no module loses more. */
  ask(mostMv: number): void {
    for (const { columns, alone, groups } of this.#rows.pairs) {
      const [key] = columns as [number];
      const told = this.#told.get(key) ?? new Set();
      this.#told.set(key, told);
      const tooMuch = groups.filter(({ leastMv, group }) => leastMv > mostMv && !told.has(group.column));
      for (const { group } of tooMuch) told.add(group.column);
      const cliques = cliquesOf(tooMuch);
      const isTooMuchAlone = alone.leastMv > mostMv && !told.has(key);
      if (isTooMuchAlone) told.add(key);
      const others = groups.map(({ group }) => group.column);
      const weights = [...others.map(() => 1), -1];
      for (const lead of columns) {
        for (const clique of cliques) this.#search.addRow(togetherAtMost(1, [lead, ...clique]));
        if (isTooMuchAlone) this.#search.addRow({ least: 0, most: ANY, columns: [...others, lead], weights });
      }
    }
    if (this.#fedFrom) this.#askBoards(mostMv, this.#fedFrom);
  }

  /** Adds which island is fed from which board, so that what islands lose together on a board's lead can be told. */
  bringInBoards(): void {
    const { base } = this.#task;
    const { islands, islandOf } = base.supplyNet;
    const boards = base.places.boards;
    const fedFrom = new Map<string, number>();
    const of = (island: Island, board: LeadPlan['board']): number =>
      fedFrom.get(keyOf(islands.indexOf(island), board.index)) as number;
    const columnsAt = new Map(islands.map((island) => [island, [] as [number, number][]]));
    for (const { column, lead } of this.#model.leads)
      for (const { header } of lead.stops)
        columnsAt.get(islandOf(header.owner as PlacedModule))?.push([column, lead.board.index]);
    const unfed = new Map(this.#model.unfed.map(({ island, column }) => [island, column]));
    islands.forEach((island, i) => {
      const columns = boards.map((board) => {
        const column = this.#search.addColumn(1);
        fedFrom.set(keyOf(i, board.index), column);
        return column;
      });
      const [feed] = island.feeds;
      const from = feed?.harness.boardSeats[0]?.on.header.owner;
      if (from?.type === 'board')
        this.#search.addRow({ least: 1, most: 1, columns: [of(island, from)], weights: [1] });
      const unfedColumn = unfed.get(island);
      if (unfedColumn !== undefined || feed) {
        const all = [...columns, ...(unfedColumn === undefined ? [] : [unfedColumn])];
        this.#search.addRow({ least: 1, most: 1, columns: all, weights: all.map(() => 1) });
      }
      for (const [lead, board] of columnsAt.get(island) ?? [])
        this.#search.addRow({
          least: 0,
          most: ANY,
          columns: [columns[board] as number, lead],
          weights: [1, -1],
        });
    });
    for (const [[a, b], together] of pairsOfIslands(this.#task, this.#model))
      for (const board of boards)
        this.#search.addRow({
          least: -1,
          most: ANY,
          columns: [of(a, board), of(b, board), ...together],
          weights: [1, -1, ...together.map(() => -1)],
        });
    this.#fedFrom = fedFrom;
  }

  /** Own losses that come so near to the most that the board's lead decides. */
  #askBoards(mostMv: number, fedFrom: ReadonlyMap<string, number>): void {
    const { base } = this.#task;
    const { kit, supplyNet } = base;
    const ground = kit.supplyLines.length - 1;
    const drawn = supplyNet.islands.map(({ modules }) =>
      modules
        .map((module) => currentsOf(module, kit))
        .reduce((a, b) => a.map((ma, i) => ma + (b[i] as number))),
    );
    for (const { columns, lead, fed, ohms, boardOhms: board, alone, groups } of this.#rows.pairs) {
      if (board === 0) continue;
      for (let line = 0; line < ground; line++) {
        const sign = signsOf(kit)[line] as number;
        const shares = drawn.map(
          (each) => board * ((each[line] as number) + sign * (each[ground] as number)),
        );
        const most = shares.reduce((sum, share) => sum + Math.max(0, share), 0);
        const floor = mostMv - most;
        const own = ({ island }: Pair): number =>
          Math.min(Math.max(ownLossMv(island, fed, line, ohms, kit), floor), mostMv);
        const base0 = own(alone);
        if (base0 <= floor && groups.every((pair) => own(pair) <= floor)) continue;
        const entries: [number, number][] = groups.map((pair) => [pair.group.column, own(pair) - base0]);
        shares.forEach((share, i) => {
          if (share !== 0) entries.push([fedFrom.get(keyOf(i, lead.board.index)) as number, share]);
        });
        const kept = entries.filter(([, weight]) => Math.abs(weight) > 1e-9);
        for (const column of columns)
          this.#search.addRow({
            least: Number.NEGATIVE_INFINITY,
            most: mostMv - base0 + most,
            columns: [...kept.map(([each]) => each), column],
            weights: [...kept.map(([, weight]) => weight), most],
          } satisfies ProgramRow);
      }
    }
  }
}

const keyOf = (island: number, board: number): string => `${island} ${board}`;

/** Islands that some groups would join, with these groups; both ways round. */
function pairsOfIslands({ base }: Task, { groups }: Columns): Map<readonly [Island, Island], number[]> {
  const { islandOf, islands } = base.supplyNet;
  const found = new Map<string, { readonly pair: readonly [Island, Island]; readonly columns: number[] }>();
  for (const { island, column } of groups) {
    const own = [...new Set(island.map(islandOf))];
    for (const a of own)
      for (const b of own) {
        if (a === b) continue;
        const key = keyOf(islands.indexOf(a), islands.indexOf(b));
        const known = found.get(key) ?? { pair: [a, b] as const, columns: [] };
        known.columns.push(column);
        found.set(key, known);
      }
  }
  return new Map([...found.values()].map(({ pair, columns }) => [pair, columns]));
}

/** Whether any ribbon could join the grounds of modules whose voltages it does not join. */
const mayMesh = ({ standing }: Task, { groups }: Columns): boolean =>
  [...standing, ...groups.map(({ group }) => group)].some((group) => {
    const grounded = group.placings.flatMap(({ facts, seats }) =>
      facts.bus.supplyPins.has(GND) ? seats.filter(({ header }) => !header.isolated) : [],
    );
    return grounded.length > 1 && grounded.length > islandOf(group).length;
  });

type LeastMv = (island: IslandLoss, fed: PlacedModule, ohms: readonly number[], boardOhms: number) => number;

/**
 * What a lead loses at least with an island that it feeds. What several stops share is left out; where grounds may be
 * joined, so is all that is lost in ground, which is then at least nothing on a positive voltage.
 */
function leastMvOf(
  { base: { kit, places } }: Task,
  least: (own: readonly number[]) => readonly number[],
  isCautious: boolean,
): LeastMv {
  if (isCautious) {
    const isDraining = places.modules.every((module) => (currentsOf(module, kit).at(-1) ?? 0) >= 0);
    return ({ currents }, _, ohms) => leastInLine(currents, ohms, kit, isDraining);
  }
  const shareOf = remember(({ currents }: IslandLoss) => least(currents));
  return (island, fed, ohms, board) => {
    let worst = 0;
    for (let line = 0; line < kit.supplyLines.length - 1; line++) {
      const shared = board === 0 ? 0 : board * (shareOf(island)[line] as number);
      worst = Math.max(worst, ownLossMv(island, fed, line, ohms, kit) + shared);
    }
    return worst;
  };
}

/** Leads with one stop, by what they lose and bring. */
function alikeLeads({ leads }: Columns, kit: KitIndex, leastMv: LeastMv): AlikeLeads[] {
  const alike = new Map<string, { readonly columns: number[]; readonly lead: LeadPlan }>();
  for (const { lead, column } of leads) {
    if (lead.stops.length !== 1) continue;
    const key = likenessOf(lead, boardOhms(lead, kit));
    const known = alike.get(key);
    if (known) known.columns.push(column);
    else alike.set(key, { columns: [column], lead });
  }
  return [...alike.values()].map(({ columns, lead }) => {
    const fed = (lead.stops[0] as LeadPlan['stops'][number]).header.owner as PlacedModule;
    const ohms = leadOhms(lead, kit);
    const board = boardOhms(lead, kit);
    const island = aloneLoss(fed, kit);
    const alone = { island, leastMv: leastMv(island, fed, ohms, board) };
    return { columns, lead, fed, ohms, boardOhms: board, alone };
  });
}

/** What leads to one module have in common that lose and bring the same. */
function likenessOf({ facts, board, boardConnector, stops, lines }: LeadPlan, ohms: number): string {
  const { connector, header } = stops[0] as LeadPlan['stops'][number];
  const from = ohms === 0 ? '' : board.id;
  return [
    facts.kind.id,
    boardConnector,
    connector,
    header.owner.id,
    header.id,
    from,
    ...(lines[0] ?? []),
  ].join(' ');
}

/** What is lost of positive voltages in the lead's own wires, where ground nowhere lies below the supply's. */
function leastInLine(
  currents: readonly number[],
  ohms: readonly number[],
  kit: KitIndex,
  isDraining: boolean,
): number {
  if (!isDraining) return 0;
  const positive = kit.supplyLines.map((line) => (kit.voltages.get(line)?.volts ?? 0) > 0);
  return currents.reduce(
    (worst, ma, i) => (positive[i] && ma > 0 ? Math.max(worst, ma * (ohms[i] as number)) : worst),
    0,
  );
}

/**
 * The least that an island loses in its board's lead, mV for each ohm of it, by voltage: what others draw adds to it,
 * and may relieve its ground. With one board and everything fed it is known.
 */
function boardShares({ base, unfed, fed }: Task, { leads }: Columns, isAllFed: boolean) {
  const { kit, places } = base;
  const ground = kit.supplyLines.length - 1;
  const drawn = places.modules.map((module) => currentsOf(module, kit));
  const sum = (of: (currents: readonly number[]) => number): number =>
    drawn.reduce((total, each) => total + of(each), 0);
  const all = kit.supplyLines.map((_, i) => sum((each) => each[i] as number));
  const lowest = sum((each) => Math.min(0, each[ground] as number));
  const highest = sum((each) => Math.max(0, each[ground] as number));
  const draws = places.modules.filter(({ facts }) => facts.draws.length > 0);
  const boards = new Set(leads.map(({ lead }) => lead.board));
  const isFree = [...boards].every(({ board }) => board.lead === undefined);
  const isOnly = isAllFed && boards.size === 1 && fed.size === 0 && unfed.length === draws.length;
  const signs = signsOf(kit);
  return {
    isFree,
    isKnown: isFree || isOnly,
    least: (own: readonly number[]): number[] =>
      own.slice(0, -1).map((ma, i) => {
        const sign = signs[i] as number;
        if (isOnly) return (all[i] as number) + sign * (all[ground] as number);
        return ma + (sign > 0 ? (own[ground] as number) + lowest : -(own[ground] as number) - highest);
      }),
  };
}

/** Groups on one header exclude one another, so that one row does for all of them. */
function cliquesOf(pairs: readonly GroupPair[]): number[][] {
  const byHeader = new Map<PlacedHeader, number[]>();
  for (const { group, header } of pairs) {
    const list = byHeader.get(header) ?? [];
    list.push(group.column);
    byHeader.set(header, list);
  }
  return [...byHeader.values()];
}
