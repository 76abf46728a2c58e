import { ribbonWidthMm } from '../geometry/connector.ts';
import { exceeds } from '../geometry/exceeds.ts';
import type { PlacedHeader, PlacedModule } from '../geometry/place.ts';
import { type RibbonFacts, resolve } from '../layout/kit-index.ts';
import type { StripeEdge } from '../layout/layout.ts';
import { fail, ok, type Result } from '../layout/result.ts';
import { type Berth, isTaken } from './berth.ts';
import type { DerivedTake } from './derived-take.ts';
import { type Gap, gapOf } from './gap.ts';
import { headersInRow } from './headers-by-row.ts';
import { type LaidRibbon, stripeAt } from './laid-ribbon.ts';
import {
  asLaid,
  connectorsFor,
  headerSeatAt,
  type Landing,
  type Laying,
  type Miss,
  type Placing,
  seatOf,
  type WhyNot,
  whyNotOn,
} from './laying.ts';
import { lieOf, seatsAlong, wholePins } from './lie.ts';
import { pairsAlong, pairUp, seatsAround } from './neighbours.ts';

export interface LayOptions {
  /** Turned by 180° in its plane: the stripe lies at the other edge than pin 1. */
  readonly turned?: boolean;
  /** So many of the connectors that could sit on the start are passed over. */
  readonly skip?: number;
  /** The header that the hand points at: it is taken even where the ribbon misses it. */
  readonly onto?: PlacedHeader;
}

/** A way in which a ribbon can go from a start. */
interface Way {
  readonly take: DerivedTake;
  readonly facts: RibbonFacts;
  readonly start: Berth;
  readonly onStart: number;
  /** Connectors ahead of the one on the start, nearest first. */
  readonly ahead: readonly number[];
  /** +1: the hand moves to the right, seen from the front. */
  readonly move: 1 | -1;
  readonly towardsMm: number;
  readonly onto: PlacedHeader | undefined;
}

interface Found {
  readonly placings: readonly Placing[];
  /** By connector. */
  readonly misses: ReadonlyMap<number, Miss>;
}

const atMm = ({ connectors }: RibbonFacts, connector: number): number => connectors[connector]?.atMm ?? 0;

/** Ribbon between two connectors, mm. */
const between = (facts: RibbonFacts, a: number, b: number): number =>
  Math.abs(atMm(facts, a) - atMm(facts, b));

/** Distance of a place from the start, the way the hand moves, mm. */
const progress = ({ start, move }: Way, xMm: number): number => move * (xMm - start.xMm);

/** A connector or header counts as reached as soon as the hand is over its body. */
const isBeyond = (way: Way, xMm: number): boolean =>
  exceeds(progress(way, xMm), progress(way, way.towardsMm) + way.take.limits.connectorBodyMm);

/** Index of the first header that is so far along, the way the hand moves. */
const firstFrom = (
  headers: readonly PlacedHeader[],
  first: number,
  move: 1 | -1,
  atLeastMm: number,
): number => {
  let i = first;
  while (headers[i] && move * (headers[i] as PlacedHeader).xMm < atLeastMm) i += move;
  return i;
};

/** Free upright headers of the bus between the start and the hand, in the order in which the hand passes them. */
function headersAhead(way: Way): PlacedHeader[] {
  const { take, facts, start, move } = way;
  const all = headersInRow(take.places, start.row, facts.bus);
  const found: PlacedHeader[] = [];
  const margin = take.limits.connectorBodyMm;
  const from = firstFrom(all, move === 1 ? 0 : all.length - 1, move, move * start.xMm - margin);
  for (let i = from; all[i]; i += move) {
    const header = all[i] as PlacedHeader;
    if (progress(way, header.xMm) - margin > progress(way, way.towardsMm) + pitchMm(facts)) break;
    const isStart = start.on.type === 'header' && start.on.header === header;
    if (header.axis === 'vertical' && !isStart && !isTaken(take, { type: 'header', header }))
      found.push(header);
  }
  return found;
}

/** The widest gap between two connectors side by side, mm. */
const pitchMm = ({ connectors }: RibbonFacts): number =>
  connectors.reduce((widest, { atMm: at }, i) => Math.max(widest, at - (connectors[i - 1]?.atMm ?? at)), 0);

