import { exceeds } from '../../geometry/exceeds.ts';
import type { DerivedTake } from '../../wiring/derived-take.ts';
import type { About, Check, Examples } from '../check.ts';
import { example, kind } from '../example.ts';
import { moduleSpot } from '../spots.ts';
import { figure, moduleSubject } from '../words.ts';

export const about: About = {
  title: 'Module of another height than its row',
  why: 'The rails of a row stand at one distance; a panel of another height has no holes over them.',
  source: 'IEC 60297-3-101, heights in U of 44.45 mm (as quoted in secondary texts)',
};

export const wrongHeight: Check = {
  id: 'wrong-height',
  level: 'fault',
  *find({ places }: DerivedTake) {
    for (const module of places.modules) {
      const mine = module.facts.heightU;
      const { heightU } = module.row.row;
      if (!exceeds(Math.abs(mine - heightU), 0)) continue;
      yield {
        subjects: [moduleSubject(module)],
        headline: `${module.name} is ${figure(mine)} U high in a row of ${figure(heightU)} U`,
        detail: 'Its screws would not meet the rails.',
        remedy: `Move it to a row of ${figure(mine)} U.`,
        measure: { heightU: mine, rowU: heightU },
        spots: [moduleSpot(module)],
      };
    }
  },
};

export const examples: Examples = {
  good: () => example({ kinds: [kind('tile', { heightU: 3 })], modules: [['a', 'tile', 0]] }),
  bad: () => example({ kinds: [kind('tile', { heightU: 1 })], modules: [['a', 'tile', 0]] }),
};
