import { exceeds } from '../geometry/exceeds.ts';
import type { PlacedHeader } from '../geometry/place.ts';
import { type RibbonFacts, resolve } from '../layout/kit-index.ts';
import type { Seat, StripeEdge } from '../layout/layout.ts';
import type { DerivedTake } from './derived-take.ts';
import { fits, isSocket, type Landing, seatOf } from './landing.ts';
import { headersAcross, leadEnds, leadWayMm, lengthOf } from './lead.ts';

/** How a new ribbon would lie: its seats, and for a flat one the edge on which its stripe lies. */
export interface LaidOver {
  readonly seats: readonly Seat[];
  readonly stripe?: StripeEdge;
}

/** Free headers of the start's bus in its row and line, by place, the start among them. */
function headersInLine(take: DerivedTake, start: PlacedHeader, tolMm: number): PlacedHeader[] {
  return take.places.modules
    .flatMap(({ headers }) => headers)
    .filter(
      (header) =>
        header.bus === start.bus &&
        header.row === start.row &&
        header.axis === 'vertical' &&
        !exceeds(Math.abs(header.yMm - start.yMm), tolMm) &&
        !take.wiring.seatedOn.has(header),
    )
    .sort((a, b) => a.xMm - b.xMm);
}

/** Where a stiff ribbon lands if one of its connectors sits on the start. */
function landStiff(
  facts: RibbonFacts,
  headers: readonly PlacedHeader[],
  start: PlacedHeader,
  onStart: number,
  direction: 1 | -1,
  tolMm: number,
): Landing[] {
  const placeOf = (connector: number): number => facts.connectors[connector]?.atMm ?? 0;
  const originMm = start.xMm - direction * placeOf(onStart);
  return facts.connectors.flatMap((_, connector): Landing[] => {
    if (!isSocket(facts, connector)) return [];
    const xMm = originMm + direction * placeOf(connector);
    const header = headers.find((candidate) => !exceeds(Math.abs(candidate.xMm - xMm), tolMm));
    return header ? [{ connector, header }] : [];
  });
}

/** Where a bending ribbon lands: header after header, each on the first connector with ribbon enough. */
function landBending(
  facts: RibbonFacts,
  headers: readonly PlacedHeader[],
  start: PlacedHeader,
  onStart: number,
  direction: 1 | -1,
  tolMm: number,
): Landing[] {
  const ahead = headers.filter((header) => direction * (header.xMm - start.xMm) > 0);
  const inOrder = direction === 1 ? ahead : ahead.reverse();
  const landings: Landing[] = [{ connector: onStart, header: start }];
  for (const header of inOrder) {
    const last = landings[landings.length - 1] as Landing;
    const distance = Math.abs(header.xMm - last.header.xMm);
    const from = facts.connectors[last.connector]?.atMm ?? 0;
    const connector = facts.connectors.findIndex(
      ({ atMm }, i) => i > last.connector && isSocket(facts, i) && !exceeds(distance, atMm - from + tolMm),
    );
    if (connector < 0) break;
    landings.push({ connector, header });
  }
  return landings;
}

/** A link has one host: what lies beyond a second one is left alone. */
function upToSecondHost(landings: readonly Landing[]): Landing[] {
  let hosts = 0;
  const second = landings.findIndex(({ header }) => header.role === 'host' && ++hosts > 1);
  return second < 0 ? [...landings] : landings.slice(0, second);
}

function layFlat(take: DerivedTake, facts: RibbonFacts, start: PlacedHeader): LaidOver | undefined {
  const { seatToleranceMm, skewMm } = take.limits;
  const stripe: StripeEdge = start.pin1 === 'up' ? 'up' : 'down';
  const direction = stripe === 'up' ? 1 : -1;
  const headers = headersInLine(take, start, facts.bends ? skewMm : seatToleranceMm);
  const land = facts.bends ? landBending : landStiff;
  let best: Landing[] = [];
  for (let connector = 0; connector < facts.connectors.length; connector++) {
    if (!isSocket(facts, connector)) continue;
    const landings = upToSecondHost(land(facts, headers, start, connector, direction, seatToleranceMm));
    if (landings.length > best.length) best = landings;
  }
  return best.length > 0 ? { seats: best.map(seatOf), stripe } : undefined;
}

/** A lead from a module takes the nearest free header of a board that its other end fits and reaches. */
function layLoose(take: DerivedTake, facts: RibbonFacts, start: PlacedHeader): LaidOver | undefined {
  const lengthMm = lengthOf(facts);
  const inReach = headersAcross(take, start).filter(
    (header) => !exceeds(leadWayMm(header, start, take), lengthMm),
  );
  for (const [onStart, onFar] of leadEnds(facts)) {
    if (!isSocket(facts, onStart) || !fits(facts, onStart, start)) continue;
    const near: Landing = { connector: onStart, header: start };
    const other = isSocket(facts, onFar) ? inReach.find((header) => fits(facts, onFar, header)) : undefined;
    return { seats: [...(other ? [{ connector: onFar, header: other }] : []), near].map(seatOf) };
  }
  return undefined;
}

/**
 * How a ribbon of a kind lies when it is put onto a header: a flat one over as many free headers of its bus as
 * land, a loose one with its other end on the nearest free header that it fits. Nothing where it does not fit.
 */
export function layRibbon(take: DerivedTake, kindId: string, start: PlacedHeader): LaidOver | undefined {
  const facts = resolve(take.kit.ribbons, kindId);
  if (take.wiring.seatedOn.has(start)) return undefined;
  if (!facts.flat) return layLoose(take, facts, start);
  if (start.bus !== facts.bus || start.axis !== 'vertical' || start.owner.type !== 'module') return undefined;
  return layFlat(take, facts, start);
}
