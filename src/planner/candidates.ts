import type { PlacedModule } from '../geometry/place.ts';
import { groupBy } from '../layout/group-by.ts';
import type { RibbonFacts } from '../layout/kit-index.ts';
import { ownedLeft } from '../wiring/stock.ts';
import type { Island } from '../wiring/supply-net.ts';
import type { FeedOption, LeadStock } from './feed-cost.ts';
import { clash, hostOf, membersOf, patchesOf } from './groups.ts';
import { type AlikeLeads, fedHeadersOf, type LossRows, type Pair } from './loss-bounds.ts';
import { brings, type Columns, draws, type GroupColumn } from './model.ts';
import { neatMm } from './placing.ts';
import type { Task } from './task.ts';

/** A group beside the others that its host could have. How it could be fed is worked out when it is asked for. */
export class Candidate {
  readonly group: GroupColumn;
  readonly wishes: readonly number[];
  /** Index of each new ribbon's kind. */
  readonly kinds: readonly number[];
  /** Islands fewer than without it. */
  readonly merged: number;
  /** Whether it must be fed. */
  readonly mustBeFed: boolean;
  /** Ribbon that it takes, and what of it would hang out of the row; of equal plans the neater one comes first. */
  readonly lengthMm: number;
  readonly #feeding: () => readonly FeedOption[];
  #all: readonly FeedOption[] | undefined;
  #best: readonly FeedOption[] | undefined;
  #leastMv: number | undefined;

  constructor(
    group: GroupColumn,
    wishes: readonly number[],
    kinds: readonly number[],
    feeding: () => readonly FeedOption[],
  ) {
    this.group = group;
    this.wishes = wishes;
    this.kinds = kinds;
    const drawing = group.islands.filter(({ modules }) => draws(modules)).length;
    this.merged = Math.max(0, drawing - 1);
    this.mustBeFed = draws(group.island);
    this.lengthMm = group.group.placings.reduce((sum, placing) => sum + neatMm(placing), 0);
    this.#feeding = feeding;
  }

  get ribbons(): number {
    return this.kinds.length;
  }

  get allFeeds(): readonly FeedOption[] {
    this.#all ??= this.mustBeFed ? this.#feeding() : [];
    return this.#all;
  }

  get canBeFed(): boolean {
    return !this.mustBeFed || this.allFeeds.length > 0;
  }

  /** Of each kind of lead the best. */
  get feeds(): readonly FeedOption[] {
    this.#best ??= leastByKind(this.allFeeds);
    return this.#best;
  }

  get leastMv(): number {
    this.#leastMv ??= this.mustBeFed ? Math.min(...this.feeds.map(({ lossMv }) => lossMv)) : 0;
    return this.#leastMv;
  }
}

/** Money first, in ten thousandths, then pieces without a price, as one whole number. */
export const PIECES = 1000;
export const MONEY = 1e4 * PIECES;

const priceOf = ({ kind }: RibbonFacts): number =>
  kind.price === undefined ? 1 : Math.round(kind.price * 1e4) * PIECES;

/** Of each kind of lead the option that loses least. */
export function leastByKind(options: readonly FeedOption[]): FeedOption[] {
  const best = new Map<number, FeedOption>();
  for (const option of options) {
    const known = best.get(option.kind);
    if (!known || option.lossMv < known.lossMv) best.set(option.kind, option);
  }
  return [...best.values()];
}

/** Lengths and losses nearer to one another than this are the same. */
const SAME = 1e-9;

const byCounts = (a: Candidate, b: Candidate): number =>
  b.wishes.length - a.wishes.length || a.ribbons - b.ribbons;

/** The most promising first, as far as can be told without asking how they could be fed. */
const byLinks = (a: Candidate, b: Candidate): number => byCounts(a, b) || a.lengthMm - b.lengthMm;

/** The most promising first. */
export const byPromise = (a: Candidate, b: Candidate): number =>
  byCounts(a, b) ||
  (Math.abs(a.leastMv - b.leastMv) > SAME ? a.leastMv - b.leastMv : a.lengthMm - b.lengthMm);

