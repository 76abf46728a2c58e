/** A way to feed an island: with a lead of a kind, and what is lost then. */
export interface FeedOption {
  readonly kind: number;
  readonly lossMv: number;
  /** Of the program: leads that do equally well. */
  readonly columns: readonly number[];
}

/** A kind of lead: so many are there for nothing, each further one costs. */
export interface LeadStock {
  readonly free: number;
  readonly cost: number;
  /** What every one costs besides. */
  readonly each?: number;
}

const upTo = ({ free, cost, each = 0 }: LeadStock, count: number): number =>
  each * count + Math.max(0, count - free) * cost;

export interface Feeding {
  readonly cost: number;
  /** By island. */
  readonly chosen: readonly FeedOption[];
}

/**
 * The cheapest kind for each island among those that lose no more than so much: islands are given what is there for
 * nothing one after the other, and each time those before make room where that is cheaper. Nothing where an island
 * has no option.
 */
export function cheapestFeeding(
  islands: readonly (readonly FeedOption[])[],
  stocks: readonly LeadStock[],
  mostMv: number,
): Feeding | undefined {
  const options = islands.map((list) => bestByKind(list, stocks.length, mostMv));
  if (options.some((byKind) => byKind.every((option) => option === undefined))) return undefined;
  const given: number[] = [];
  const used = stocks.map(() => 0);
  const costOf = (kind: number): number => {
    const { free, cost, each = 0 } = stocks[kind] as LeadStock;
    return (used[kind] as number) < free ? each : each + cost;
  };
  for (let island = 0; island < islands.length; island++)
    giveLead(island, options, given, used, costOf, stocks);
  const cost = used.reduce((sum, count, kind) => sum + upTo(stocks[kind] as LeadStock, count), 0);
  return { cost, chosen: given.map((kind, island) => options[island]?.[kind] as FeedOption) };
}

function bestByKind(list: readonly FeedOption[], kinds: number, mostMv: number): (FeedOption | undefined)[] {
  const best: (FeedOption | undefined)[] = new Array(kinds).fill(undefined);
  for (const option of list) {
    const known = best[option.kind];
    if (option.lossMv <= mostMv && (!known || option.lossMv < known.lossMv)) best[option.kind] = option;
  }
  return best;
}

/** Finds the cheapest chain of exchanges that ends with one more lead of some kind (shortest ways, Bellman and Ford). */
function giveLead(
  island: number,
  options: readonly (readonly (FeedOption | undefined)[])[],
  given: number[],
  used: number[],
  costOf: (kind: number) => number,
  stocks: readonly LeadStock[],
): void {
  const kinds = stocks.length;
  const cost: number[] = new Array(kinds).fill(Number.POSITIVE_INFINITY);
  const from: ({ readonly kind: number; readonly island: number } | undefined)[] = new Array(kinds).fill(
    undefined,
  );
  options[island]?.forEach((option, kind) => {
    if (option) cost[kind] = 0;
  });
  // Taking a lead of a kind away from an island frees one: what that one cost is saved, and paid by the newcomer.
  for (let round = 0; round < kinds; round++) {
    let changed = false;
    for (let other = 0; other < given.length; other++) {
      const kind = given[other] as number;
      if ((cost[kind] as number) === Number.POSITIVE_INFINITY) continue;
      for (let next = 0; next < kinds; next++) {
        if (next === kind || !options[other]?.[next] || (cost[kind] as number) >= (cost[next] as number))
          continue;
        cost[next] = cost[kind] as number;
        from[next] = { kind, island: other };
        changed = true;
      }
    }
    if (!changed) break;
  }
  let best = -1;
  for (let kind = 0; kind < kinds; kind++)
    if (cost[kind] !== Number.POSITIVE_INFINITY && (best < 0 || costOf(kind) < costOf(best))) best = kind;
  used[best] = (used[best] as number) + 1;
  let kind = best;
  for (let step = from[kind]; step; step = from[kind]) {
    given[step.island] = kind;
    kind = step.kind;
  }
  given[island] = kind;
}
