import { heldArch } from '../geometry/arch.ts';
import { EPSILON, exceeds } from '../geometry/exceeds.ts';
import type { PlacedHeader } from '../geometry/place.ts';
import { faceOf } from '../layout/defaults.ts';
import type { RibbonFacts } from '../layout/kit-index.ts';
import type { Connector, StripeEdge } from '../layout/layout.ts';
import type { DerivedTake } from './derived-take.ts';
import { fits, goesInReversed, isSocket } from './landing.ts';
import { leadWayMm } from './lead.ts';
import { ownedLeft, stockRank } from './stock.ts';

/** A kind of ribbon that would join headers, and which of its connectors would sit on each of them. */
export interface FittingRibbon {
  readonly kind: string;
  /** By the order in which the headers were given. */
  readonly connectors: readonly number[];
  /** Owned and not in this take yet; 0 or fewer are to be bought. Absent: nobody counts them. */
  readonly ownedLeft: number | undefined;
}

/** The edge for the stripe of a flat ribbon over headers; none where their pins 1 look to both edges or aside. */
export function stripeOver(headers: readonly PlacedHeader[]): StripeEdge | undefined {
  const ends = new Set(headers.flatMap(({ pin1 }) => pin1 ?? []));
  if (ends.size > 1) return undefined;
  const [end = 'down'] = ends;
  return end === 'down' || end === 'up' ? end : undefined;
}

/** What decides whether one connector may follow another: what lies between them must suit. */
export type Spans = (lengthMm: number, a: PlacedHeader, b: PlacedHeader) => boolean;

export function flatSpans(take: DerivedTake, facts: RibbonFacts): Spans {
  const { seatToleranceMm, bendRadiusMm, connectorBodyMm, ribbonMm, skewMm } = take.limits;
  return (lengthMm, a, b) => {
    const distance = Math.abs(a.xMm - b.xMm);
    const slack = lengthMm - distance;
    const skew = Math.abs(a.yMm - b.yMm);
    if (!exceeds(distance, connectorBodyMm) || exceeds(-slack, seatToleranceMm)) return false;
    if (exceeds(skew, facts.bends ? skewMm : seatToleranceMm)) return false;
    let height = 0;
    if (exceeds(slack, seatToleranceMm)) {
      if (!facts.bends) return false;
      const arch = heldArch(lengthMm, distance, connectorBodyMm);
      if (arch.kind === 'legs-touch' || arch.radiusMm < bendRadiusMm - EPSILON) return false;
      height = arch.heightMm;
    }
    return !exceeds(Math.max(a.zMm ?? 0, b.zMm ?? 0) + height + ribbonMm, a.row.row.depthMm);
  };
}

export const looseSpans =
  (take: DerivedTake): Spans =>
  (lengthMm, a, b) =>
    !exceeds(leadWayMm(a, b, take), lengthMm);

/** The first rising choice of connectors for the headers in this order that suits everywhere; a short search. */
function chooseConnectors(
  facts: RibbonFacts,
  headers: readonly PlacedHeader[],
  spans: Spans,
): number[] | undefined {
  const { connectors } = facts;
  const atMm = (connector: number): number => (connectors[connector] as Connector).atMm;
  const deadEnds = new Set<number>();
  const from = (chosen: readonly number[]): number[] | undefined => {
    const i = chosen.length;
    const header = headers[i];
    if (!header) return [...chosen];
    const last = chosen[i - 1];
    const before = headers[i - 1];
    for (let c = (last ?? -1) + 1; c <= connectors.length - (headers.length - i); c++) {
      if (!isSocket(facts, c) || !fits(facts, c, header) || goesInReversed(facts, c, header)) continue;
      if (last !== undefined && before && !spans(atMm(c) - atMm(last), before, header)) continue;
      const deadEnd = i * connectors.length + c;
      if (deadEnds.has(deadEnd)) continue;
      const rest = from([...chosen, c]);
      if (rest) return rest;
      deadEnds.add(deadEnd);
    }
    return undefined;
  };
  return from([]);
}

