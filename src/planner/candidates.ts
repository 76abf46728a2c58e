import type { PlacedHeader } from '../geometry/place.ts';
import type { RibbonFacts } from '../layout/kit-index.ts';
import { ownedLeft } from '../wiring/stock.ts';
import type { Island } from '../wiring/supply-net.ts';
import type { FeedOption, LeadStock } from './feed-cost.ts';
import { clash, hostOf, membersOf, patchesOf } from './groups.ts';
import type { LossRows } from './loss-bounds.ts';
import { brings, type Columns, draws, type GroupColumn } from './model.ts';
import { neatMm } from './placing.ts';
import type { Task } from './task.ts';

/** A group beside the others that its host could have. */
export interface Candidate {
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

/** What each host could have, and how what comes of it could be fed. */
export class Candidates {
  /** By host, the most promising first. */
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
    const optionsOf = new Map<GroupColumn | Island, FeedOption[]>();
    const put = (key: GroupColumn | Island, option: FeedOption): void => {
      const list = optionsOf.get(key);
      if (list) list.push(option);
      else optionsOf.set(key, [option]);
    };
    for (const { columns, lead, fed, alone, groups: pairs } of rows.pairs) {
      const kind = leadKinds.indexOf(lead.facts);
      const lines = lead.lines[0] as ReadonlySet<string>;
      put(base.supplyNet.islandOf(fed), { kind, columns, lossMv: alone.leastMv });
      for (const { group, leastMv } of pairs)
        if (brings(group, fed, lines)) put(group, { kind, columns, lossMv: leastMv });
    }
    for (const island of base.supplyNet.islands)
      if (draws(island.modules)) {
        const options = optionsOf.get(island) ?? [];
        this.allAlone.set(island, options);
        this.alone.set(island, leastByKind(options));
      }
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
    this.lists = [...byHost.values()].map((list) => list.sort(order));
    const patches = new Map(groups.map((group) => [group, patchesOf(group.group)]));
    this.#conflicts = (a, b) =>
      a.wishes.some((wish) => b.wishes.includes(wish)) ||
      (patches.get(a.group) ?? []).some((one) =>
        (patches.get(b.group) ?? []).some((other) => clash(one, other, bodyMm)),
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
