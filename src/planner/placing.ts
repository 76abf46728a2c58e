import { exceeds } from '../geometry/exceeds.ts';
import type { PlacedHeader } from '../geometry/place.ts';
import type { RibbonFacts } from '../layout/kit-index.ts';
import type { StripeEdge } from '../layout/layout.ts';
import type { DerivedTake } from '../wiring/derived-take.ts';
import { flatSpans, looseSpans, opensToPanel, type Spans } from '../wiring/fitting.ts';
import { fits, goesInReversed, isSocket, type Landing } from '../wiring/landing.ts';

/** A ribbon on headers: what it would be if it were laid. */
export interface Placing {
  readonly facts: RibbonFacts;
  /** Flat only. */
  readonly stripe?: StripeEdge;
  /** Connectors rising. */
  readonly seats: readonly Landing[];
  /** Id of a ribbon that stands in the take and stays. */
  readonly kept?: string;
}

/** What a group may hold. */
export interface Room {
  /** Members that a host takes. */
  readonly members: number;
  /** Placings of one kind looked at before the search gives up being complete. */
  readonly most: number;
}

export const atMm = ({ connectors }: RibbonFacts, connector: number): number =>
  connectors[connector]?.atMm ?? 0;

const hasPlug = (facts: RibbonFacts): boolean => facts.connectors.some((_, i) => !isSocket(facts, i));

/** Whether a ribbon could be joined plug in socket with another of its bus. */
export const isChainable = (facts: RibbonFacts, all: readonly RibbonFacts[]): boolean =>
  all.some((other) => other.bus === facts.bus && hasPlug(other));

const sits = (facts: RibbonFacts, connector: number, header: PlacedHeader): boolean =>
  isSocket(facts, connector) &&
  fits(facts, connector, header) &&
  !goesInReversed(facts, connector, header) &&
  (!facts.flat || opensToPanel(facts, connector));

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

