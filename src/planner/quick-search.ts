import { exceeds } from '../geometry/exceeds.ts';
import type { PlacedHeader, PlacedModule } from '../geometry/place.ts';
import type { RibbonFacts } from '../layout/kit-index.ts';
import { ownedLeft } from '../wiring/stock.ts';
import type { Island } from '../wiring/supply-net.ts';
import type { Score } from './choose.ts';
import { cheapestFeeding, type FeedOption, type LeadStock } from './feed-cost.ts';
import { clash, headersOf, hostOf, islandOf, membersOf, patchesOf } from './groups.ts';
import { stopModules } from './leads.ts';
import type { LossRows } from './loss-bounds.ts';
import { brings, type Columns, draws, type GroupColumn } from './model.ts';
import { neatMm } from './placing.ts';
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

/** A group beside the others that its host could have. */
interface Candidate {
  readonly group: GroupColumn;
  readonly wishes: readonly number[];
  readonly ribbons: number;
  /** Index of each new ribbon's kind. */
  readonly kinds: readonly number[];
  /** Islands fewer than without it. */
  readonly merged: number;
  /** Of each kind of lead the best. */
  readonly feeds: readonly FeedOption[];
  readonly allFeeds: readonly FeedOption[];
  readonly leastMv: number;
  /** Ribbon that it takes, and what of it would hang out of the row; of equal plans the neater one comes first. */
  readonly lengthMm: number;
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

/** Money first, in ten thousandths, then pieces without a price, as one whole number. */
const PIECES = 1000;
const MONEY = 1e4 * PIECES;

const priceOf = ({ kind }: RibbonFacts): number =>
  kind.price === undefined ? 1 : Math.round(kind.price * 1e4) * PIECES;

/** Nodes after which the search gives up. */
const MOST_NODES = 20_000;

/**
 * Branch and bound, host by host, over groups that ribbons make, with the cheapest leads for what comes of them. It
 * takes it that headers of boards are plenty, and that what an island loses is known beforehand; whoever asks must
 * see whether that was so. Nothing where the take is of another sort, or the search takes too long.
 */
export function searchQuickly(task: Task, columns: Columns, rows: LossRows): QuickChoice | undefined {
  if (task.standing.length > 0 || task.fed.size > 0) return undefined;
  if (columns.leads.some(({ lead }) => lead.stops.length > 1) || isManyLevelled(columns)) return undefined;
  return new QuickSearch(task, columns, rows).run();
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

/** Of each kind of lead the option that loses least. */
function leastByKind(options: readonly FeedOption[]): FeedOption[] {
  const best = new Map<number, FeedOption>();
  for (const option of options) {
    const known = best.get(option.kind);
    if (!known || option.lossMv < known.lossMv) best.set(option.kind, option);
  }
  return [...best.values()];
}

interface Best {
  readonly chosen: readonly Candidate[];
  readonly vector: Vector;
  readonly leads: QuickChoice['leads'];
}

class QuickSearch {
  readonly #task: Task;
  readonly #lists: Candidate[][];
  readonly #flats: { readonly left: number; readonly price: number }[] = [];
  readonly #stocks: LeadStock[] = [];
  readonly #alone = new Map<Island, readonly FeedOption[]>();
  readonly #allAlone = new Map<Island, readonly FeedOption[]>();
  readonly #clashing = new Map<Candidate, Map<Candidate, boolean>>();
  readonly #conflicts: (a: Candidate, b: Candidate) => boolean;
  readonly #unfeedable: number;
  #best: Best | undefined;
  #nodes = 0;

  constructor(task: Task, { groups, leads }: Columns, rows: LossRows) {
    this.#task = task;
    const { base, wishes } = task;
    const bodyMm = base.limits.connectorBodyMm;
    const leadKinds = [...new Set(leads.map(({ lead }) => lead.facts))];
    this.#stocks = leadKinds.map((facts) => {
      const left = ownedLeft(base.take, facts.kind);
      return { free: left ?? Number.POSITIVE_INFINITY, cost: priceOf(facts) };
    });
    const plan = new Map(leads.map(({ lead, column }) => [column, lead]));
    const optionsOf = new Map<GroupColumn | Island, FeedOption[]>();
    const put = (key: GroupColumn | Island, option: FeedOption): void => {
      const list = optionsOf.get(key) ?? [];
      list.push(option);
      optionsOf.set(key, list);
    };
    const byColumn = new Map(groups.map((group) => [group.column, group]));
    for (const { column, lead, alone, groups: pairs } of rows.pairs) {
      const kind = leadKinds.indexOf(lead.facts);
      const [module] = stopModules(plan.get(column) ?? lead) as [PlacedModule];
      put(base.supplyNet.islandOf(module), { kind, column, lossMv: alone.leastMv });
      for (const pair of pairs) {
        const group = byColumn.get(pair.column);
        if (group && brings(group, module, lead.lines[0] as ReadonlySet<string>))
          put(group, { kind, column, lossMv: pair.leastMv });
      }
    }
    for (const island of base.supplyNet.islands)
      if (draws(island.modules)) {
        const options = optionsOf.get(island) ?? [];
        this.#allAlone.set(island, options);
        this.#alone.set(island, leastByKind(options));
      }
    const flatKinds: RibbonFacts[] = [];
    const kindOf = (facts: RibbonFacts): number => {
      const known = flatKinds.indexOf(facts);
      if (known >= 0) return known;
      flatKinds.push(facts);
      const left = ownedLeft(base.take, facts.kind) ?? Number.POSITIVE_INFINITY;
      this.#flats.push({ left, price: priceOf(facts) });
      return flatKinds.length - 1;
    };
    const wishOf = new Map(wishes.map(({ module, bus }, i) => [`${module.id} ${bus.bus.id}`, i]));
    const byHost = new Map<PlacedHeader | undefined, Candidate[]>();
    for (const group of groups) {
      const feeds = optionsOf.get(group) ?? [];
      const needsFeed = draws(group.island);
      if (needsFeed && feeds.length === 0) continue;
      const host = hostOf(group.group);
      const list = byHost.get(host) ?? [];
      byHost.set(host, list);
      const drawing = group.islands.filter(({ modules }) => draws(modules)).length;
      list.push({
        group,
        wishes: membersOf(group.group).map(
          ({ owner, bus }) => wishOf.get(`${owner.id} ${bus.bus.id}`) as number,
        ),
        ribbons: group.group.placings.length,
        kinds: group.group.placings.map(({ facts }) => kindOf(facts)),
        merged: Math.max(0, drawing - 1),
        feeds: needsFeed ? leastByKind(feeds) : [],
        allFeeds: needsFeed ? feeds : [],
        leastMv: needsFeed ? Math.min(...feeds.map(({ lossMv }) => lossMv)) : 0,
        lengthMm: group.group.placings.reduce((sum, placing) => sum + neatMm(placing), 0),
      });
    }
    const order = (a: Candidate, b: Candidate): number =>
      b.wishes.length - a.wishes.length ||
      a.ribbons - b.ribbons ||
      (Math.abs(a.leastMv - b.leastMv) > SAME ? a.leastMv - b.leastMv : a.lengthMm - b.lengthMm);
    this.#lists = [...byHost.values()].map((list) => list.sort(order));
    const patches = new Map(groups.map((group) => [group, patchesOf(group.group)]));
    this.#conflicts = (a, b) =>
      a.wishes.some((wish) => b.wishes.includes(wish)) ||
      (patches.get(a.group) ?? []).some((one) =>
        (patches.get(b.group) ?? []).some((other) => clash(one, other, bodyMm)),
      );
    this.#unfeedable = [...this.#alone.values()].filter((options) => options.length === 0).length;
  }