/** Whether seats on a straight ribbon agree as a whole, and not only each with the next. */
function liesStraight(
  facts: RibbonFacts,
  headers: readonly PlacedHeader[],
  chosen: readonly number[],
  tolMm: number,
) {
  const [first] = headers;
  const start = facts.connectors[chosen[0] ?? 0]?.atMm ?? 0;
  return headers.every((header, i) => {
    const along = (facts.connectors[chosen[i] ?? 0]?.atMm ?? 0) - start;
    const off = Math.abs(Math.abs(header.xMm - (first?.xMm ?? 0)) - along);
    return !exceeds(off, tolMm) && !exceeds(Math.abs(header.yMm - (first?.yMm ?? 0)), tolMm);
  });
}

export const opensToPanel = ({ connectors }: RibbonFacts, connector: number): boolean =>
  faceOf(connectors[connector] ?? { atMm: 0 }) === 'panel';

function flatConnectors(
  take: DerivedTake,
  facts: RibbonFacts,
  headers: readonly PlacedHeader[],
): number[] | undefined {
  const [first] = headers;
  const stripe = stripeOver(headers);
  const lieInLine = headers.every(
    ({ row, axis, owner }) => row === first?.row && axis === 'vertical' && owner.type === 'module',
  );
  if (!stripe || !lieInLine) return undefined;
  const direction = stripe === 'up' ? 1 : -1;
  const order = [...headers.keys()].sort(
    (a, b) => direction * ((headers[a] as PlacedHeader).xMm - (headers[b] as PlacedHeader).xMm),
  );
  const along = order.map((i) => headers[i] as PlacedHeader);
  const chosen = chooseConnectors(facts, along, flatSpans(take, facts));
  if (!chosen?.every((connector) => opensToPanel(facts, connector))) return undefined;
  if (!facts.bends && !liesStraight(facts, along, chosen, take.limits.seatToleranceMm)) return undefined;
  const byHeader: number[] = [];
  order.forEach((i, place) => {
    byHeader[i] = chosen[place] as number;
  });
  return byHeader;
}

/**
 * Which connectors of a kind would sit on headers, by the order in which these are given: a flat ribbon without
 * twists on its pitch or in arches that the limits allow, its stripe at `stripeOver`; a loose one with length enough
 * from each to the next. Nothing where it does not join them. Whether the headers are free is not looked at.
 */
export function connectorsFor(
  take: DerivedTake,
  facts: RibbonFacts,
  headers: readonly PlacedHeader[],
): readonly number[] | undefined {
  if (headers.length > facts.connectors.length || new Set(headers).size < headers.length) return undefined;
  if (facts.flat) return flatConnectors(take, facts, headers);
  return (
    chooseConnectors(facts, headers, looseSpans(take)) ??
    chooseConnectors(facts, [...headers].reverse(), looseSpans(take))?.reverse()
  );
}

/**
 * The kinds of ribbon in the kit that would join headers: those at hand first, then those that nobody counts, then
 * those to be bought; of each the shortest, with the fewest connectors to spare.
 */
export function fittingRibbons(
  take: DerivedTake,
  headers: readonly PlacedHeader[],
): readonly FittingRibbon[] {
  const fitting: (FittingRibbon & { readonly lengthMm: number; readonly spare: number })[] = [];
  for (const facts of take.kit.ribbons.values()) {
    const connectors = headers.length > 1 ? connectorsFor(take, facts, headers) : undefined;
    if (!connectors) continue;
    const { id } = facts.kind;
    fitting.push({
      kind: id,
      connectors,
      ownedLeft: ownedLeft(take.take, facts.kind),
      lengthMm: facts.connectors[facts.connectors.length - 1]?.atMm ?? 0,
      spare: facts.connectors.length - headers.length,
    });
  }
  return fitting
    .sort(
      (a, b) =>
        stockRank(a.ownedLeft) - stockRank(b.ownedLeft) || a.lengthMm - b.lengthMm || a.spare - b.spare,
    )
    .map(({ kind, connectors, ownedLeft: left }) => ({ kind, connectors, ownedLeft: left }));
}
