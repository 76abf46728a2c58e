import type { WholeTake } from '../wiring/whole-take.ts';
import { factsBodies } from './facts-inset.ts';
import { type Gauge, gaugeBody } from './gauge.ts';
import { groupsBody } from './groups-inset.ts';
import { type Inset, type InsetBody, insetOf } from './inset.ts';
import { keyBodies } from './key-inset.ts';
import { depths, lengths, radii, reaches, rooms } from './lengths.ts';
import { boardLoads, contactLoads, losses, shifts, supplyLoads } from './loads.ts';
import { arrivingBodies, carriedBodies } from './pins-inset.ts';

type Bodies = (take: WholeTake) => readonly InsetBody[];

const gauges =
  (of: (take: WholeTake) => readonly Gauge[]): Bodies =>
  (take) =>
    of(take).map(gaugeBody);

/** What a plan of the case cannot show of a check's example, by the check's id. */
const BODIES: Readonly<Record<string, Bodies>> = {
  'too-deep': gauges((take) => reaches(take).slice(0, 1)),
  'short-ribbon': gauges(lengths),
  'tight-bend': gauges(radii),
  'no-clearance': gauges(depths),
  crowded: gauges(rooms),
  'lead-short': gauges(lengths),
  'key-against': keyBodies,
  'foreign-voltage': carriedBodies,
  'split-member': (take) => [groupsBody(take)],
  'unknown-facts': factsBodies,
  'guessed-data': factsBodies,
  'missing-voltage': arrivingBodies,
  overload: gauges((take) => supplyLoads(take, false)),
  'low-headroom': gauges((take) => supplyLoads(take, true)),
  'board-overload': gauges(boardLoads),
  'contact-overload': gauges(contactLoads),
  'low-voltage': gauges(losses),
  'ground-shift': gauges(shifts),
};

export function insetFor(check: string, take: WholeTake): Inset | undefined {
  const bodies = BODIES[check]?.(take) ?? [];
  return bodies.length > 0 ? insetOf(bodies) : undefined;
}
