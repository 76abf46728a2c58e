import type { PlacedHeader } from '../../geometry/place.ts';
import { connectorsFor } from '../../wiring/fitting.ts';
import { isHeaderJoint } from '../../wiring/harness.ts';
import { connectorsInUse, type Joint, type LaidRibbon, orderOf } from '../../wiring/laid-ribbon.ts';
import { fits, isSocket, onHeader } from '../../wiring/landing.ts';
import { leadWayMm, lengthOf } from '../../wiring/lead.ts';
import type { WholeTake } from '../../wiring/whole-take.ts';
import type { Mend } from '../check.ts';
import { doubleSeat as doubleSeatCheck } from '../rules/double-seat.ts';
import { keyOf } from '../run.ts';
import { connectorName, count, targetName } from '../words.ts';
import { jointOf, ribbonsOf } from './cause.ts';
import { headersUnder, otherKinds } from './lay-anew.ts';
import { lift, without } from './lift.ts';
import { otherLead } from './new-lead.ts';
import { mend, type Remedy } from './remedy.ts';

/** Headers to try for one connector. */
const MOST_HEADERS = 3;

const isFreeHeader = (header: PlacedHeader, { wiring }: WholeTake): boolean => !wiring.seatedOn.has(header);

const distanceMm = (a: PlacedHeader, b: PlacedHeader): number =>
  Math.abs(a.xMm - b.xMm) + Math.abs(a.row.bottomMm + a.yMm - b.row.bottomMm - b.yMm);

const seatEdit = (take: WholeTake, ribbon: LaidRibbon, connector: number, header: PlacedHeader) =>
  ({
    type: 'seat-connector',
    take: take.take.id,
    ribbon: ribbon.id,
    connector,
    on: onHeader(header),
  }) as const;

/** Another free header that the connector fits: of the same owner first, on a board the nearest. */
function* otherHeader({ ribbon, connector, on }: Joint, take: WholeTake): Generator<Mend> {
  if (on.type !== 'header') return;
  const { owner } = on.header;
  const boards = take.places.boards.filter((board) => board !== owner).flatMap(({ headers }) => headers);
  const candidates = [...owner.headers, ...(owner.type === 'board' ? boards : [])]
    .filter((header) => isFreeHeader(header, take) && fits(ribbon.facts, connector, header))
    .sort((a, b) => distanceMm(a, on.header) - distanceMm(b, on.header));
  for (const header of candidates.slice(0, MOST_HEADERS)) {
    const where = `header ${header.name} of ${header.owner.name}`;
    const label = `Seat ${connectorName({ ribbon, connector })}, on ${where}`;
    yield mend(label, [seatEdit(take, ribbon, connector, header)]);
  }
}

/** All headers that a ribbon is drawn on, sound or not. */
const headersDrawn = ({ uses }: LaidRibbon): PlacedHeader[] => [
  ...new Set(uses.flat().flatMap(({ on }) => (on.type === 'header' ? [on.header] : []))),
];

/** A connector on what it does not belong to: another header, a ribbon that does belong there, else off it. */
export const wrongThing: Remedy = function* (note, take) {
  const joint = jointOf(note, take);
  if (!joint) return;
  yield* otherHeader(joint, take);
  yield* otherKinds(take, joint.ribbon, headersDrawn(joint.ribbon));
  yield lift(take, [joint]);
};

/** A ribbon of another kind, else the connector off what it sits on. */
export const otherRibbon: Remedy = function* (note, take) {
  const joint = jointOf(note, take);
  if (!joint) return;
  yield* otherKinds(take, joint.ribbon, headersUnder(joint.ribbon));
  yield* otherLead(take, joint.ribbon);
  yield lift(take, [joint]);
};

/** Of two connectors in one place the second goes elsewhere, or is lifted. */
export const doubleSeat: Remedy = function* (note, take) {
  const found = [...doubleSeatCheck.find(take)];
  const use = take.wiring.doubleUses.find((_, i) => {
    const { subjects, part } = found[i] ?? { subjects: [] };
    return keyOf(note.check, subjects, part) === note.key;
  });
  if (!use) return;
  const [first, ...others] = use.joints;
  const [second, ...more] = others;
  if (second && more.length === 0) yield* otherHeader(second, take);
  yield lift(take, others, 'The first is counted, the others join nothing.');
  for (const stays of others) {
    yield lift(
      take,
      use.joints.filter((joint) => joint !== stays),
    );
  }
  if (first && second && more.length === 0) yield* otherHeader(first, take);
};

const setTwist = (take: WholeTake, ribbon: LaidRibbon, after: number, halfTwists: number) =>
  ({ type: 'twist-ribbon', take: take.take.id, ribbon: ribbon.id, after, halfTwists }) as const;

const twistsOf = ({ ribbon }: LaidRibbon, after: number): number => ribbon.twists?.[after] ?? 0;

