import { exceeds } from '../../geometry/exceeds.ts';
import type { DerivedTake } from '../../wiring/derived-take.ts';
import { archOf, depthNeededMm } from '../../wiring/gap.ts';
import type { About, Check, Examples } from '../check.ts';
import { along, example, kind, ROW, ribbon, shoreHeader } from '../example.ts';
import { betweenSpot } from '../spots.ts';
import { mm, namesOf, neighbourPart, neighbourSubjects, targetName } from '../words.ts';

export const about: About = {
  title: 'Ribbon pressed against the case',
  why: 'An arch that does not fit under the lid or above the floor is creased when the module is screwed in.',
  source: 'common practice, no source; arch: planar elastica with clamped ends',
};

export const noClearance: Check = {
  id: 'no-clearance',
  level: 'fault',
  *find(take: DerivedTake) {
    for (const pair of take.neighbours) {
      const needed = depthNeededMm(pair, take);
      const { depthMm } = pair.a.on.header.row.row;
      if (needed === undefined || !exceeds(needed, depthMm)) continue;
      const archMm = archOf(pair, take)?.heightMm ?? 0;
      yield {
        subjects: neighbourSubjects(pair),
        part: neighbourPart(pair),
        headline: `${namesOf(pair.ribbons)} needs ${mm(needed)} behind the panel between ${targetName(pair.a.on)} and ${targetName(pair.b.on)}`,
        detail: `It lies ${mm(needed - archMm - take.limits.ribbonMm)} deep${archMm > 0 ? ` and arches ${mm(archMm)} further` : ''}; the row is ${mm(depthMm)} deep.`,
        remedy: archMm > 0 ? 'Use a shorter ribbon, or a deeper row.' : 'Use a deeper row.',
        measure: { neededMm: needed, allowedMm: depthMm, archMm },
        spots: [betweenSpot(pair)],
      };
    }
  },
};

const lying = (zMm: number) =>
  example({
    kinds: [kind('deep', { depthMm: 50, headers: [shoreHeader({ zMm })] })],
    rows: [{ ...ROW, depthMm: 60 }],
    modules: [
      ['a', 'deep', 5],
      ['b', 'voice', 0],
    ],
    ribbons: [ribbon('r', 'stiff', along('a', 'b'))],
  });

export const examples: Examples = { good: () => lying(59), bad: () => lying(59.1) };
