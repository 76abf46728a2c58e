import type { KitIndex } from '../layout/kit-index.ts';
import type { DerivedTake } from './derived-take.ts';
import { type Joint, linesOf, linesUnder, waysOf } from './laid-ribbon.ts';
import { type Mishap, mishapOf } from './mishap.ts';
import type { Misplug } from './pin-map.ts';

/** Lines by contact of a seat's connector. */
export const linesOn = ({ ribbon, connector }: Joint): readonly string[] =>
  linesOf(ribbon).slice(0, waysOf(ribbon, connector));

/** What a seat's connector would join if it were plugged as told. */
export const mishapAt = (joint: Joint, misplug: Misplug, kit: KitIndex): Mishap =>
  mishapOf(linesOn(joint), linesUnder(joint.on), misplug, (line) => kit.voltages.has(line));

/** The seat that a connector (from 0) of a ribbon makes, or that is made to it; the first where there are two. */
export function seatAt({ wiring }: DerivedTake, ribbon: string, connector: number): Joint | undefined {
  return wiring.ribbonById.get(ribbon)?.uses[connector]?.[0];
}
