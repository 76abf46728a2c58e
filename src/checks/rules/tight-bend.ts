import type { DerivedTake } from '../../wiring/derived-take.ts';
import { archOf, isTight } from '../../wiring/gap.ts';
import { distanceMm } from '../../wiring/neighbours.ts';
import type { About, Check, Examples } from '../check.ts';
import { along, example, kind, ribbon, shoreHeader } from '../example.ts';
import { betweenSpot } from '../spots.ts';
import { mm, namesOf, neighbourPart, neighbourSubjects, targetName } from '../words.ts';

export const about: About = {
  title: 'Ribbon bent too tightly',
  why: 'Ribbon left over stands up in an arch; bent tighter than three wire diameters its conductors break in time.',
  source: 'NASA-STD-8739.4 [7.3.21], short-term; arch: planar elastica with clamped ends',
};

export const tightBend: Check = {
  id: 'tight-bend',
  level: 'fault',
  *find(take: DerivedTake) {
    const { bendRadiusMm } = take.limits;
    for (const pair of take.neighbours) {
      const arch = archOf(pair, take);
      if (!arch || !isTight(arch, take.limits)) continue;
      const touching = arch.kind === 'legs-touch';
      const ends = `${targetName(pair.a.on)} and ${targetName(pair.b.on)}`;
      yield {
        subjects: neighbourSubjects(pair),
        part: neighbourPart(pair),
        headline: touching
          ? `${namesOf(pair.ribbons)} folds onto itself between ${ends}`
          : `${namesOf(pair.ribbons)} bends to ${mm(arch.radiusMm)} between ${ends}`,
        detail: `${mm(pair.lengthMm)} of ribbon stand over ${mm(distanceMm(pair))}; ${touching ? 'the legs of the arch touch' : `at least ${mm(bendRadiusMm)} are wanted`}.`,
        remedy: 'Bring the modules further apart, or use a shorter ribbon.',
        measure: {
          lengthMm: pair.lengthMm,
          distanceMm: distanceMm(pair),
          ...(arch.kind === 'arch' && { radiusMm: arch.radiusMm }),
        },
        spots: [betweenSpot(pair)],
      };
    }
  },
};

const slack = (atHp: number) =>
  example({
    kinds: [kind('slim', { widthHp: 3, headers: [shoreHeader({ xMm: 7.62 })] })],
    modules: [
      ['a', 'slim', atHp],
      ['b', 'slim', 0],
    ],
    ribbons: [ribbon('r', 'bending', along('a', 'b'))],
  });

/** 34 mm of free ribbon keep a radius of 3 mm (r/L = 0.0882) over 13.24 mm or more: 3.8 HP, and not 3.78 HP. */
export const examples: Examples = { good: () => slack(3.8), bad: () => slack(3.78) };
