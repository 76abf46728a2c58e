import { exceeds } from '../geometry/exceeds.ts';
import type { PlacedHeader } from '../geometry/place.ts';
import { faceOf, typeOf } from '../layout/defaults.ts';
import type { RibbonFacts } from '../layout/kit-index.ts';
import type { Connector, StripeEdge } from '../layout/layout.ts';
import { remember } from '../layout/remember.ts';
import type { DerivedTake } from '../wiring/derived-take.ts';
import { flatSpans, type Spans } from '../wiring/fitting.ts';
import type { Landing } from '../wiring/landing.ts';
import { atMm, type Found, type Placing, type Room } from './placing.ts';
import { Seating } from './seating.ts';
import { Steps } from './steps.ts';

/** A ribbon that does not bend asks for room and depth; whether its seats agree is asked of all together. */
function stiffSpans({ limits }: DerivedTake): Spans {
  const { connectorBodyMm, ribbonMm, seatToleranceMm } = limits;
  return (lengthMm, a, b) => {
    const distance = Math.abs(a.xMm - b.xMm);
    if (!exceeds(distance, connectorBodyMm) || exceeds(Math.abs(distance - lengthMm), 2 * seatToleranceMm))
      return false;
    return !exceeds(Math.max(a.zMm ?? 0, b.zMm ?? 0) + ribbonMm, a.row.row.depthMm);
  };
}

/** Whether all seats of a ribbon that does not bend agree with one of them. */
function liesAsOne({ facts, stripe, seats }: Placing, tolMm: number): boolean {
  const direction = stripe === 'up' ? 1 : -1;
  const origin = ({ connector, header }: Landing): number => header.xMm - direction * atMm(facts, connector);
  return seats.some((one) =>
    seats.every(
      (other) =>
        !exceeds(Math.abs(origin(one) - origin(other)), tolMm) &&
        !exceeds(Math.abs(one.header.yMm - other.header.yMm), tolMm),
    ),
  );
}

/** Whether all connectors of a ribbon are alike and as far from one another: it may then be moved along by any of them. */
const isEven = remember(({ connectors, ways }: RibbonFacts): boolean =>
  connectors.every((connector, c) => {
    const [first, second] = connectors as [Connector, Connector];
    const offMm = connector.atMm - first.atMm - c * (second.atMm - first.atMm);
    return (
      Math.abs(offMm) < 1e-9 &&
      ways[c] === ways[0] &&
      typeOf(connector) === typeOf(first) &&
      faceOf(connector) === faceOf(first) &&
      connector.key === first.key
    );
  }),
);

/** Lays a flat ribbon on headers along a row, one after the other, in all ways. */
class FlatSearch {
  readonly #seating: Seating;
  readonly #steps: Steps;
  readonly #facts: RibbonFacts;
  readonly #stripe: StripeEdge;
  readonly #along: readonly PlacedHeader[];
  /** Place of the next host from each header on. */
  readonly #hostMm: readonly number[];
  readonly #room: Room;
  readonly #isShifted: boolean;
  readonly #reachMm: number;
  readonly #tolMm: number;