/** Spans of one kind, each asked once. */
function remembered(spans: Spans): Spans {
  const known = new Map<PlacedHeader, Map<PlacedHeader, Map<number, boolean>>>();
  const inside = <K, L, V>(map: Map<K, Map<L, V>>, key: K): Map<L, V> => {
    const found = map.get(key) ?? new Map<L, V>();
    map.set(key, found);
    return found;
  };
  return (lengthMm, a, b) => {
    const asked = inside(inside(known, a), b);
    const told = asked.get(lengthMm) ?? spans(lengthMm, a, b);
    asked.set(lengthMm, told);
    return told;
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

/** Length of a ribbon, and ten times what of a flat one would lie beyond the ends of its row, mm. */
export function neatMm({ facts, stripe, seats }: Placing): number {
  const lengthMm = atMm(facts, facts.connectors.length - 1);
  const [first] = seats;
  if (!facts.flat || !first) return lengthMm;
  const direction = stripe === 'up' ? 1 : -1;
  const startMm = first.header.xMm - direction * atMm(facts, first.connector);
  const endMm = startMm + direction * lengthMm;
  const outMm = Math.max(0, -Math.min(startMm, endMm), Math.max(startMm, endMm) - first.header.row.widthMm);
  return lengthMm + 10 * outMm;
}

const lengthsOf = ({ facts, seats }: Placing): number[] =>
  seats
    .slice(1)
    .map(({ connector }, i) => atMm(facts, connector) - atMm(facts, (seats[i] as Landing).connector));

/** Of placings on the same headers those stay that no other beats on every piece of ribbon; of equal ones the neater. */
function addUnlessBeaten(list: Placing[], placing: Placing): void {
  const beats = (a: Placing, b: Placing): boolean => {
    const [own, others] = [lengthsOf(a), lengthsOf(b)];
    if (own.some((length, i) => length > (others[i] as number) + 1e-9)) return false;
    const isEqual = own.every((length, i) => length > (others[i] as number) - 1e-9);
    return !isEqual || neatMm(a) <= neatMm(b);
  };
  if (list.some((other) => beats(other, placing))) return;
  const rest = list.filter((other) => !beats(placing, other));
  list.splice(0, list.length, ...rest, placing);
}

interface Found {
  readonly placings: readonly Placing[];
  /** False where there were more than were looked at. */
  readonly complete: boolean;
}

/** Headers that one number can tell apart. */
const MOST_BITS = 52;

/** A running choice of seats for one kind. */
class Seating {
  readonly #found = new Map<number | string, Placing[]>();
  readonly #keepAll: boolean;
  readonly #most: number;
  readonly #numberOf: ReadonlyMap<PlacedHeader, number>;
  #looked = 0;

  constructor(headers: readonly PlacedHeader[], keepAll: boolean, { most }: Room) {
    this.#keepAll = keepAll;
    this.#most = most;
    this.#numberOf = new Map(headers.map((header, i) => [header, i]));
  }

  get isFull(): boolean {
    return this.#looked >= this.#most;
  }

  add(placing: Placing): void {
    this.#looked++;
    const { seats } = placing;
    if (!this.#keepAll && this.#numberOf.size <= MOST_BITS) {
      this.#keep(
        seats.reduce((mask, { header }) => mask + 2 ** (this.#numberOf.get(header) ?? 0), 0),
        placing,
      );
      return;
    }
    const on = seats.map(({ header }) => this.#numberOf.get(header)).sort();
    const how = this.#keepAll
      ? seats.map(({ connector, header }) => `${connector}:${this.#numberOf.get(header)}`)
      : [];
    const key = `${on} ${how} ${this.#keepAll ? placing.stripe : ''}`;
    this.#keep(key, placing);
  }

  #keep(key: number | string, placing: Placing): void {
    const list = this.#found.get(key);
    if (list) addUnlessBeaten(list, placing);
    else this.#found.set(key, [placing]);
  }

  result(): Found {
    return { placings: [...this.#found.values()].flat(), complete: !this.isFull };
  }
}

/** Whether a host and members may be on one ribbon. */
function admits(seats: readonly Landing[], header: PlacedHeader, room: Room): boolean {
  let hosts = header.role === 'host' ? 1 : 0;
  let members = header.role === 'host' ? 0 : header.counts;
  for (const { header: other } of seats) {
    if (other.owner === header.owner) return false;
    if (other.role === 'host') hosts++;
    else members += other.counts;
  }
  return hosts <= 1 && !exceeds(members, room.members);
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
  const seating = new Seating(headers, keepAll, room);
  const spans = remembered(facts.bends ? flatSpans(take, facts) : stiffSpans(take));
  const last = facts.connectors.length - 1;
  const reachMm = atMm(facts, last) + 2 * take.limits.seatToleranceMm;
  for (const stripe of ['down', 'up'] as const) {
    const direction = stripe === 'up' ? 1 : -1;
    const along = headers
      .filter(({ pin1 }) => pin1 === undefined || pin1 === stripe)
      .sort((a, b) => direction * (a.xMm - b.xMm));
    const extend = (seats: readonly Landing[], from: number): void => {
      if (seating.isFull) return;
      const before = seats[seats.length - 1];
      if (
        seats.length > 0 &&
        (facts.bends || liesAsOne({ facts, stripe, seats }, take.limits.seatToleranceMm))
      )
        seating.add({ facts, stripe, seats });
      for (let i = from; i < along.length; i++) {
        const header = along[i] as PlacedHeader;
        if (before && Math.abs(header.xMm - before.header.xMm) > reachMm) break;
        if (!admits(seats, header, room)) continue;
        for (let c = before ? before.connector + 1 : 0; c <= last; c++) {
          if (!sits(facts, c, header)) continue;
          if (before && !spans(atMm(facts, c) - atMm(facts, before.connector), before.header, header))
            continue;
          extend([...seats, { connector: c, header }], i + 1);
        }
      }
    };
    extend([], 0);
  }
  return seating.result();
}

/** Every way in which a loose ribbon can go from header to header, in any row. */
export function loosePlacings(
  take: DerivedTake,
  facts: RibbonFacts,
  headers: readonly PlacedHeader[],
  keepAll: boolean,
  room: Room,
): Found {
  const seating = new Seating(headers, keepAll, room);
  const spans = looseSpans(take);
  const extend = (seats: readonly Landing[]): void => {
    if (seating.isFull) return;
    const before = seats[seats.length - 1];
    if (before) seating.add({ facts, seats });
    for (const header of headers) {
      if (!admits(seats, header, room)) continue;
      for (let c = before ? before.connector + 1 : 0; c < facts.connectors.length; c++) {
        if (!sits(facts, c, header)) continue;
        if (before && !spans(atMm(facts, c) - atMm(facts, before.connector), before.header, header)) continue;
        extend([...seats, { connector: c, header }]);
      }
    }
  };
  extend([]);
  return seating.result();
}
