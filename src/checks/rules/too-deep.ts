import { exceeds } from '../../geometry/exceeds.ts';
import type { DerivedTake } from '../../wiring/derived-take.ts';
import type { About, Check, Examples } from '../check.ts';
import { reachOf, reachWords, totalMm } from '../depth.ts';
import { along, example, kind, ribbon, shoreHeader } from '../example.ts';
import { moduleSpot } from '../spots.ts';
import { mm, moduleSubject } from '../words.ts';

export const about: About = {
  title: 'Module deeper than its row',
  why: 'It stands on the floor of the case before its panel meets the rails; forced, board or header bends.',
  source: 'common practice, no source',
};

export const tooDeep: Check = {
  id: 'too-deep',
  level: 'fault',
  *find(take: DerivedTake) {
    for (const module of take.places.modules) {
      const reach = reachOf(module, take);
      const { depthMm } = module.row.row;
      if (!reach || !exceeds(totalMm(reach), depthMm)) continue;
      const over = totalMm(reach) - depthMm;
      yield {
        subjects: [moduleSubject(module)],
        headline: `${module.name} is ${mm(over)} too deep for its row`,
        detail: `It needs ${reachWords(reach, mm)}; the row is ${mm(depthMm)} deep.`,
        remedy: 'Move it to a deeper row.',
        measure: { depthMm: totalMm(reach), allowedMm: depthMm },
        spots: [moduleSpot(module)],
      };
    }
  },
};

const deep = (depthMm: number) =>
  example({
    kinds: [kind('deep', { depthMm, depthIs: 'without-plugs', headers: [shoreHeader()] })],
    modules: [
      ['a', 'deep', 5],
      ['b', 'voice', 0],
    ],
    ribbons: [ribbon('r', 'stiff', along('a', 'b'))],
  });

export const examples: Examples = { good: () => deep(45), bad: () => deep(46) };