/** Half-twists out of a ribbon that has some, or one more before a connector, and one after it that turns back. */
function* byTwisting(ribbon: LaidRibbon, connector: number, take: WholeTake): Generator<Mend> {
  if (!ribbon.facts.flat) return;
  const gaps = [...Array(ribbon.facts.connectors.length - 1).keys()];
  const odd = gaps.filter((gap) => twistsOf(ribbon, gap) % 2 === 1);
  const less = (gap: number) => setTwist(take, ribbon, gap, twistsOf(ribbon, gap) - 1);
  for (const gap of odd) {
    const label = `Take a half-twist out of ${ribbon.name}, after connector ${gap + 1}`;
    yield mend(label, [less(gap)]);
  }
  if (odd.length > 1)
    yield mend(`Take ${count(odd.length, 'half-twist')} out of ${ribbon.name}`, odd.map(less));
  if (odd.length > 0) return;
  const place = orderOf(ribbon, connector);
  const more = (gap: number) => setTwist(take, ribbon, gap, twistsOf(ribbon, gap) + 1);
  const around = [place - 1, place].filter((gap) => gaps.includes(gap));
  const [before] = around;
  if (place > 0 && before !== undefined) {
    yield mend(`Put a half-twist into ${ribbon.name}, before connector ${connector + 1}`, [more(before)]);
    if (around.length > 1) {
      const label = `Put a half-twist into ${ribbon.name} before connector ${connector + 1} and one after it`;
      yield mend(label, around.map(more));
    }
  }
}

/** Half-twists, turning, a ribbon of another kind; else off it. */
function* turnedOver(joint: Joint, take: WholeTake): Generator<Mend> {
  yield* byTwisting(joint.ribbon, joint.connector, take);
  if (joint.on.type === 'connector') yield* byTwisting(joint.on.ribbon, joint.on.connector, take);
  yield* otherKinds(take, joint.ribbon, headersDrawn(joint.ribbon));
  yield lift(take, [joint]);
}

export const looksAway: Remedy = function* (note, take) {
  const joint = jointOf(note, take);
  if (joint) yield* turnedOver(joint, take);
};

export const stripeReversed: Remedy = function* (note, take) {
  const joint = jointOf(note, take);
  if (!joint) return;
  const { ribbon } = joint;
  const named = { type: 'turn-ribbon', take: take.take.id, ribbon: ribbon.id } as const;
  yield mend(`Turn ${ribbon.name}`, [{ ...named, seats: 'mirror' }]);
  yield mend(`Turn ${ribbon.name}`, [{ ...named, seats: 'keep' }]);
  const headers = headersUnder(ribbon);
  const connectors = connectorsFor(take, ribbon.facts, headers);
  if (connectors && isAlone(ribbon)) {
    const seats = headers.map((header, i) => seatEdit(take, ribbon, connectors[i] as number, header));
    yield mend(`Turn ${ribbon.name} and seat it in order`, [{ ...named, seats: 'keep' }, ...seats]);
  }
  yield* turnedOver(joint, take);
};

const isAlone = ({ uses }: LaidRibbon): boolean => uses.flat().every(({ on }) => on.type === 'header');

/** A flat ribbon on a lying header: a loose one, else off it. */
export const wrongAxis: Remedy = function* (note, take) {
  const joint = jointOf(note, take);
  if (!joint) return;
  yield* otherKinds(take, joint.ribbon, headersUnder(joint.ribbon));
  yield lift(take, [joint]);
};

/** Where the free ends of a ribbon with one seat could go: a lead's to the nearest header across that wants it. */
function* secondSeat(laid: LaidRibbon, take: WholeTake): Generator<Mend> {
  const only = laid.uses.flat().find((joint) => joint.conducts && joint.ribbon === laid);
  if (!only || !isHeaderJoint(only)) return;
  const start = only.on.header;
  const { places } = take;
  const across = start.owner.type === 'module' && !laid.facts.flat ? places.boards : places.modules;
  const targets = across
    .flatMap(({ headers }) => headers)
    .filter((header) => isFreeHeader(header, take) && header.owner !== start.owner)
    .filter((header) => laid.facts.flat || leadWayMm(start, header, take) <= lengthOf(laid.facts))
    .sort((a, b) => distanceMm(a, start) - distanceMm(b, start));
  let tried = 0;
  for (const header of targets) {
    for (const [connector] of laid.facts.connectors.entries()) {
      if (connector === only.connector || (laid.uses[connector]?.length ?? 0) > 0) continue;
      if (!isSocket(laid.facts, connector) || !fits(laid.facts, connector, header)) continue;
      if (laid.facts.flat && !mayLand(only.connector, connector, start, header, laid)) continue;
      const label = `Seat ${connectorName({ ribbon: laid, connector })}, on ${targetName({ type: 'header', header })}`;
      yield mend(label, [seatEdit(take, laid, connector, header)]);
      if (++tried >= MOST_HEADERS) return;
    }
  }
}

/** A first look at whether a flat ribbon could have two connectors on two headers; whether it may is tried. */
function mayLand(from: number, to: number, a: PlacedHeader, b: PlacedHeader, { facts }: LaidRibbon): boolean {
  const at = (connector: number): number => facts.connectors[connector]?.atMm ?? 0;
  const way = Math.abs(at(to) - at(from));
  const distance = Math.abs(a.xMm - b.xMm);
  return a.row === b.row && distance <= way + 2 && (facts.bends || distance >= way - 2);
}

export const looseEnd: Remedy = function* (note, take) {
  const [laid] = ribbonsOf(note, take);
  if (!laid || connectorsInUse(laid).length !== 1) return;
  yield* secondSeat(laid, take);
  yield* without(take, [laid]);
};