  constructor(
    take: DerivedTake,
    seating: Seating,
    facts: RibbonFacts,
    stripe: StripeEdge,
    headers: readonly PlacedHeader[],
    room: Room,
    isShifted: boolean,
  ) {
    const direction = stripe === 'up' ? 1 : -1;
    this.#along = headers
      .filter(({ pin1 }) => pin1 === undefined || pin1 === stripe)
      .sort((a, b) => direction * (a.xMm - b.xMm));
    const hostMm: number[] = [];
    let next = Number.POSITIVE_INFINITY;
    for (const { role, xMm } of [...this.#along].reverse()) {
      if (role === 'host') next = xMm;
      hostMm.unshift(next);
    }
    this.#hostMm = hostMm;
    this.#seating = seating;
    this.#steps = new Steps(facts, this.#along, facts.bends ? flatSpans(take, facts) : stiffSpans(take));
    this.#facts = facts;
    this.#stripe = stripe;
    this.#room = room;
    this.#isShifted = isShifted;
    this.#tolMm = take.limits.seatToleranceMm;
    this.#reachMm = atMm(facts, facts.connectors.length - 1) + 2 * this.#tolMm;
  }

  run(): void {
    const starts = this.#isShifted ? 1 : this.#facts.connectors.length;
    for (let i = 0; i < this.#along.length; i++)
      for (let c = 0; c < starts; c++)
        if (this.#steps.sits(c, i) && this.#seating.admits(this.#along[i] as PlacedHeader)) this.#put(i, c);
  }

  #put(i: number, connector: number): void {
    const header = this.#along[i] as PlacedHeader;
    const seating = this.#seating;
    seating.put(connector, header);
    const { seats } = seating;
    const isStraight =
      this.#facts.bends ||
      seats.length < 2 ||
      liesAsOne({ facts: this.#facts, stripe: this.#stripe, seats }, this.#tolMm);
    if (isStraight) seating.keep(this.#stripe);
    if (!seating.isFull && this.#mayGetHost(i)) this.#goOn(i, connector);
    seating.take();
  }

  /** Whether a host is on the ribbon, or none is needed, or one comes that is not too far. */
  #mayGetHost(from: number): boolean {
    if (this.#room.hostless || this.#seating.hasHost) return true;
    const next = this.#hostMm[from + 1];
    const first = this.#seating.seats[0]?.header.xMm ?? 0;
    return next !== undefined && Math.abs(next - first) <= this.#reachMm;
  }

  #goOn(before: number, connector: number): void {
    const { length } = this.#facts.connectors;
    const fromMm = (this.#along[before] as PlacedHeader).xMm;
    for (let i = before + 1; i < this.#along.length; i++) {
      const header = this.#along[i] as PlacedHeader;
      if (Math.abs(header.xMm - fromMm) > this.#reachMm) return;
      if (!this.#seating.admits(header)) continue;
      for (let c = connector + 1; c < length; c++) {
        if (!this.#steps.sits(c, i) || !this.#steps.may(connector, before, c, i)) continue;
        if (!this.#passesOver(connector, before, c, i)) this.#put(i, c);
        // Of an evenly spaced ribbon a longer piece has no advantage over the first that suits.
        if (this.#isShifted) break;
      }
    }
  }

  /** Whether a header between two seats that should be taken could be. */
  #passesOver(a: number, i: number, b: number, j: number): boolean {
    if (b - a < 2 || j - i < 2 || this.#room.taken.size === 0) return false;
    const [one, other] = [this.#along[i] as PlacedHeader, this.#along[j] as PlacedHeader];
    for (let k = i + 1; k < j; k++) {
      const header = this.#along[k] as PlacedHeader;
      if (header.yMm < Math.min(one.yMm, other.yMm) || header.yMm > Math.max(one.yMm, other.yMm)) continue;
      if (!this.#room.taken.has(header) || !this.#seating.admits(header) || header.owner === other.owner)
        continue;
      for (let c = a + 1; c < b; c++)
        if (
          this.#steps.sits(c, k) &&
          (this.#facts.bends || this.#isInLine(a, one, c, header)) &&
          this.#steps.may(a, i, c, k) &&
          this.#steps.may(c, k, b, j)
        )
          return true;
    }
    return false;
  }

  /** Whether two seats on a straight ribbon agree with one another wholly. */
  #isInLine(a: number, one: PlacedHeader, b: number, other: PlacedHeader): boolean {
    const lengthMm = atMm(this.#facts, b) - atMm(this.#facts, a);
    return one.yMm === other.yMm && Math.abs(Math.abs(other.xMm - one.xMm) - lengthMm) < 1e-9;
  }
}

/**
 * Every way in which a flat ribbon without twists can lie on free headers of a row.
 *
 * @param headers - of the ribbon's bus, upright, in one row
 * @param keepAll - whether it matters which connectors stay free
 */
export function flatPlacings(
  take: DerivedTake,
  facts: RibbonFacts,
  headers: readonly PlacedHeader[],
  keepAll: boolean,
  room: Room,
): Found {
  const isShifted = !keepAll && isEven(facts);
  const seating = new Seating(facts, headers, keepAll ? 'seats' : 'headers', room, isShifted);
  for (const stripe of ['down', 'up'] as const)
    new FlatSearch(take, seating, facts, stripe, headers, room, isShifted).run();
  return seating.result();
}