/** Hosts that come along with a place: its own module, and those that its group has already. */
function hostsWith({ linkGroups }: DerivedTake, { on }: Pick<Berth, 'on'>): PlacedModule[] {
  if (on.type === 'connector') {
    const group = linkGroups.find(({ ribbons }) => ribbons.includes(on.ribbon));
    return group?.links.flatMap(({ hosts }) => hosts.map(({ module }) => module)) ?? [];
  }
  const { owner, role, passes, bus } = on.header;
  if (owner.type === 'board') return [];
  const own = role === 'host' ? [owner] : [];
  if (!passes) return own;
  const inside = owner.headers.filter((header) => header.passes && header.bus === bus);
  const beyond = linkGroups
    .filter(({ harnesses }) =>
      harnesses.some(({ moduleSeats }) => moduleSeats.some((seat) => inside.includes(seat.on.header))),
    )
    .flatMap(({ links }) => links.flatMap(({ hosts }) => hosts.map(({ module }) => module)));
  return [...own, ...inside.filter((header) => header.role === 'host').map(() => owner), ...beyond];
}

/** A link has one host: a header that would bring a second one ends the ribbon. */
function hostGuard(way: Way): (header: PlacedHeader) => boolean {
  let host = hostsWith(way.take, way.start)[0];
  return (header) => {
    const brought = hostsWith(way.take, { on: { type: 'header', header } });
    if (brought.some((other) => host !== undefined && other !== host)) return false;
    host ??= brought[0];
    return true;
  };
}

/** Connectors that can sit on the headers of a row, which are all of one bus. */
function seatableOn({ take, facts }: Way, [header]: readonly PlacedHeader[]): ReadonlySet<number> {
  return new Set(header ? connectorsFor(take, facts, { type: 'header', header }) : []);
}

const isNear = (off: number, tolMm: number): boolean => !exceeds(Math.abs(off), tolMm);

/** The header that a connector of a stiff ribbon is nearest to, of those that no other connector is nearer to. */
function headerFor(
  way: Way,
  headers: readonly PlacedHeader[],
  connector: number,
  placeOf: (connector: number) => number,
): PlacedHeader | undefined {
  const { facts, start, ahead } = way;
  const xMm = placeOf(connector);
  const off = (header: PlacedHeader): number => Math.hypot(header.xMm - xMm, header.yMm - start.yMm);
  const isOurs = (header: PlacedHeader): boolean => {
    const mine = Math.abs(header.xMm - xMm);
    return ![way.onStart, ...ahead].some(
      (other) => other !== connector && Math.abs(header.xMm - placeOf(other)) < mine,
    );
  };
  const reachMm = Math.min(pitchMm(facts), ribbonWidthMm(facts.conductors) * 2);
  return headers
    .filter(
      (header) =>
        isNear(header.xMm - xMm, reachMm) && isNear(header.yMm - start.yMm, ribbonWidthMm(facts.conductors)),
    )
    .filter(isOurs)
    .reduce<PlacedHeader | undefined>(
      (best, header) => (best && off(best) <= off(header) ? best : header),
      undefined,
    );
}

/** A stiff ribbon lies where its connector on the start holds it: the others land on what is there. */
function findStiff(way: Way, along: 1 | -1): Found {
  const { take, facts, start, onStart, onto } = way;
  const tolMm = take.limits.seatToleranceMm;
  const placeOf = (connector: number): number =>
    start.xMm + along * (atMm(facts, connector) - atMm(facts, onStart));
  const headers = headersAhead(way);
  const seatable = seatableOn(way, headers);
  const mayJoin = hostGuard(way);
  const placings: Placing[] = [];
  const misses = new Map<number, Miss>();
  for (const connector of way.ahead) {
    const xMm = placeOf(connector);
    if (isBeyond(way, xMm)) break;
    if (!seatable.has(connector)) continue;
    const header = headerFor(way, headers, connector, placeOf);
    if (!header) continue;
    const on = { type: 'header', header } as const;
    const dxMm = header.xMm - xMm;
    const dyMm = header.yMm - start.yMm;
    const lands = isNear(dxMm, tolMm) && isNear(dyMm, tolMm);
    if ((lands || header === onto) && !mayJoin(header)) break;
    if (lands || header === onto) placings.push({ connector, on });
    if (!lands) misses.set(connector, missOf(facts, connector, header, dxMm, dyMm, tolMm));
  }
  return { placings, misses };
}

function missOf(
  facts: RibbonFacts,
  connector: number,
  header: PlacedHeader,
  dxMm: number,
  dyMm: number,
  tolMm: number,
): Miss {
  const pairs = Math.ceil((facts.ways[connector] ?? 0) / 2);
  const displaced = header.keyed ? undefined : wholePins(dxMm, dyMm, pairs, tolMm);
  return { header, dxMm, dyMm, ...(displaced && { displaced }) };
}

/** Where a length of ribbon is held: a seat, and how much ribbon there is from it to the last connector laid. */
interface Hold {
  readonly xMm: number;
  readonly yMm: number;
  readonly lengthMm: number;
}

