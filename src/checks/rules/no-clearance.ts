import { exceeds } from '../../geometry/exceeds.ts';
import type { DerivedTake } from '../../wiring/derived-take.ts';
import { archOf, isGap } from '../bend.ts';
import type { About, Check, Examples } from '../check.ts';
import { along, example, kind, ROW, ribbon, shoreHeader } from '../example.ts';
import { betweenSpot, mm, namesOf, neighbourPart, neighbourSubjects, targetName } from '../words.ts';

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
      if (!isGap(pair)) continue;
      const { zMm: a } = pair.a.on.header;
      const { zMm: b } = pair.b.on.header;
      if (a === undefined || b === undefined) continue;
      const archMm = archOf(pair, take)?.heightMm ?? 0;
      const needed = Math.max(a, b) + archMm + take.limits.ribbonMm;
      const { depthMm } = pair.a.on.header.row.row;
      if (!exceeds(needed, depthMm)) continue;
      yield {
        subjects: neighbourSubjects(pair),
        part: neighbourPart(pair),
        headline: `${namesOf(pair.ribbons)} needs ${mm(needed)} behind the panel between ${targetName(pair.a.on)} and ${targetName(pair.b.on)}`,
        detail: `It lies ${mm(Math.max(a, b))} deep${archMm > 0 ? ` and arches ${mm(archMm)} further` : ''}; the row is ${mm(depthMm)} deep.`,
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
