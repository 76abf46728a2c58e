import type { PlacedHeader, PlacedModule } from '../geometry/place.ts';
import type { BusFacts } from '../layout/kit-index.ts';
import type { DerivedTake } from './derived-take.ts';
import { type Lead, leadFor, type NoLead } from './lead.ts';
import { stockRank } from './stock.ts';
import type { Island } from './supply-net.ts';

/** A lead for an island. */
export interface PlannedFeed {
  readonly island: Island;
  /** The module that it goes to. */
  readonly module: PlacedModule;
  readonly lead: Lead;
  /** Power headers among which it was chosen. */
  readonly choices: number;
}

/** An island that gets no lead, and why. */
export interface Unfed {
  readonly island: Island;
  readonly reason: NoLead | { readonly why: 'no power header' } | { readonly why: 'power headers in use' };
}

export interface FeedPlan {
  readonly feeds: readonly PlannedFeed[];
  readonly unfed: readonly Unfed[];
}

/** Islands with a draw (an unknown one counts) and no feed. */
const unfedIslands = ({ supplyNet }: DerivedTake): Island[] =>
  supplyNet.islands.filter(
    ({ modules, feeds }) => feeds.length === 0 && modules.some(({ facts }) => facts.draws.length > 0),
  );

/** Buses that some kind hosts: they link modules, and are no way for a power lead. */
export const linkBuses = ({ kit }: Pick<DerivedTake, 'kit'>): ReadonlySet<BusFacts | undefined> =>
  new Set(
    kit.kit.modules
      .flatMap(({ headers }) => headers)
      .filter(({ role }) => role === 'host')
      .map(({ bus }) => kit.buses.get(bus)),
  );

/** The headers by which a lead can feed a module. */
export function powerHeaders(module: PlacedModule, links: ReadonlySet<BusFacts | undefined>): PlacedHeader[] {
  return module.headers.filter(({ bus, isolated }) => bus.carriesVoltage && !isolated && !links.has(bus));
}

const byCodeUnit = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** The lead that is at hand, then the shortest; tie by id. */
const compare = (a: PlannedFeed, b: PlannedFeed): number =>
  stockRank(a.lead.ownedLeft) - stockRank(b.lead.ownedLeft) ||
  a.lead.lengthMm - b.lead.lengthMm ||
  a.lead.neededMm - b.lead.neededMm ||
  byCodeUnit(a.module.id, b.module.id);

/** Of several reasons the one that comes nearest to a lead. */
const NEAREST_FIRST: readonly NoLead['why'][] = [
  'none reaches',
  'a line is missing',
  'no free header',
  'no kind fits',
];

function nearestReason(reasons: readonly NoLead[]): NoLead | undefined {
  const rank = ({ why }: NoLead): number => NEAREST_FIRST.indexOf(why);
  const neededMm = ({ wanted }: NoLead): number => wanted?.neededMm ?? 0;
  return [...reasons].sort((a, b) => rank(a) - rank(b) || neededMm(a) - neededMm(b))[0];
}

/**
 * One lead for each island, in their order; each takes the header and the lead that those before it left.
 *
 * @param islands - default all that draw something and have no lead
 */
export function planFeeds(take: DerivedTake, islands: readonly Island[] = unfedIslands(take)): FeedPlan {
  const links = linkBuses(take);
  const headers = new Set<PlacedHeader>();
  const kinds = new Map<string, number>();
  const feeds: PlannedFeed[] = [];
  const unfed: Unfed[] = [];
  for (const island of islands) {
    const all = island.modules.flatMap((module) => powerHeaders(module, links));
    const free = all.filter((header) => !take.wiring.seatedOn.has(header));
    const needs = [...new Set(island.modules.flatMap(({ facts }) => facts.needs))];
    const choices = free.map((from) => ({ from, choice: leadFor(take, from, needs, { headers, kinds }) }));
    const possible = choices.flatMap(({ from, choice }): PlannedFeed[] =>
      choice.ok
        ? [{ island, module: from.owner as PlacedModule, lead: choice.lead, choices: free.length }]
        : [],
    );
    const [best] = possible.sort(compare);
    if (best) {
      feeds.push(best);
      headers.add(best.lead.to);
      const { id } = best.lead.facts.kind;
      kinds.set(id, (kinds.get(id) ?? 0) + 1);
      continue;
    }
    const reasons = choices.flatMap(({ choice }) => (choice.ok ? [] : [choice.reason]));
    unfed.push({
      island,
      reason:
        nearestReason(reasons) ??
        (all.length === 0 ? { why: 'no power header' } : { why: 'power headers in use' }),
    });
  }
  return { feeds, unfed };
}
