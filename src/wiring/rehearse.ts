import type { KitIndex } from '../layout/kit-index.ts';
import type { DerivedTake } from './derived-take.ts';
import { type Joint, linesOf, linesUnder, waysOf } from './laid-ribbon.ts';
import { type Mishap, type Misplug, mishapOf } from './mishap.ts';

/** What a seat's connector would join if it were plugged as told. */
export function mishapAt({ ribbon, connector, on }: Joint, misplug: Misplug, kit: KitIndex): Mishap {
  const contacts = linesOf(ribbon).slice(0, waysOf(ribbon, connector));
  return mishapOf(contacts, linesUnder(on), misplug, (line) => kit.voltages.has(line));
}

/** The seat that a connector (from 0) of a ribbon makes, or that is made to it; the first where there are two. */
export function seatAt({ wiring }: DerivedTake, ribbon: string, connector: number): Joint | undefined {
  return wiring.ribbonById.get(ribbon)?.uses[connector]?.[0];
}
