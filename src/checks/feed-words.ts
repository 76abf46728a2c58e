import type { PlacedModule } from '../geometry/place.ts';
import { type HeaderJoint, suppliesOf } from '../wiring/harness.ts';
import type { Island } from '../wiring/supply-net.ts';
import type { Spot } from './check.ts';
import { headerSpot } from './spots.ts';

/** Supplies, by index in the take, that feed an island. */
export const suppliesInto = ({ feeds }: Island): Set<number> =>
  new Set(feeds.flatMap(({ harness }) => [...suppliesOf(harness)]));

const ownersOf = (seats: readonly HeaderJoint[]): PlacedModule[] => [
  ...new Set(seats.map(({ on }) => on.header.owner as PlacedModule)),
];

/** The modules that the power leads of an island are seated on. */
export const fedModules = ({ feeds }: Island): PlacedModule[] => ownersOf(feeds.map(({ seat }) => seat));

export const feedSpots = ({ feeds }: Island): Spot[] => feeds.map(({ seat }) => headerSpot(seat.on.header));