  run(): QuickChoice | undefined {
    this.#branch([], this.#lists);
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

  #isInTheWay(a: Candidate, b: Candidate): boolean {
    const known = this.#clashing.get(a) ?? new Map<Candidate, boolean>();
    this.#clashing.set(a, known);
    const told = known.get(b);
    if (told !== undefined) return told;
    const is = this.#conflicts(a, b);
    known.set(b, is);
    return is;
  }

  #branch(chosen: readonly Candidate[], lists: readonly (readonly Candidate[])[]): void {
    if (this.#nodes++ > MOST_NODES) return;
    const tight = this.#tighten(chosen, lists);
    if (!tight || this.#isHopeless(chosen, tight)) return;
    if (tight.length === 0) {
      this.#finish(chosen);
      return;
    }
    // The host with the fewest ways first.
    const next = tight.reduce(
      (best, list, i) => (list.length < (tight[best] as readonly Candidate[]).length ? i : best),
      0,
    );
    const rest = tight.filter((_, i) => i !== next);
    for (const candidate of tight[next] as readonly Candidate[])
      this.#branch(
        [...chosen, candidate],
        rest.map((list) => list.filter((other) => !this.#isInTheWay(candidate, other))),
      );
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
    const used = this.#flats.map(() => 0);
    for (const { kinds } of chosen) for (const kind of kinds) used[kind] = (used[kind] as number) + 1;
    return this.#flats.reduce(
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
      if (fine.every(({ feeds }) => feeds.length > 0)) needed.push(fine.flatMap(({ feeds }) => feeds));
      if (fine.every(({ kinds }) => kinds.length === 1))
        flats.push(
          fine.map(({ kinds, group: { column } }) => ({ kind: kinds[0] as number, lossMv: 0, column })),
        );
    }
    possible = Math.min(possible, reachable.size);
    const fed = this.#alone.size - merged - this.#unfeedable;
    for (const { feeds } of chosen) if (feeds.length > 0) needed.push([...feeds]);
    for (const [island, options] of this.#alone)
      if (!joinable.has(island) && options.length > 0) needed.push([...options]);
    const any = this.#stocks.map(
      (_, kind): FeedOption => ({ kind, lossMv: Number.NEGATIVE_INFINITY, column: -1 }),
    );
    for (let more = fed - mergeable - needed.length; more > 0; more--) needed.push(any);
    const leads = cheapestFeeding(needed, this.#stocks, mostMv)?.cost ?? Number.POSITIVE_INFINITY;
    return [
      this.#task.wishes.length - linked - possible,
      0,
      this.#costs(chosen) + this.#leastFlats(chosen, flats) + leads,
      ribbons + fed,
      lossMv,
    ];
  }

  /** The least that hosts still to be linked add for their ribbons, after those that are chosen. */
  #leastFlats(chosen: readonly Candidate[], options: readonly (readonly FeedOption[])[]): number {
    const used = this.#flats.map(() => 0);
    for (const { kinds } of chosen) for (const kind of kinds) used[kind] = (used[kind] as number) + 1;
    const left = this.#flats.map((flat, kind) => ({
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
        if (others.some((other) => this.#isInTheWay(candidate, other))) continue;
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
    const alone = [...this.#allAlone].filter(([island]) => !joined.has(island)).map(([, options]) => options);
    const all = [
      ...chosen.filter(({ feeds }) => feeds.length > 0).map(({ allFeeds }) => allFeeds),
      ...alone.filter((options) => options.length > 0),
    ];
    const fed = all.map(leastByKind);
    const unlinked = this.#task.wishes.length - chosen.reduce((sum, { wishes }) => sum + wishes.length, 0);
    const unfed = alone.filter((options) => options.length === 0).length;
    const cheapest = cheapestFeeding(fed, this.#stocks, Number.POSITIVE_INFINITY);
    if (!cheapest) return undefined;
    const money = this.#costs(chosen) + cheapest.cost;
    const ribbons = chosen.reduce((sum, each) => sum + each.ribbons, 0) + fed.length;
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
      .filter((lossMv) => !exceeds(least, lossMv))
      .sort((a, b) => a - b);
    let low = 0;
    let high = losses.length - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      const feeding = cheapestFeeding(fed, this.#stocks, losses[middle] as number);
      if (feeding && feeding.cost <= cheapest.cost + SAME) high = middle;
      else low = middle + 1;
    }
    const lossMv = losses[low] ?? 0;
    if (isRefused(lossMv)) return undefined;
    const feeding = cheapestFeeding(fed, this.#stocks, losses.length > 0 ? lossMv : Number.POSITIVE_INFINITY);
    return {
      chosen,
      vector: vector(lossMv),
      leads: (feeding?.chosen ?? []).map(({ kind }, i) =>
        (all[i] ?? [])
          .filter((option) => option.kind === kind && option.lossMv <= lossMv + SAME_MV / 2)
          .sort((a, b) => a.lossMv - b.lossMv)
          .map(({ column }) => column),
      ),
    };
  }
}
