import type { PlacedHeader } from '../geometry/place.ts';
import { assignHeaders } from './assign-headers.ts';
import { type Engine, type ProgramRow, type Search, togetherAtMost } from './engine.ts';
import type { LeadPlan } from './leads.ts';
import { LossBounds, LossRows } from './loss-bounds.ts';
import type { GroupColumn, LeadColumn, PlanModel } from './model.ts';
import { atMm } from './placing.ts';
import type { Task } from './task.ts';

/** What is made, and from which header of its board each lead comes. */
export interface Choice {
  readonly groups: readonly GroupColumn[];
  readonly leads: readonly (LeadColumn & { readonly from: PlacedHeader })[];
  readonly values: readonly number[];
}

/** The order in which a choice is better than another one: each number counts only where those before it are equal. */
export interface Score {
  readonly unlinked: number;
  readonly unfed: number;
  /** Money for what is not owned, as far as prices are known. */
  readonly cost: number;
  /** Pieces to be bought that have no price. */
  readonly unpriced: number;
  readonly ribbons: number;
  readonly worstLossMv: number;
}

/** What tells of a choice whether it may stand. */
export interface Judged {
  readonly worstLossMv: number;
  /** Rows that the choice breaks and that none may break. */
  readonly broken: readonly ProgramRow[];
}

export interface Chosen {
  readonly choice: Choice;
  readonly score: Score;
  /** Levels of the score that are proven, counted from the first. */
  readonly proven: number;
  /** No plan with as few unlinked costs less. */
  readonly bound: number;
}

const LEVELS = ['unlinked', 'unfed', 'cost', 'unpriced', 'ribbons'] as const;
type Level = (typeof LEVELS)[number];

const isOn = (value: number | undefined): boolean => (value ?? 0) > 0.5;

/** Weights of one level by column. */
function costsOf(model: PlanModel, level: Level): number[] {
  const costs = model.program.most.map(() => 0);
  const put = (column: number, cost: number): void => {
    costs[column] = cost;
  };
  if (level === 'unlinked') for (const { column } of model.unlinked) put(column, 1);
  if (level === 'unfed') for (const { column } of model.unfed) put(column, 1);
  if (level === 'cost') for (const { facts, column } of model.bought) put(column, facts.kind.price ?? 0);
  if (level === 'unpriced')
    for (const { facts, column } of model.bought) put(column, facts.kind.price === undefined ? 1 : 0);
  if (level === 'ribbons') {
    for (const { group, column } of model.groups)
      put(column, group.placings.filter(({ kept }) => kept === undefined).length);
    for (const { column } of model.leads) put(column, 1);
  }
  return costs;
}

const sumOf = (costs: readonly number[], values: readonly number[]): number =>
  costs.reduce((sum, cost, i) => sum + (cost === 0 ? 0 : cost * (values[i] ?? 0)), 0);

/** Differences of voltage smaller than this are none, mV. */
export const SAME_MV = 1e-3;

/** Rounds after which cuts that the program cannot know are no longer added. */
const MOST_ROUNDS = 60;

/** Plans tried in vain where the loss of a plan is known only when it is drawn. */
const MOST_VAIN = 3;

export type Judge = (choice: Choice) => Judged;

/** Where the search is, for whoever waits. */
export interface Progress {
  readonly step: 'placing' | 'looking' | 'linking' | 'feeding';
  readonly found?: number;
  /** Of how many, where that is known. */
  readonly of?: number;
}

/** Finds the best choice and says how far that is proven. */
export class Chooser {
  readonly #task: Task;
  readonly #model: PlanModel;
  readonly #judge: Judge;
  readonly #engine: Engine;
  readonly #added: ProgramRow[] = [];
  #search: Search;
  readonly #lengths: readonly number[];
  #rounds = 0;

  constructor(task: Task, model: PlanModel, engine: Engine, judge: Judge) {
    this.#task = task;
    this.#model = model;
    this.#judge = judge;
    this.#engine = engine;
    this.#search = engine(model.program);
    this.#lengths = lengthCosts(model);
  }

  /** Everything above the loss, each level proven before the next where it is not as low as can be from the start. */
  *run(start?: Chosen): Generator<Progress, Chosen | undefined> {
    try {
      return yield* start ? this.#lowerFrom(start) : this.#run();
    } finally {
      this.#search.close();
    }
  }

