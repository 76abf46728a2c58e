import { exceeds } from '../../geometry/exceeds.ts';
import type { PlacedHeader, PlacedModule } from '../../geometry/place.ts';
import { mmToHp } from '../../geometry/rack.ts';
import type { HeaderJoint } from '../../wiring/harness.ts';
import { atMmOf, type LaidRibbon } from '../../wiring/laid-ribbon.ts';
import { onHeader } from '../../wiring/landing.ts';
import { directionOf, type Lie, type Stray } from '../../wiring/lie.ts';
import type { WholeTake } from '../../wiring/whole-take.ts';
import type { Mend } from '../check.ts';
import { connectorName, namesOf, targetName } from '../words.ts';
import { pairOf, strayOf } from './cause.ts';
import { headersUnder, otherKinds, seatAnew } from './lay-anew.ts';
import { lift } from './lift.ts';
import { mend, type Remedy } from './remedy.ts';
import { moveMends, shifted } from './room.ts';

/** Brings the module under the connector, or, where it must stay, all the others under theirs. */
function* toPitch({ seat, dxMm, dyMm, otherRow }: Stray, take: WholeTake): Generator<Mend> {
  const { owner } = seat.on.header;
  if (owner.type !== 'module' || otherRow || exceeds(Math.abs(dyMm), take.limits.seatToleranceMm)) return;
  yield* shifted(owner, mmToHp(-dxMm), take);
  const others = headersUnder(seat.ribbon).flatMap((header): PlacedModule[] =>
    header.owner.type === 'module' && header.owner !== owner ? [header.owner] : [],
  );
  const modules = [...new Set(others)];
  if (modules.length > 0) yield* moveMends({ modules, row: owner.row, shiftHp: mmToHp(dxMm) }, take);
}

/** The header, free and of the ribbon's bus, that lies where a connector lands. */
function headerAt(
  { ribbon, row, originMm, yMm }: Lie,
  connector: number,
  take: WholeTake,
): PlacedHeader | undefined {
  const xMm = originMm + directionOf(ribbon) * atMmOf(ribbon, connector);
  const lands = (value: number, place: number): boolean =>
    !exceeds(Math.abs(value - place), take.limits.seatToleranceMm);
  return take.places.modules
    .flatMap(({ headers }) => headers)
    .find(
      (header) =>
        header.row === row &&
        header.bus === ribbon.facts.bus &&
        lands(header.xMm, xMm) &&
        lands(header.yMm, yMm) &&
        !take.wiring.seatedOn.has(header),
    );
}

/** Seats the connector on the header that lies where it lands. */
function* whereItLands(seat: HeaderJoint, take: WholeTake): Generator<Mend> {
  const lie = take.lies.get(seat.ribbon);
  const header = lie && headerAt(lie, seat.connector, take);
  if (!header) return;
  const named = { take: take.take.id, ribbon: seat.ribbon.id, connector: seat.connector };
  yield mend(`Seat ${connectorName(seat)}, on ${targetName({ type: 'header', header })}`, [
    { type: 'seat-connector', ...named, on: onHeader(header) },
  ]);
}

/** The same headers by other connectors, or by a ribbon of another kind. */
function* layAgain(ribbon: LaidRibbon, take: WholeTake): Generator<Mend> {
  const headers = headersUnder(ribbon);
  yield* seatAnew(take, ribbon, headers, `Seat ${ribbon.name} by other connectors, on the same headers`);
  yield* otherKinds(take, ribbon, headers);
}

export const missesPitch: Remedy = function* (note, take) {
  const stray = strayOf(note, take);
  if (!stray) return;
  yield* toPitch(stray, take);
  yield* layAgain(stray.seat.ribbon, take);
  yield* whereItLands(stray.seat, take);
  yield lift(take, [stray.seat]);
};

/** Lifts either of two neighbours, that of the module which less hangs on first. */
function* liftEither(seats: readonly HeaderJoint[], take: WholeTake): Generator<Mend> {
  const uses = ({ on }: HeaderJoint): number =>
    on.header.owner.headers.filter((header) => take.wiring.seatedOn.has(header)).length;
  for (const seat of [...seats].sort((a, b) => uses(a) - uses(b))) yield lift(take, [seat]);
}

/** Headers that a flat ribbon cannot join as it lies. */
export const outOfLine: Remedy = function* (note, take) {
  yield* missesPitch(note, take);
  const pair = pairOf(note, take);
  if (!pair) return;
  for (const ribbon of pair.ribbons) yield* layAgain(ribbon, take);
  yield* liftEither([pair.a, pair.b], take);
};

