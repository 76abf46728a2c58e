import type { PlacedHeader, PlacedModule } from '../geometry/place.ts';
import { resolve } from '../layout/kit-index.ts';
import type { DerivedTake } from '../wiring/derived-take.ts';
import type { Joint, LaidRibbon } from '../wiring/laid-ribbon.ts';
import type { Neighbours } from '../wiring/neighbours.ts';
import type { Note, Spot, Subject } from './check.ts';

export const headerSpot = ({ row, xMm, yMm }: PlacedHeader): Spot => ({ row: row.row.id, xMm, yMm });

export const moduleSpot = ({ row, leftMm, rightMm }: PlacedModule): Spot => ({
  row: row.row.id,
  xMm: (leftMm + rightMm) / 2,
  yMm: SPOT_Y_MM,
});

/** Height at which a mark on a whole module stands. */
const SPOT_Y_MM = 64;

/** Where a ribbon can be pointed at: its first seat on a header. */
export function ribbonSpots({ uses }: LaidRibbon): Spot[] {
  for (const joints of uses) {
    for (const { on } of joints) if (on.type === 'header') return [headerSpot(on.header)];
  }
  return [];
}

export const jointSpots = ({ ribbon, on }: Joint): Spot[] =>
  on.type === 'header'
    ? [headerSpot(on.header)]
    : ribbonSpots(on.ribbon).concat(ribbonSpots(ribbon)).slice(0, 1);

/** The middle between two neighbours of one row. */
export const betweenSpot = ({ a, b }: Neighbours): Spot => ({
  row: a.on.header.row.row.id,
  xMm: (a.on.header.xMm + b.on.header.xMm) / 2,
  yMm: (a.on.header.yMm + b.on.header.yMm) / 2,
});

function subjectSpots({ type, id }: Subject, { places, wiring }: DerivedTake): Spot[] {
  if (type === 'module') return [moduleSpot(resolve(places.moduleById, id))];
  return type === 'ribbon' ? ribbonSpots(resolve(wiring.ribbonById, id)) : [];
}

/** Where a note stands on the drawing of the take that it was found in. */
export const spotsOf = ({ spots, subjects }: Note, take: DerivedTake): readonly Spot[] =>
  spots ?? subjects.flatMap((subject) => subjectSpots(subject, take));
