import { exceeds } from '../../geometry/exceeds.ts';
import type { DerivedTake } from '../../wiring/derived-take.ts';
import { inOneRow, isOutOfLine, type Neighbours, skewMm } from '../../wiring/neighbours.ts';
import type { About, Check, Examples, Found } from '../check.ts';
import { along, example, kind, ribbon, shoreHeader } from '../example.ts';
import { betweenSpot, jointSpots } from '../spots.ts';
import { straysOf } from '../stray.ts';
import {
  connectorName,
  mm,
  namesOf,
  neighbourPart,
  neighbourSubjects,
  seatPart,
  seatSubjects,
  targetName,
} from '../words.ts';

function* stiffOnes(take: DerivedTake): Generator<Found> {
  const tol = take.limits.seatToleranceMm;
  for (const stray of straysOf(take)) {
    const { seat, dxMm, dyMm, otherRow } = stray;
    const offPitch = exceeds(Math.abs(dxMm), tol) && !take.crossed.has(seat.ribbon);
    const alongRail = stray.displaced !== undefined && !take.crossed.has(seat.ribbon);
    if (!otherRow && (alongRail || offPitch || !exceeds(Math.abs(dyMm), tol))) continue;
    yield {
      subjects: seatSubjects(seat),
      part: seatPart(seat),
      headline: otherRow
        ? `${connectorName(seat)} lies in another row than ${targetName(seat.on)}`
        : `${connectorName(seat)} misses ${targetName(seat.on)} by ${mm(Math.abs(dyMm))} in height`,
      detail: otherRow
        ? 'A flat ribbon stays in its row.'
        : `The header lies ${mm(Math.abs(dyMm))} too ${dyMm > 0 ? 'high' : 'low'} for the straight ribbon.`,
      remedy: otherRow ? 'Move the module to the row, or use a loose ribbon.' : 'Use a loose ribbon there.',
      measure: otherRow ? {} : { dyMm },
      spots: jointSpots(seat),
    };
  }
}

function bendingFound(pair: Neighbours, allowedMm: number): Found {
  const otherRow = !inOneRow(pair);
  const skew = skewMm(pair);
  const ends = `${targetName(pair.a.on)} and ${targetName(pair.b.on)}`;
  return {
    subjects: neighbourSubjects(pair),
    part: neighbourPart(pair),
    headline: otherRow
      ? `${namesOf(pair.ribbons)} would have to reach into another row`
      : `${namesOf(pair.ribbons)} would run ${mm(skew)} askew`,
    detail: otherRow
      ? `${ends} stand in two rows; a flat ribbon stays in one.`
      : `${ends} lie at heights ${mm(skew)} apart; a bending ribbon takes ${mm(allowedMm)}.`,
    remedy: 'Use a loose ribbon there.',
    measure: otherRow ? {} : { skewMm: skew },
    spots: otherRow ? jointSpots(pair.b) : [betweenSpot(pair)],
  };
}

export const about: About = {
  title: 'Headers that a flat ribbon cannot join in line',
  why: 'A flat ribbon runs straight along the row at one height; bent in its own plane it creases and pulls connectors off.',
  source: 'common practice, no source; creasing after NASA-STD-8739.4 [7.3.21]',
};

export const outOfLine: Check = {
  id: 'out-of-line',
  level: 'fault',
  *find(take: DerivedTake) {
    yield* stiffOnes(take);
    for (const pair of take.neighbours) {
      if (pair.lay === 'bending' && isOutOfLine(pair, take.limits))
        yield bendingFound(pair, take.limits.skewMm);
    }
  },
};

const high = (yMm: number) =>
  example({
    kinds: [kind('high', { headers: [shoreHeader({ yMm })] })],
    modules: [
      ['a', 'voice', 7],
      ['b', 'high', 0],
    ],
    ribbons: [ribbon('r', 'bending', along('a', 'b'))],
  });

export const examples: Examples = { good: () => high(41), bad: () => high(41.1) };
