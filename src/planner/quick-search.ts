import { exceeds } from '../geometry/exceeds.ts';
import type { PlacedModule } from '../geometry/place.ts';
import { byPromise, type Candidate, Candidates, leastByKind, MONEY, PIECES } from './candidates.ts';
import type { Score } from './choose.ts';
import { cheapestFeeding, type FeedOption, type LeadStock } from './feed-cost.ts';
import { headersOf, islandOf } from './groups.ts';
import type { LossRows } from './loss-bounds.ts';
import type { Columns } from './model.ts';
import type { Task } from './task.ts';

/** What the search settles: columns of groups and of leads, and the score that they have if nothing else comes in. */
export interface QuickChoice {
  /** Else the search was given up, and there may be better ones. */
  readonly isProven: boolean;
  readonly groups: ReadonlySet<number>;
  /** For each lead the columns that would do equally well: the same kind, to another module or from another board. */
  readonly leads: readonly (readonly number[])[];
  readonly score: Score;
}

/** Score as numbers in the order in which they count. */
type Vector = readonly [unlinked: number, unfed: number, cost: number, ribbons: number, lossMv: number];

const SAME = 1e-9;
const SAME_MV = 1e-3;

/** Whether a is better than b, or cannot be told from it. */
function isNoBetter(a: Vector, b: Vector): boolean {
  for (let i = 0; i < 5; i++) {
    const difference = (a[i] as number) - (b[i] as number);
    if (Math.abs(difference) <= (i === 4 ? SAME_MV : SAME)) continue;
    return difference > 0;
  }
  return true;
}

/** More than any leads cost, and less than all of them together may differ by. */
const PROHIBITIVE = 1e15;
const LITTLE = 1e-6;

/** Nodes after which the search gives up. */
const MOST_NODES = 20_000;

/**
 * Branch and bound, host by host, over groups that ribbons make, with the cheapest leads for what comes of them. It
 * takes it that a lead from any board would do as well, and that what an island loses is known beforehand; whoever
 * asks must see whether that was so. Nothing where the take is of another sort, or the search takes too long.
 */
export function searchQuickly(task: Task, columns: Columns, rows: LossRows): QuickChoice | undefined {
  if (task.standing.length > 0 || task.fed.size > 0) return undefined;
  if (columns.leads.some(({ lead }) => lead.stops.length > 1) || isManyLevelled(columns)) return undefined;
  const candidates = new Candidates(task, columns, rows);
  return candidates.isMixed ? undefined : new QuickSearch(task, candidates).run();
}

/** Whether a module could take part in two groups that join voltages. */
function isManyLevelled({ groups }: Columns): boolean {
  const busOf = new Map<PlacedModule, unknown>();
  for (const { group } of groups)
    for (const module of islandOf(group)) {
      const bus = group.placings[0]?.facts.bus;
      if ((busOf.get(module) ?? bus) !== bus) return true;
      busOf.set(module, bus);
    }
  return groups.some(({ group }) => {
    const roles = new Map(headersOf(group).map(({ owner, role }) => [owner, role]));
    return roles.size !== headersOf(group).length;
  });
}

/** Of the host with the fewest ways. */
const indexOfShortest = (lists: readonly (readonly Candidate[])[]): number =>
  lists.reduce((best, list, i) => (list.length < (lists[best] as typeof list).length ? i : best), 0);

interface Best {
  readonly chosen: readonly Candidate[];
  readonly vector: Vector;
  readonly leads: QuickChoice['leads'];
}

class QuickSearch {
  readonly #task: Task;
  readonly #candidates: Candidates;
  readonly #lists: readonly (readonly Candidate[])[];
  #best: Best | undefined;
  #nodes = 0;

  constructor(task: Task, candidates: Candidates) {
    this.#task = task;
    this.#candidates = candidates;
    this.#lists = candidates.lists;
  }

  run(): QuickChoice | undefined {
    this.#dive();
    // What cannot link as many as what was found is asked for no losses.
    const lists = this.#tighten([], this.#lists) ?? [];
    this.#branch(
      [],
      lists.map((list) => list.filter(({ canBeFed }) => canBeFed).sort(byPromise)),
    );
    if (!this.#best) return undefined;
    const [unlinked, unfed, all, ribbons, worstLossMv] = this.#best.vector;
    const unpriced = all % PIECES;
    const cost = (all - unpriced) / MONEY;
    this.#neaten();
    const isProven = this.#nodes <= MOST_NODES;
    const { chosen, leads } = this.#best;
    const groups = new Set(chosen.map(({ group }) => group.column));
    return { groups, leads, isProven, score: { unlinked, unfed, cost, unpriced, ribbons, worstLossMv } };
  }

