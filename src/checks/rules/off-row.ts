import { exceeds } from '../../geometry/exceeds.ts';
import type { DerivedTake } from '../../wiring/derived-take.ts';
import type { About, Check, Examples } from '../check.ts';
import { example } from '../example.ts';
import { moduleSpot } from '../spots.ts';
import { hp, moduleSubject } from '../words.ts';

export const about: About = {
  title: 'Module beyond the end of its row',
  why: 'Beyond its ends a row has no rail to screw a panel to.',
  source: 'common practice, no source',
};

export const offRow: Check = {
  id: 'off-row',
  level: 'fault',
  *find({ places }: DerivedTake) {
    for (const module of places.modules) {
      const { atHp } = module.module;
      const { widthHp } = module.facts.kind;
      const row = module.row.row;
      const before = -atHp;
      const beyond = atHp + widthHp - row.widthHp;
      const over = Math.max(before, beyond);
      if (!exceeds(over, 0)) continue;
      const end = row.widthHp - widthHp;
      const home = before > 0 ? 0 : end;
      yield {
        subjects: [moduleSubject(module)],
        headline: `${module.name} stands ${hp(over)} beyond the ${before > 0 ? 'left' : 'right'} end of its row`,
        detail: `The row is ${hp(row.widthHp)} wide (left and right seen from the front).`,
        remedy: end >= 0 ? `Move it to ${hp(home)}.` : 'Choose a wider row.',
        measure: { beyondHp: over },
        spots: [moduleSpot(module)],
      };
    }
  },
};

export const examples: Examples = {
  good: () => example({ modules: [['a', 'voice', 79]] }),
  bad: () => example({ modules: [['a', 'voice', 79.5]] }),
};
