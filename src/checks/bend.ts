import { type HeldArch, heldArch } from '../geometry/arch.ts';
import { EPSILON } from '../geometry/exceeds.ts';
import type { DerivedTake } from '../wiring/derived-take.ts';
import { crossesJoint, distanceMm, inOneRow, isOutOfLine, type Neighbours } from '../wiring/neighbours.ts';

/** Neighbours on one flat ribbon in one row: those whose gap can be computed. */
export const isGap = (pair: Neighbours): boolean =>
  pair.lay !== 'loose' && !crossesJoint(pair) && inOneRow(pair);

/** The arch in which a bending ribbon stands between two neighbours; nothing where it lies straight. */
export function archOf(pair: Neighbours, { limits, crossed }: DerivedTake): HeldArch | undefined {
  if (pair.lay !== 'bending' || !isGap(pair) || isOutOfLine(pair, limits)) return undefined;
  if (pair.ribbons.some((ribbon) => crossed.has(ribbon))) return undefined;
  const distance = distanceMm(pair);
  if (distance >= pair.lengthMm - limits.seatToleranceMm - EPSILON) return undefined;
  return heldArch(pair.lengthMm, distance, limits.connectorBodyMm);
}
