import type { DerivedTake } from '../../wiring/derived-take.ts';
import { missingMm } from '../../wiring/gap.ts';
import { distanceMm } from '../../wiring/neighbours.ts';
import type { About, Check, Examples } from '../check.ts';
import { along, example, ribbon } from '../example.ts';
import { betweenSpot } from '../spots.ts';
import { mm, namesOf, neighbourPart, neighbourSubjects, targetName } from '../words.ts';

export const about: About = {
  title: 'Ribbon too short between two headers',
  why: 'A ribbon under tension lifts its connectors at one end, at the latest in transport.',
  source: 'common practice, no source',
};

export const shortRibbon: Check = {
  id: 'short-ribbon',
  level: 'fault',
  *find(take: DerivedTake) {
    for (const pair of take.neighbours) {
      const missing = pair.lay === 'bending' ? missingMm(pair, take) : undefined;
      if (missing === undefined) continue;
      const distance = distanceMm(pair);
      yield {
        subjects: neighbourSubjects(pair),
        part: neighbourPart(pair),
        headline: `${namesOf(pair.ribbons)} is ${mm(missing)} too short between ${targetName(pair.a.on)} and ${targetName(pair.b.on)}`,
        detail: `The headers lie ${mm(distance)} apart; there are ${mm(pair.lengthMm)} of ribbon between the connectors.`,
        remedy: 'Bring the modules closer together, or use a longer ribbon.',
        measure: { lengthMm: pair.lengthMm, distanceMm: distance },
        spots: [betweenSpot(pair)],
      };
    }
  },
};

const apart = (atHp: number) =>
  example({
    modules: [
      ['a', 'voice', atHp],
      ['b', 'voice', 0],
    ],
    ribbons: [ribbon('r', 'bending', along('a', 'b'))],
  });

/** 40 mm of ribbon and 1 mm of play reach 8.07 HP (40.996 mm), not 8.08 HP (41.046 mm). */
export const examples: Examples = { good: () => apart(8.07), bad: () => apart(8.08) };
