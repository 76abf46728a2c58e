import type { PlacedHeader, PlacedModule } from '../geometry/place.ts';
import { GND } from '../layout/defaults.ts';
import type { KitIndex } from '../layout/kit-index.ts';
import type { Island } from '../wiring/supply-net.ts';
import { type ProgramRow, type Search, togetherAtMost } from './engine.ts';
import { islandOf } from './groups.ts';
import type { LeadPlan } from './leads.ts';
import {
  aloneLoss,
  boardOhms,
  currentsOf,
  groupLoss,
  type IslandLoss,
  leadOhms,
  ownLosses,
} from './losses.ts';
import type { Columns, GroupColumn, PlanModel } from './model.ts';
import type { Task } from './task.ts';

/** What a lead loses of each voltage with one group, or alone, mV; what others on the board add is not in it. */
interface Pair {
  readonly column: number;
  readonly header: PlacedHeader;
  readonly losses: readonly number[];
  /** At least, with what must be lost on the way to the board. */
  readonly leastMv: number;
}

interface LeadPairs {
  readonly column: number;
  readonly lead: LeadPlan;
  readonly boardOhms: number;
  readonly alone: Omit<Pair, 'column' | 'header'>;
  readonly groups: readonly Pair[];
}

const ANY = Number.POSITIVE_INFINITY;

/** What leads lose with groups. */
export class LossRows {
  readonly pairs: readonly LeadPairs[];
  readonly isShareKnown: boolean;
  /** No board has a lead of its own in which islands could lose together. */
  readonly isFree: boolean;
  /** Ribbons may join grounds of islands: then what is lost in ground has more than one way to go. */
  readonly mayMesh: boolean;
  /** Only what is certain is told. */
  readonly isCautious: boolean;

  constructor(task: Task, model: Columns, isAllFed: boolean, isCautious = false) {
    const shares = boardShares(task, model, isAllFed);
    this.isShareKnown = shares.isKnown;
    this.isFree = shares.isFree;
    this.mayMesh = mayMesh(task, model);
    this.isCautious = isCautious;
    this.pairs = pairsOf(task, model, shares.least, isCautious);
  }
}

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
    for (const { column: lead, alone, groups } of this.#rows.pairs) {
      const told = this.#told.get(lead) ?? new Set();
      this.#told.set(lead, told);
      const tooMuch = groups.filter(({ leastMv, column }) => leastMv > mostMv && !told.has(column));
      for (const { column } of tooMuch) told.add(column);
      for (const columns of cliquesOf(tooMuch)) this.#search.addRow(togetherAtMost(1, [lead, ...columns]));
      if (alone.leastMv > mostMv && !told.has(lead)) {
        told.add(lead);
        const others = groups.map(({ column }) => column);
        const weights = [...others.map(() => 1), -1];
        this.#search.addRow({ least: 0, most: ANY, columns: [...others, lead], weights });
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
    for (const { column: lead, lead: plan, boardOhms: ohms, alone, groups } of this.#rows.pairs) {
      if (ohms === 0) continue;
      for (let line = 0; line < ground; line++) {
        const sign = Math.sign(kit.voltages.get(kit.supplyLines[line] as string)?.volts ?? 0);
        const shares = drawn.map((each) => ohms * ((each[line] as number) + sign * (each[ground] as number)));
        const most = shares.reduce((sum, share) => sum + Math.max(0, share), 0);
        const floor = mostMv - most;
        const own = (losses: readonly number[]): number =>
          Math.min(Math.max(losses[line] ?? floor, floor), mostMv);
        const base0 = own(alone.losses);
        if (base0 <= floor && groups.every(({ losses }) => own(losses) <= floor)) continue;
        const entries: [number, number][] = groups.map(({ column, losses }) => [column, own(losses) - base0]);
        shares.forEach((share, i) => {
          if (share !== 0) entries.push([fedFrom.get(keyOf(i, plan.board.index)) as number, share]);
        });
        entries.push([lead, most]);
        const kept = entries.filter(([, weight]) => Math.abs(weight) > 1e-9);
        this.#search.addRow({
          least: Number.NEGATIVE_INFINITY,
          most: mostMv - base0 + most,
          columns: kept.map(([column]) => column),
          weights: kept.map(([, weight]) => weight),
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

/**
 * What each lead would lose with each group that it would feed. What several stops share is left out; where grounds
 * may be joined, so is all that is lost in ground, which is then at least nothing on a positive voltage.
 */
function pairsOf(
  task: Task,
  model: Columns,
  least: (own: readonly number[]) => readonly number[],
  isCautious: boolean,
): LeadPairs[] {
  const { kit } = task.base;
  const isDraining = task.base.places.modules.every((module) => (currentsOf(module, kit).at(-1) ?? 0) >= 0);
  const at = new Map<PlacedModule, { group: GroupColumn; header: PlacedHeader; island: IslandLoss }[]>();
  for (const group of model.groups) {
    if (group.island.length === 0) continue;
    const island = groupLoss(group.group, kit);
    for (const { seats } of group.group.placings)
      for (const { header } of seats) {
        const module = header.owner as PlacedModule;
        if (!group.island.includes(module)) continue;
        const list = at.get(module) ?? [];
        list.push({ group, header, island });
        at.set(module, list);
      }
  }
  return model.leads
    .filter(({ lead }) => lead.stops.length === 1)
    .map(({ lead, column }) => {
      const module = (lead.stops[0] as LeadPlan['stops'][number]).header.owner as PlacedModule;
      const ohms = leadOhms(lead, kit);
      const board = boardOhms(lead, kit);
      const judged = (island: IslandLoss) => {
        if (isCautious) return { losses: [], leastMv: leastInLine(island.currents, ohms, kit, isDraining) };
        const losses = ownLosses(island, module, ohms, kit);
        const share = least(island.currents);
        const leastMv = losses.reduce(
          (worst, loss, i) => Math.max(worst, loss + board * (share[i] as number)),
          0,
        );
        return { losses, leastMv };
      };
      return {
        column,
        lead,
        boardOhms: board,
        alone: judged(aloneLoss(module, kit)),
        groups: (at.get(module) ?? []).map(({ group, header, island }) => ({
          column: group.column,
          header,
          ...judged(island),
        })),
      };
    });
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
  const signs = kit.supplyLines.map((line) => Math.sign(kit.voltages.get(line)?.volts ?? 0));
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
function cliquesOf(pairs: readonly Pair[]): number[][] {
  const byHeader = new Map<PlacedHeader, number[]>();
  for (const { column, header } of pairs) {
    const list = byHeader.get(header) ?? [];
    list.push(column);
    byHeader.set(header, list);
  }
  return [...byHeader.values()];
}
