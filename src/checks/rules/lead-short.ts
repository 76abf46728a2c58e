import type { DerivedTake } from '../../wiring/derived-take.ts';
import { missingMm, neededMm } from '../../wiring/gap.ts';
import type { About, Check, Examples } from '../check.ts';
import { example, onBoard, onModule, ribbon } from '../example.ts';
import { headerSpot } from '../spots.ts';
import { mm, namesOf, neighbourPart, neighbourSubjects, targetName } from '../words.ts';

export const about: About = {
  title: 'Lead too short for its way',
  why: 'A lead under tension unseats itself, and the module cannot be tilted out to unplug it.',
  source: 'common practice, no source',
};

export const leadShort: Check = {
  id: 'lead-short',
  level: 'fault',
  *find(take: DerivedTake) {
    const { limits } = take;
    for (const pair of take.neighbours) {
      if (pair.lay !== 'loose') continue;
      if (missingMm(pair, take) === undefined) continue;
      const needed = neededMm(pair, limits);
      yield {
        subjects: neighbourSubjects(pair),
        part: neighbourPart(pair),
        headline: `${namesOf(pair.ribbons)} is ${mm(needed - pair.lengthMm)} too short from ${targetName(pair.a.on)} to ${targetName(pair.b.on)}`,
        detail: `The way is ${mm(needed - limits.leadAllowanceMm)} and ${mm(limits.leadAllowanceMm)} to spare are wanted; there are ${mm(pair.lengthMm)}.`,
        remedy: 'Use a longer lead, or a nearer header.',
        measure: { lengthMm: pair.lengthMm, neededMm: needed },
        spots: [pair.a, pair.b]
          .filter(({ on }) => on.header.owner.type === 'module')
          .map(({ on }) => headerSpot(on.header))
          .slice(0, 1),
      };
    }
  },
};

/** Board at 300 mm, header at 20 mm in the module, 30 mm higher: 230 mm of way leave 40 mm of 300 to spare. */
const from = (atHp: number) =>
  example({
    modules: [['a', 'plain', atHp]],
    ribbons: [ribbon('r', 'lead', [onBoard(0, 'p1'), onModule(1, 'a', 'power')])],
  });

export const examples: Examples = { good: () => from(10), bad: () => from(9) };
