import { PIN_MM } from '../geometry/connector.ts';
import { exceeds } from '../geometry/exceeds.ts';
import type { PlacedRow } from '../geometry/place.ts';
import { type HeaderJoint, isHeaderJoint } from './harness.ts';
import { atMmOf, connectorAt, isWrongAxis, type Joint, type LaidRibbon, waysOf } from './laid-ribbon.ts';

/** How a flat ribbon that does not bend lies: straight, where most of its seats agree that it does. */
export interface Lie {
  readonly ribbon: LaidRibbon;
  readonly row: PlacedRow;
  /** Place of its first connector along the row, mm. */
  readonly originMm: number;
  /** Height of its connectors' centres, mm. */
  readonly yMm: number;
  /** Seats whose headers lie elsewhere. */
  readonly strays: readonly Stray[];
}

/** A seat that a stiff ribbon does not reach: where its header lies, measured from the connector. */
export interface Stray {
  readonly seat: HeaderJoint;
  readonly otherRow: boolean;
  readonly dxMm: number;
  readonly dyMm: number;
  /** The connector can be plugged displaced by so many pin rows along the rail and pin pairs upward. */
  readonly displaced?: { readonly rows: number; readonly pairs: number };
}

/** +1 where a later connector lies further right, seen from the front. */
export const directionOf = (ribbon: LaidRibbon): 1 | -1 => (ribbon.ribbon.stripe === 'up' ? 1 : -1);

interface Claim {
  readonly seat: HeaderJoint;
  readonly row: PlacedRow;
  readonly originMm: number;
  readonly yMm: number;
}

function claimOf(seat: HeaderJoint): Claim {
  const { header } = seat.on;
  const { ribbon, connector } = seat;
  const originMm = header.xMm - directionOf(ribbon) * atMmOf(ribbon, connector);
  return { seat, row: header.row, originMm, yMm: header.yMm };
}

const agrees = (a: Claim, b: Claim, tolMm: number): boolean =>
  a.row === b.row && within(a.originMm - b.originMm, tolMm) && within(a.yMm - b.yMm, tolMm);

const within = (difference: number, tolMm: number): boolean => !exceeds(Math.abs(difference), tolMm);

function mostAgreed(claims: readonly Claim[], tolMm: number): Claim {
  let best = claims[0] as Claim;
  let most = -1;
  for (const claim of claims) {
    let agreeing = 0;
    for (const other of claims) if (agrees(claim, other, tolMm)) agreeing++;
    if (agreeing > most) [best, most] = [claim, agreeing];
    if (agreeing === claims.length) break;
  }
  return best;
}

/** Whole pin distances by which a connector can be plugged beside its place, if these are some. */
export function wholePins(dxMm: number, dyMm: number, pairsOfConnector: number, tolMm: number) {
  const rows = Math.round(dxMm / PIN_MM);
  const pairs = Math.round(dyMm / PIN_MM);
  const onPins = within(dxMm - rows * PIN_MM, tolMm) && within(dyMm - pairs * PIN_MM, tolMm);
  const touches = Math.abs(rows) <= 1 && Math.abs(pairs) < pairsOfConnector;
  return onPins && touches && (rows !== 0 || pairs !== 0) ? { rows, pairs } : undefined;
}

function strayOf(claim: Claim, place: Claim, tolMm: number): Stray {
  const { seat } = claim;
  const otherRow = claim.row !== place.row;
  const dxMm = claim.originMm - place.originMm;
  const dyMm = claim.yMm - place.yMm;
  const pairs = Math.ceil(waysOf(seat.ribbon, seat.connector) / 2);
  const displaced = otherRow || seat.on.header.keyed ? undefined : wholePins(dxMm, dyMm, pairs, tolMm);
  return { seat, otherRow, dxMm, dyMm, ...(displaced && { displaced }) };
}

/** The conducting seats on headers that have a place along a ribbon, first along it first. */
export function seatsAlong(ribbon: LaidRibbon): HeaderJoint[] {
  const seats: HeaderJoint[] = [];
  for (let order = 0; order < ribbon.uses.length; order++) {
    for (const joint of ribbon.uses[connectorAt(ribbon, order)] as Joint[]) {
      if (joint.conducts && isHeaderJoint(joint) && !isWrongAxis(joint)) seats.push(joint);
    }
  }
  return seats;
}

/** How a stiff ribbon lies; none where nothing of it is seated. Tie: the lowest connector's place. */
export function lieOf(ribbon: LaidRibbon, seats: readonly HeaderJoint[], tolMm: number): Lie | undefined {
  const claims = seats.map(claimOf);
  if (claims.length === 0) return undefined;
  const place = mostAgreed(claims, tolMm);
  const strays = claims
    .filter((claim) => !agrees(claim, place, tolMm))
    .map((claim) => strayOf(claim, place, tolMm));
  return { ribbon, row: place.row, originMm: place.originMm, yMm: place.yMm, strays };
}