/** The first seats from the start, on a header itself or through the socket into which the ribbon is plugged. */
function holdsOf({ start }: Way): Hold[] {
  if (start.on.type === 'header') return [{ ...start, lengthMm: 0 }];
  return seatsAround(start.on.ribbon, start.on.connector)
    .filter(({ seat }) => seat.on.header.row === start.row)
    .map(({ seat, lengthMm }) => ({ ...seat.on.header, lengthMm }));
}

/** A bending ribbon goes from header to header, each on the first connector with ribbon enough. */
function findBending(way: Way): Found {
  const { take, facts, onto } = way;
  const { seatToleranceMm, skewMm } = take.limits;
  const mayJoin = hostGuard(way);
  const placings: Placing[] = [];
  const misses = new Map<number, Miss>();
  let holds = holdsOf(way);
  let last = way.onStart;
  let yMm = way.start.yMm;
  let left = way.ahead;
  const headers = headersAhead(way);
  const seatable = seatableOn(way, headers);
  for (const header of headers) {
    if (progress(way, header.xMm) <= 0 || isBeyond(way, header.xMm)) continue;
    const on = { type: 'header', header } as const;
    const fitting = left.filter((connector) => seatable.has(connector));
    if (fitting.length === 0) break;
    const missing = (connector: number): number =>
      Math.max(
        ...holds.map(
          (hold) => Math.abs(header.xMm - hold.xMm) - hold.lengthMm - between(facts, last, connector),
        ),
      );
    const dyMm = header.yMm - yMm;
    const reaching = fitting.find(
      (connector) => holds.length === 0 || !exceeds(missing(connector), seatToleranceMm),
    );
    const connector = reaching ?? (fitting[fitting.length - 1] as number);
    const inLine = isNear(dyMm, skewMm);
    if (!inLine && !isNear(dyMm, ribbonWidthMm(facts.conductors))) continue;
    const lands = inLine && reaching !== undefined;
    if (!lands) {
      const missingMm = reaching === undefined ? missing(connector) : 0;
      const miss: Miss = {
        header,
        dxMm: way.move * missingMm,
        dyMm: inLine ? 0 : dyMm,
        ...(missingMm > 0 && { missingMm }),
      };
      if (!misses.has(connector)) misses.set(connector, miss);
    }
    if ((lands || header === onto) && !mayJoin(header)) break;
    if (lands || header === onto) {
      if (lands) misses.delete(connector);
      placings.push({ connector, on });
      holds = [{ ...header, lengthMm: 0 }];
      last = connector;
      yMm = header.yMm;
      left = left.slice(left.indexOf(connector) + 1);
    }
    if (reaching === undefined) break;
  }
  return { placings, misses };
}

/** Ribbon between the seats, and through the socket on which it starts to the seats beyond. */
function gapsOf({ take, start, onStart, facts }: Way, laid: LaidRibbon): Gap[] {
  const along = seatsAlong(laid);
  const pairs = pairsAlong(laid, along);
  if (start.on.type === 'connector') {
    const seat = along.reduce<(typeof along)[number] | undefined>((best, one) => {
      const isNearer =
        !best || between(facts, onStart, one.connector) < between(facts, onStart, best.connector);
      return isNearer ? one : best;
    }, undefined);
    const around = seat ? seatsAround(start.on.ribbon, start.on.connector) : [];
    for (const reached of around) {
      if (!seat) break;
      const lengthMm = reached.lengthMm + between(facts, onStart, seat.connector);
      pairs.push(pairUp(reached.seat, seat, lengthMm, [...reached.ribbons, laid]));
    }
  }
  return pairs.map((pair) => gapOf(pair, take));
}

/** Where each connector lies: on its header, on the straight line of a stiff ribbon, or pulled taut beyond the last seat. */
function placesOf(
  way: Way,
  laid: LaidRibbon,
  along: 1 | -1,
): (connector: number) => { xMm: number; yMm: number } {
  const { take, facts, start, onStart } = way;
  const lie = facts.bends ? undefined : lieOf(laid, seatsAlong(laid), take.limits.seatToleranceMm);
  if (lie) return (connector) => ({ xMm: lie.originMm + along * atMm(facts, connector), yMm: lie.yMm });
  return (connector) => {
    const seat = headerSeatAt(laid, connector);
    if (seat) return seat.on.header;
    const held = facts.connectors
      .map((_, i) => i)
      .filter((i) => i === onStart || headerSeatAt(laid, i))
      .reduce(
        (best, i) => (between(facts, i, connector) < between(facts, best, connector) ? i : best),
        onStart,
      );
    const from = headerSeatAt(laid, held)?.on.header ?? start;
    return { xMm: from.xMm + along * (atMm(facts, connector) - atMm(facts, held)), yMm: from.yMm };
  };
}