  /** All but the loss is settled. */
  *#lowerFrom(start: Chosen): Generator<Progress, Chosen> {
    const { choice, score } = start;
    const values = this.#model.program.most.map((_, column) => choice.values[column] ?? 0);
    const sums = [score.unlinked, score.unfed, score.cost, score.unpriced, score.ribbons];
    for (const [level, name] of LEVELS.entries())
      this.#fix(costsOf(this.#model, name), sums[level] as number);
    const first: Solved = {
      choice: { ...choice, values },
      bound: score.cost,
      worstLossMv: score.worstLossMv,
      isProven: true,
    };
    const best = yield* this.#leastLoss(first, score.unfed === 0);
    return {
      choice: best.choice,
      score: { ...score, worstLossMv: best.worstLossMv },
      proven: best.isProven ? 6 : 5,
      bound: start.bound,
    };
  }

  *#run(): Generator<Progress, Chosen | undefined> {
    const levels = LEVELS.map((level) => costsOf(this.#model, level));
    const ribbons = levels[4] as number[];
    yield { step: 'linking' };
    // One search for all levels is enough where all but the last come out at nothing.
    const spread = ribbons.map((cost, i) => cost + (this.#lengths[i] as number));
    const least = Math.min(1, ...(levels[2] as number[]).filter((cost) => cost > 0));
    const weights = [400, 200, 20 / least, 20, 1];
    const all = spread.map((cost, i) =>
      weights
        .slice(0, 4)
        .reduce((sum, weight, level) => sum + weight * ((levels[level] as number[])[i] as number), cost),
    );
    let first = this.#solve(all, 0.45);
    let bound = 0;
    let proven = 0;
    if (!first) return undefined;
    const isNothing = (level: number, values: readonly number[]): boolean =>
      sumOf(levels[level] as number[], values) < 1e-6;
    if (first.isProven && [0, 1, 2, 3].every((level) => isNothing(level, (first as Solved).choice.values))) {
      proven = 5;
      for (const level of [0, 1, 2, 3]) this.#fix(levels[level] as number[], 0);
    } else {
      let isProven = true;
      for (const [level, costs] of levels.entries()) {
        const isLast = level === 4;
        const known = isNothing(level, first.choice.values);
        const solved: Solved | false | undefined =
          known && !isLast
            ? { ...first, isProven: true, bound: 0 }
            : this.#solve(
                isLast ? spread : costs.map((cost, i) => cost + 1e-5 * (spread[i] as number)),
                isLast ? 0.45 : 1e-6,
              );
        if (!solved) break;
        first = solved;
        if (level === 2 && isProven) bound = Math.max(0, solved.bound);
        isProven &&= solved.isProven;
        if (isProven) proven = level + 1;
        this.#fix(costs, sumOf(costs, solved.choice.values));
      }
    }
    this.#fix(ribbons, sumOf(ribbons, first.choice.values));
    const sums = levels.map((costs) => sumOf(costs, (first as Solved).choice.values));
    bound = proven >= 3 ? Math.round((sums[2] as number) * 1e4) / 1e4 : Math.min(bound, sums[2] as number);
    yield { step: 'feeding', found: Math.round(sums[4] as number) };
    const best = yield* this.#leastLoss(first, sums[1] === 0);
    const [unlinked, unfed, cost, unpriced, count] = sums.map((sum) => Math.round(sum * 1e4) / 1e4);
    return {
      choice: best.choice,
      score: {
        unlinked: unlinked as number,
        unfed: unfed as number,
        cost: cost as number,
        unpriced: unpriced as number,
        ribbons: (count as number) + this.#task.kept.length,
        worstLossMv: best.worstLossMv,
      },
      proven: proven === 5 && best.isProven ? 6 : proven,
      bound,
    };
  }

  #fix(costs: readonly number[], sum: number): void {
    const columns = costs.flatMap((cost, column) => (cost === 0 ? [] : [column]));
    if (columns.length === 0) return;
    this.addRow({
      least: Number.NEGATIVE_INFINITY,
      most: sum + 1e-6,
      columns,
      weights: columns.map((column) => costs[column] as number),
    });
  }

  /**
   * The least of a sum among choices that may stand: what may not is cut off, and the search goes on. Nothing where
   * there is none, false where the search was given up.
   */
  #solve(costs: readonly number[], gap: number): Solved | false | undefined {
    for (; ; this.#rounds++) {
      const { state, values, bound } = this.#search.minimise(costs, gap);
      if (!values) return state === 'none' ? undefined : false;
      const choice = this.#read(values);
      const isLast = this.#rounds > MOST_ROUNDS;
      if (Array.isArray(choice)) {
        if (isLast) return false;
        this.#cutHeaders(choice);
        continue;
      }
      const { worstLossMv, broken } = this.#judge(choice);
      if (broken.length === 0 || isLast)
        return { choice, bound, worstLossMv, isProven: state === 'proven' && broken.length === 0 };
      for (const row of broken) this.addRow(row);
    }
  }

  #read(values: readonly number[]): Choice | LeadColumn[] {
    const leads = this.#model.leads.filter(({ column }) => isOn(values[column]));
    const assigned = assignHeaders(leads.map((lead) => [lead]));
    if (!assigned.ok) return assigned.error.flat();
    return {
      groups: this.#model.groups.filter(({ column }) => isOn(values[column])),
      leads: assigned.value,
      values,
    };
  }

  #cutHeaders(wanting: readonly LeadColumn[]): void {
    const places = new Set(wanting.flatMap(({ lead }) => lead.places));
    const columns = this.#model.leads
      .filter(({ lead }) => lead.places.every((place) => places.has(place)))
      .map(({ column }) => column);
    this.addRow(togetherAtMost(places.size, columns));
  }

  /** Lowers the worst loss as long as anything is found that has less of it. */
  *#leastLoss(first: Solved, isAllFed: boolean): Generator<Progress, Solved> {
    const rows = new LossRows(this.#task, this.#model, isAllFed);
    if (!rows.mayMesh) return yield* this.#lower(first, rows, MOST_ROUNDS);
    // Where ribbons join grounds, estimates lead to a good plan, and only what is certain may prove it.
    const certain = this.#search;
    this.#search = this.#engine({
      ...this.#model.program,
      rows: [...this.#model.program.rows, ...this.#added],
    });
    const { length } = this.#added;
    const good = yield* this.#lower(first, rows, MOST_ROUNDS / 6);
    this.#search.close();
    this.#search = certain;
    this.#added.length = length;
    return yield* this.#lower(good, new LossRows(this.#task, this.#model, isAllFed, true), MOST_VAIN);
  }

  *#lower(first: Solved, rows: LossRows, mostRounds: number): Generator<Progress, Solved> {
    let best = first;
    let inVain = 0;
    const bounds = new LossBounds(this.#task, this.#model, this, rows);
    for (let round = 0; round < mostRounds && inVain < MOST_VAIN; round++) {
      if (best.worstLossMv < SAME_MV) return { ...best, isProven: true };
      bounds.ask(best.worstLossMv - SAME_MV);
      const next = this.#solve(this.#lengths, 1e-3);
      if (!next) return { ...best, isProven: next === undefined && first.isProven };
      if (next.worstLossMv < best.worstLossMv - SAME_MV / 2) {
        best = { ...next, isProven: first.isProven };
        inVain = 0;
      } else if (bounds.isExact) {
        this.addRow(notAgain(next.choice));
        inVain++;
      } else bounds.bringInBoards();
      yield { step: 'feeding', found: Math.round(best.worstLossMv * 10) / 10 };
    }
    return { ...best, isProven: false };
  }

  addRow(row: ProgramRow): void {
    this.#added.push(row);
    this.#search.addRow(row);
  }

  addColumn(most: number): number {
    return this.#search.addColumn(most);
  }
}

const notAgain = ({ groups, leads }: Choice): ProgramRow => {
  const columns = [...groups, ...leads].map(({ column }) => column);
  return togetherAtMost(columns.length - 1, columns);
};

interface Solved {
  readonly choice: Choice;
  readonly bound: number;
  readonly worstLossMv: number;
  readonly isProven: boolean;
}

/** Length of leads, so that of equal plans the one with the shorter leads comes first; all together less than half a ribbon. */
function lengthCosts(model: PlanModel): number[] {
  const costs = model.program.most.map(() => 0);
  const lengthOf = ({ facts }: LeadPlan): number => atMm(facts, facts.connectors.length - 1);
  const longest = Math.max(1, ...model.leads.map(({ lead }) => lengthOf(lead)));
  const feeds = Math.max(1, model.unfed.length);
  for (const { lead, column } of model.leads) costs[column] = (0.4 * lengthOf(lead)) / longest / feeds;
  return costs;
}