  /** Takes for each host, fewest ways first, what links most: seldom the best, but hardly ever far from it. */
  #dive(): void {
    const chosen: Candidate[] = [];
    for (let lists = this.#lists; lists.length > 0; ) {
      const next = indexOfShortest(lists);
      const candidate = (lists[next] as readonly Candidate[]).find(({ canBeFed }) => canBeFed);
      const rest = lists.filter((_, i) => i !== next);
      if (candidate) chosen.push(candidate);
      lists = candidate ? this.#beside(candidate, rest) : rest;
    }
    if (!this.#isTooMany(chosen)) this.#finish(chosen);
  }

  /** What is left for others beside a group. */
  #beside(candidate: Candidate, lists: readonly (readonly Candidate[])[]): readonly (readonly Candidate[])[] {
    return lists.map((list) => list.filter((other) => !this.#candidates.isInTheWay(candidate, other)));
  }

  /** Whether boards have not enough headers to feed what must be fed. */
  #isTooMany(chosen: readonly Candidate[]): boolean {
    return chosen.filter(({ mustBeFed }) => mustBeFed).length > this.#candidates.headers;
  }

  #branch(chosen: readonly Candidate[], lists: readonly (readonly Candidate[])[]): void {
    if (this.#nodes++ > MOST_NODES) return;
    const tight = this.#tighten(chosen, lists);
    if (!tight || this.#isHopeless(chosen, tight)) return;
    if (this.#isTooMany(chosen)) return;
    if (tight.length === 0) {
      this.#finish(chosen);
      return;
    }
    const next = indexOfShortest(tight);
    const rest = tight.filter((_, i) => i !== next);
    let best = this.#best;
    for (const candidate of tight[next] as readonly Candidate[]) {
      if (best !== this.#best) {
        // What was found since may be as good as anything that is left here.
        best = this.#best;
        const left = this.#tighten(chosen, tight);
        if (!left || this.#isHopeless(chosen, left)) return;
      }
      this.#branch([...chosen, candidate], this.#beside(candidate, rest));
    }
    this.#branch(chosen, rest);
  }

  /** Whether nothing that can still come of a choice is better than the best. */
  #isHopeless(chosen: readonly Candidate[], lists: readonly (readonly Candidate[])[]): boolean {
    if (!this.#best) return false;
    const { vector } = this.#best;
    const bound = this.#bound(chosen, lists, Number.POSITIVE_INFINITY);
    if (isNoBetter(bound, vector)) return true;
    const isEqualSoFar = [0, 1, 2, 3].every(
      (i) => Math.abs((bound[i] as number) - (vector[i] as number)) <= SAME,
    );
    if (!isEqualSoFar) return false;
    // As good in all else: is it still, with what loses less alone?
    return isNoBetter(this.#bound(chosen, lists, vector[4] - SAME_MV), vector);
  }

  /** Where no more may be left unlinked than the best leaves, every host must link as many as it can. */
  #tighten(
    chosen: readonly Candidate[],
    lists: readonly (readonly Candidate[])[],
  ): readonly (readonly Candidate[])[] | undefined {
    if (!this.#best) return lists;
    const linked = chosen.reduce((sum, { wishes }) => sum + wishes.length, 0);
    const most = lists.map((list) => list.reduce((max, { wishes }) => Math.max(max, wishes.length), 0));
    const open = this.#task.wishes.length - linked - most.reduce((sum, each) => sum + each, 0);
    const spare = this.#best.vector[0] - open;
    if (spare < 0) return undefined;
    return lists.map((list, i) => list.filter(({ wishes }) => wishes.length >= (most[i] as number) - spare));
  }

  #costs(chosen: readonly Candidate[]): number {
    const used = this.#candidates.flats.map(() => 0);
    for (const { kinds } of chosen) for (const kind of kinds) used[kind] = (used[kind] as number) + 1;
    return this.#candidates.flats.reduce(
      (sum, { left, price }, i) => sum + Math.max(0, (used[i] as number) - left) * price,
      0,
    );
  }

  /** Not better than anything that can still come of a choice, if it loses no more than so much. */
  #bound(chosen: readonly Candidate[], lists: readonly (readonly Candidate[])[], mostMv: number): Vector {
    const linked = chosen.reduce((sum, { wishes }) => sum + wishes.length, 0);
    const merged = chosen.reduce((sum, each) => sum + each.merged, 0);
    let possible = 0;
    let lossMv = chosen.reduce((worst, { leastMv }) => Math.max(worst, leastMv), 0);
    let ribbons = chosen.reduce((sum, each) => sum + each.ribbons, 0);
    let mergeable = 0;
    const reachable = new Set<number>();
    const joinable = new Set(chosen.flatMap(({ group }) => group.islands));
    const needed: FeedOption[][] = [];
    const flats: FeedOption[][] = [];
    for (const list of lists) {
      let most = 0;
      let merges = 0;
      let least = Number.POSITIVE_INFINITY;
      let net = 0;
      for (const { wishes, merged: joins, leastMv, ribbons: own, group } of list) {
        most = Math.max(most, wishes.length);
        merges = Math.max(merges, joins);
        least = Math.min(least, leastMv);
        net = Math.min(net, own - joins);
        for (const wish of wishes) reachable.add(wish);
        for (const island of group.islands) joinable.add(island);
      }
      possible += most;
      mergeable += merges;
      ribbons += net;
      if (list.length === 0 || !this.#mustChoose(chosen, lists, list)) continue;
      lossMv = Math.max(lossMv, least);
      const fine = list.filter(({ leastMv }) => leastMv <= mostMv);
      if (fine.every(({ mustBeFed }) => mustBeFed)) needed.push(fine.flatMap(({ feeds }) => feeds));
      if (fine.every(({ kinds }) => kinds.length === 1))
        flats.push(fine.map(({ kinds }) => ({ kind: kinds[0] as number, lossMv: 0, columns: [] })));
    }
    possible = Math.min(possible, reachable.size);
    // An island that could be joined and is not makes one more without power, which is worse than any cost.
    const unfed = this.#candidates.unfeedable.filter((island) => !joinable.has(island)).length;
    const wanting = this.#candidates.alone.size - merged - unfed;
    const dark = Math.max(0, wanting - mergeable - this.#candidates.headers);
    const { stocks, option: isDark } = this.#withDark(dark);
    for (const { mustBeFed, feeds } of chosen) if (mustBeFed) needed.push([...feeds]);
    for (const [island, options] of this.#candidates.alone)
      if (!joinable.has(island) && options.length > 0) needed.push([...options, ...isDark]);
    const any = stocks.map(
      (_, kind): FeedOption => ({ kind, lossMv: Number.NEGATIVE_INFINITY, columns: [] }),
    );
    for (let more = wanting - mergeable - needed.length; more > 0; more--) needed.push(any);
    const leads = Math.round(cheapestFeeding(needed, stocks, mostMv)?.cost ?? Number.POSITIVE_INFINITY);
    return [
      this.#task.wishes.length - linked - possible,
      unfed + dark,
      this.#costs(chosen) + this.#leastFlats(chosen, flats) + leads,
      ribbons + wanting - dark,
      lossMv,
    ];
  }

  /** Kinds of lead, with the dark as a further one, where so many modules must do without for want of headers. */
  #withDark(most: number): { readonly stocks: readonly LeadStock[]; readonly option: readonly FeedOption[] } {
    const { stocks } = this.#candidates;
    if (most === 0) return { stocks, option: [] };
    return {
      stocks: [...stocks.map((stock) => ({ ...stock, each: LITTLE })), { free: most, cost: PROHIBITIVE }],
      option: [{ kind: stocks.length, lossMv: Number.NEGATIVE_INFINITY, columns: [] }],
    };
  }

  /** The least that hosts still to be linked add for their ribbons, after those that are chosen. */
  #leastFlats(chosen: readonly Candidate[], options: readonly (readonly FeedOption[])[]): number {
    const used = this.#candidates.flats.map(() => 0);
    for (const { kinds } of chosen) for (const kind of kinds) used[kind] = (used[kind] as number) + 1;
    const left = this.#candidates.flats.map((flat, kind) => ({
      free: Math.max(0, flat.left - (used[kind] as number)),
      cost: flat.price,
    }));
    return cheapestFeeding(options, left, 0)?.cost ?? Number.POSITIVE_INFINITY;
  }

  /** Whether leaving out a host would leave more unlinked than the best does. */
  #mustChoose(
    chosen: readonly Candidate[],
    lists: readonly (readonly Candidate[])[],
    list: readonly Candidate[],
  ): boolean {
    const linked = chosen.reduce((sum, { wishes }) => sum + wishes.length, 0);
    const others = lists.reduce(
      (sum, each) =>
        each === list ? sum : sum + each.reduce((max, { wishes }) => Math.max(max, wishes.length), 0),
      0,
    );
    return this.#task.wishes.length - linked - others > (this.#best?.vector[0] ?? Number.POSITIVE_INFINITY);
  }

  /** All hosts are settled. */
  #finish(chosen: readonly Candidate[]): void {
    const found = this.#evaluate(chosen);
    if (found) this.#best = found;
  }

  /** Of groups that do as well takes the neater: the shorter ribbon, and none that hangs out of its row. */
  #neaten(): void {
    for (const own of this.#best?.chosen ?? []) {
      const list = this.#lists.find((each) => each.includes(own)) ?? [];
      const neater = list
        .filter(
          ({ wishes, ribbons, lengthMm }) =>
            lengthMm < own.lengthMm - SAME && wishes.length === own.wishes.length && ribbons === own.ribbons,
        )
        .sort((a, b) => a.lengthMm - b.lengthMm);
      for (const candidate of neater) {
        const others = (this.#best as Best).chosen.filter((each) => each !== own);
        if (others.some((other) => this.#candidates.isInTheWay(candidate, other))) continue;
        const found = this.#evaluate([...others, candidate], true);
        if (!found) continue;
        this.#best = found;
        break;
      }
    }
  }

  /**
   * Feeds what comes of a choice as cheaply as can be, then with as little lost as that allows. Nothing where that is
   * worse than the best, or no better.
   *
   * @param orEqual - as good as the best will do
   */
  #evaluate(chosen: readonly Candidate[], orEqual = false): Best | undefined {
    const joined = new Set(chosen.flatMap(({ group }) => group.islands));
    const alone = [...this.#candidates.allAlone]
      .filter(([island]) => !joined.has(island))
      .map(([, options]) => options);
    const together = chosen.filter(({ mustBeFed }) => mustBeFed).map(({ allFeeds }) => allFeeds);
    const feedable = alone.filter((options) => options.length > 0);
    const dark = Math.max(0, together.length + feedable.length - this.#candidates.headers);
    const { stocks, option: isDark } = this.#withDark(dark);
    const all = [...together, ...feedable.map((options) => [...options, ...isDark])];
    const fed = all.map(leastByKind);
    const unlinked = this.#task.wishes.length - chosen.reduce((sum, { wishes }) => sum + wishes.length, 0);
    const unfed = alone.length - feedable.length + dark;
    const cheapest = cheapestFeeding(fed, stocks, Number.POSITIVE_INFINITY);
    // What ribbons join must be fed; only a module alone may do without.
    if (!cheapest || cheapest.cost >= PROHIBITIVE) return undefined;
    const money = this.#costs(chosen) + Math.round(cheapest.cost);
    const ribbons = chosen.reduce((sum, each) => sum + each.ribbons, 0) + fed.length - dark;
    const vector = (lossMv: number): Vector => [unlinked, unfed, money, ribbons, lossMv];
    const isRefused = (lossMv: number): boolean => {
      if (!this.#best) return false;
      return orEqual
        ? !isNoBetter(this.#best.vector, vector(lossMv))
        : isNoBetter(vector(lossMv), this.#best.vector);
    };
    const least = fed.reduce(
      (worst, options) => Math.max(worst, Math.min(...options.map(({ lossMv }) => lossMv))),
      0,
    );
    if (isRefused(least)) return undefined;
    const losses = [...new Set(fed.flatMap((options) => options.map(({ lossMv }) => lossMv)))]
      .filter((lossMv) => Number.isFinite(lossMv) && !exceeds(least, lossMv))
      .sort((a, b) => a - b);
    let low = 0;
    let high = losses.length - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      const feeding = cheapestFeeding(fed, stocks, losses[middle] as number);
      if (feeding && feeding.cost < cheapest.cost + 0.5) high = middle;
      else low = middle + 1;
    }
    const lossMv = losses[low] ?? 0;
    if (isRefused(lossMv)) return undefined;
    const feeding = cheapestFeeding(fed, stocks, losses.length > 0 ? lossMv : Number.POSITIVE_INFINITY);
    return {
      chosen,
      vector: vector(lossMv),
      leads: (feeding?.chosen ?? []).flatMap(({ kind }, i) => {
        if (kind >= this.#candidates.stocks.length) return [];
        const equal = (all[i] ?? [])
          .filter((option) => option.kind === kind && option.lossMv <= lossMv + SAME_MV / 2)
          .sort((a, b) => a.lossMv - b.lossMv);
        return [equal.flatMap(({ columns }) => columns)];
      }),
    };
  }
}