/** Seats that the rules would find beside their pins, by connector. */
function straysOf({ take, facts }: Way, laid: LaidRibbon): Map<number, Miss> {
  const lie = facts.bends ? undefined : lieOf(laid, seatsAlong(laid), take.limits.seatToleranceMm);
  return new Map(
    (lie?.strays ?? []).map(({ seat, dxMm, dyMm, displaced }) => [
      seat.connector,
      { header: seat.on.header, dxMm, dyMm, ...(displaced && { displaced }) },
    ]),
  );
}

/** Of two seats the one further from the start is to blame for what lies between them. */
function blamedFor({ facts, onStart }: Way, laid: LaidRibbon, { pair, flaws }: Gap): number[] {
  if (flaws.length === 0) return [];
  const own = [pair.a, pair.b].filter(({ ribbon }) => ribbon === laid).map(({ connector }) => connector);
  const far = Math.max(...own.map((connector) => between(facts, connector, onStart)));
  return own.filter((connector) => between(facts, connector, onStart) === far);
}

function landingsOf(
  way: Way,
  laid: LaidRibbon,
  along: 1 | -1,
  found: Found,
  gaps: readonly Gap[],
): Landing[] {
  const { facts } = way;
  const placeOf = placesOf(way, laid, along);
  const strays = straysOf(way, laid);
  const blamed = new Set(gaps.flatMap((gap) => blamedFor(way, laid, gap)));
  return facts.connectors.map((_, connector): Landing => {
    const on = laid.uses[connector]?.[0]?.on;
    const miss = (on && !facts.bends ? strays : found.misses).get(connector);
    const lands = on !== undefined && !miss && !blamed.has(connector);
    return { connector, ...placeOf(connector), ...(on && { on }), ...(miss && { miss }), lands };
  });
}

const turnedOver = (edge: StripeEdge): StripeEdge => (edge === 'down' ? 'up' : 'down');

/** The edge at which the stripe belongs: where pin 1 is, or where the ribbon has it into which this one is plugged. */
function stripeFor({ on }: Berth): StripeEdge {
  if (on.type === 'connector') return on.ribbon.facts.flat ? stripeAt(on.ribbon, on.connector) : 'down';
  return on.header.pin1 === 'up' ? 'up' : 'down';
}

function wayOf(
  take: DerivedTake,
  facts: RibbonFacts,
  start: Berth,
  stripe: StripeEdge,
  towardsMm: number,
  options: LayOptions,
): Way {
  const along = stripe === 'up' ? 1 : -1;
  const move = towardsMm === start.xMm ? along : towardsMm > start.xMm ? 1 : -1;
  const all = facts.connectors.map((_, i) => i);
  const order = move === along ? all : all.reverse();
  const fitting = connectorsFor(take, facts, start.on);
  const starters = order.filter((connector) => fitting.includes(connector));
  const onStart = starters[Math.min(options.skip ?? 0, starters.length - 1)] as number;
  const ahead = order.slice(order.indexOf(onStart) + 1);
  return { take, facts, start, onStart, ahead, move, towardsMm, onto: options.onto };
}

/**
 * How a flat ribbon lies when it is drawn from a start (a header of its bus, or for its plug a free socket of
 * a laid ribbon) along the row: it begins with the first connector that fits there, the way the hand moves,
 * and its stripe is at pin 1. A bending ribbon goes from header to header as far as the hand, each on the
 * first connector with ribbon enough; a stiff one lies on its pitch. It never brings a second host.
 *
 * @param towardsMm - where the hand is along the row, seen from the front, mm; infinite: as far as it goes
 */
export function layAlong(
  take: DerivedTake,
  kindId: string,
  start: Berth,
  towardsMm: number,
  options: LayOptions = {},
): Result<Laying, WhyNot> {
  const facts = resolve(take.kit.ribbons, kindId);
  const why = whyNotOn(take, facts, start.on);
  if (why) return fail(why);
  const right = stripeFor(start);
  const stripe = options.turned ? turnedOver(right) : right;
  const along = stripe === 'up' ? 1 : -1;
  const way = wayOf(take, facts, start, stripe, towardsMm, options);
  const found = facts.bends ? findBending(way) : findStiff(way, along);
  const placings = [{ connector: way.onStart, on: start.on }, ...found.placings].sort(
    (a, b) => a.connector - b.connector,
  );
  const laid = asLaid(take, facts, placings, stripe);
  const gaps = gapsOf(way, laid);
  return ok({
    facts,
    seats: placings.map(seatOf),
    stripe,
    start,
    landings: landingsOf(way, laid, along, found, gaps),
    gaps,
  });
}