/** Brings two neighbours closer together or further apart, by as little as it takes. */
function* byMoving(note: Parameters<Remedy>[0], take: WholeTake): Generator<Mend> {
  const pair = pairOf(note, take);
  if (!pair || pair.a.on.header.row !== pair.b.on.header.row) return;
  const [left, right] = [pair.a.on.header, pair.b.on.header].sort((a, b) => a.xMm - b.xMm);
  if (!left || !right || left.owner.type !== 'module' || right.owner.type !== 'module') return;
  const gap = right.xMm - left.xMm;
  const tooFar = gap > pair.lengthMm;
  // To the ribbon's own pitch, where it lies straight; where it is longer, half way there, in an arch, will often do.
  const straightHp = mmToHp(pair.lengthMm - gap);
  for (const byHp of tooFar ? [straightHp] : [straightHp / 2, straightHp]) {
    yield* shifted(right.owner, gridShift(right.owner, byHp), take);
    yield* shifted(left.owner, gridShift(left.owner, -byHp), take);
  }
}

/** A shift of at least so much that ends on a whole or half HP. */
function gridShift({ module }: PlacedModule, byHp: number): number {
  const steps = (module.atHp + byHp) * 2;
  return (byHp > 0 ? Math.ceil(steps) : Math.floor(steps)) / 2 - module.atHp;
}

/** Ribbon between two neighbours that is too short, too long for its way, or without room. */
export const badGap: Remedy = function* (note, take) {
  const pair = pairOf(note, take);
  if (!pair) return;
  for (const ribbon of pair.ribbons) yield* layAgain(ribbon, take);
  yield* byMoving(note, take);
  yield* liftEither([pair.a, pair.b], take);
};

/** Two connectors side by side without room. */
export const crowded: Remedy = function* (note, take) {
  const pair = pairOf(note, take);
  if (!pair) return;
  yield* byMoving(note, take);
  for (const ribbon of pair.ribbons) yield* layAgain(ribbon, take);
  yield* liftEither([pair.a, pair.b], take);
};

/** Turns or seats a ribbon anew so that its seats run in the connectors' order. */
export const crossed: Remedy = function* (note, take) {
  const laid = note.subjects.map(({ id }) => take.wiring.ribbonById.get(id)).find((ribbon) => ribbon);
  if (!laid) return;
  const named = { take: take.take.id, ribbon: laid.id };
  yield mend(`Turn ${laid.name}`, [{ type: 'turn-ribbon', ...named, seats: 'keep' }]);
  const headers = headersUnder(laid);
  yield* seatAnew(take, laid, headers, `Seat ${laid.name} in order, on the same headers`);
  yield* inOrder(laid, headers, take);
  yield* otherKinds(take, laid, headers);
  const seats = take.seatsAlong.get(laid) ?? [];
  for (const seat of seats) yield lift(take, [seat], `${namesOf([laid])} runs in order without it.`);
};

/** The connectors that are in use, given to the headers in the order in which they lie. */
function* inOrder(laid: LaidRibbon, headers: readonly PlacedHeader[], take: WholeTake): Generator<Mend> {
  const seats = take.seatsAlong.get(laid) ?? [];
  const rightward = directionOf(laid);
  const sorted = [...headers].sort((a, b) => rightward * (a.xMm - b.xMm));
  const edits = seats.flatMap(({ connector }, i) => {
    const header = sorted[i];
    if (!header) return [];
    const on = onHeader(header);
    return [{ type: 'seat-connector', take: take.take.id, ribbon: laid.id, connector, on } as const];
  });
  yield mend(`Seat ${laid.name} in order, on the same headers`, edits);
}

/** Two ribbons in one place: another kind of one of them, else the lesser of the two taken out. */
export const clash: Remedy = function* (note, take) {
  const ribbons = note.subjects.flatMap(({ id }) => take.wiring.ribbonById.get(id) ?? []);
  const byUse = [...ribbons].sort((a, b) => headersUnder(a).length - headersUnder(b).length);
  for (const laid of byUse) yield* otherKinds(take, laid, headersUnder(laid));
  for (const laid of byUse) {
    for (const seat of endSeats(laid, take)) yield lift(take, [seat]);
  }
};

/** The outermost seats of a ribbon: without one of them it is shorter. */
function endSeats(laid: LaidRibbon, take: WholeTake): HeaderJoint[] {
  const seats = take.seatsAlong.get(laid) ?? [];
  const [first] = seats;
  const last = seats[seats.length - 1];
  return [first, last].flatMap((seat) => seat ?? []);
}
