import { resolve } from '../layout/kit-index.ts';
import type { DerivedTake } from '../wiring/derived-take.ts';
import type { Note, Spot, Subject } from './check.ts';
import { moduleSpot, ribbonSpots } from './words.ts';

function subjectSpots({ type, id }: Subject, { places, wiring }: DerivedTake): Spot[] {
  if (type === 'module') return [moduleSpot(resolve(places.moduleById, id))];
  return type === 'ribbon' ? ribbonSpots(resolve(wiring.ribbonById, id)) : [];
}

/** Where a note stands on the drawing of the take that it was found in. */
export const spotsOf = ({ spots, subjects }: Note, take: DerivedTake): readonly Spot[] =>
  spots ?? subjects.flatMap((subject) => subjectSpots(subject, take));