/** What each host could have, and how what comes of it could be fed. */
export class Candidates {
  /** By host, those that link most first; among them such as could not be fed. */
  readonly lists: readonly (readonly Candidate[])[];
  /** Kinds of ribbon, by their number. */
  readonly flats: { readonly left: number; readonly price: number }[] = [];
  readonly stocks: readonly LeadStock[];
  /** Of islands as they stand, of each kind of lead the best option; and all of them. */
  readonly alone = new Map<Island, readonly FeedOption[]>();
  readonly allAlone = new Map<Island, readonly FeedOption[]>();
  /** Free headers of boards, from which leads could come. */
  readonly headers: number;
  /** That no lead feeds alone. */
  readonly unfeedable: readonly Island[];
  /** Some kind of ribbon could link as well as feed. */
  readonly isMixed: boolean;
  readonly #clashing = new Map<Candidate, Map<Candidate, boolean>>();
  readonly #conflicts: (a: Candidate, b: Candidate) => boolean;

  constructor(task: Task, { groups, leads }: Columns, rows: LossRows) {
    const { base, wishes } = task;
    const bodyMm = base.limits.connectorBodyMm;
    const leadKinds = [...new Set(leads.map(({ lead }) => lead.facts))];
    this.stocks = leadKinds.map((facts) => {
      const left = ownedLeft(base.take, facts.kind);
      return { free: left ?? Number.POSITIVE_INFINITY, cost: priceOf(facts) };
    });
    this.headers = new Set(leads.flatMap(({ lead }) => lead.places)).size;
    const leadsTo = groupBy(rows.leads, ({ fed }) => fed);
    const optionOf = ({ lead, columns }: AlikeLeads, { leastMv: lossMv }: Pair): FeedOption => ({
      kind: leadKinds.indexOf(lead.facts),
      columns,
      lossMv,
    });
    for (const island of base.supplyNet.islands)
      if (draws(island.modules)) {
        const options = island.modules
          .flatMap((module) => leadsTo.get(module) ?? [])
          .map((each) => optionOf(each, each.alone));
        this.allAlone.set(island, options);
        this.alone.set(island, leastByKind(options));
      }
    const feedingOf = (group: GroupColumn): FeedOption[] =>
      fedHeadersOf(group)
        .flatMap(({ owner }) => leadsTo.get(owner as PlacedModule) ?? [])
        .filter(({ fed, lead }) => brings(group, fed, lead.lines[0] as ReadonlySet<string>))
        .map((each) => optionOf(each, rows.pairWith(each, group)));
    const flatKinds: RibbonFacts[] = [];
    const kindOf = (facts: RibbonFacts): number => {
      const known = flatKinds.indexOf(facts);
      if (known >= 0) return known;
      flatKinds.push(facts);
      const left = ownedLeft(base.take, facts.kind) ?? Number.POSITIVE_INFINITY;
      this.flats.push({ left, price: priceOf(facts) });
      return flatKinds.length - 1;
    };
    const wishOf = new Map(wishes.map(({ module, bus }, i) => [`${module.id} ${bus.bus.id}`, i]));
    const all = groups.map((group) => {
      const wished = membersOf(group.group).map(
        ({ owner, bus }) => wishOf.get(`${owner.id} ${bus.bus.id}`) as number,
      );
      const kinds = group.group.placings.map(({ facts }) => kindOf(facts));
      return new Candidate(group, wished, kinds, () => feedingOf(group));
    });
    const byHost = groupBy(all, ({ group }) => hostOf(group.group));
    this.lists = [...byHost.values()].map((list) => list.sort(byLinks));
    this.#conflicts = (a, b) =>
      a.wishes.some((wish) => b.wishes.includes(wish)) ||
      patchesOf(a.group.group).some((one) =>
        patchesOf(b.group.group).some((other) => clash(one, other, bodyMm)),
      );
    this.unfeedable = [...this.alone].filter(([, options]) => options.length === 0).map(([island]) => island);
    this.isMixed = flatKinds.some((facts) => leadKinds.includes(facts));
  }

  /** Whether two groups cannot both be made. */
  isInTheWay(a: Candidate, b: Candidate): boolean {
    const known = this.#clashing.get(a) ?? new Map<Candidate, boolean>();
    this.#clashing.set(a, known);
    const told = known.get(b);
    if (told !== undefined) return told;
    const is = this.#conflicts(a, b);
    known.set(b, is);
    return is;
  }
}
