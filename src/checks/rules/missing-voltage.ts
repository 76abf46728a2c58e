import type { DerivedTake } from '../../wiring/derived-take.ts';
import type { About, Check, Examples } from '../check.ts';
import { example, kind, onBoard, onModule, powerHeader, ribbon, SUPPLY } from '../example.ts';
import { lineName, list, moduleSpot, moduleSubject } from '../words.ts';

export const about: About = {
  title: 'A voltage that does not arrive',
  why: 'A module on one of its two voltages does not work, and may be harmed.',
  source: 'common practice, no source',
};

export const missingVoltage: Check = {
  id: 'missing-voltage',
  level: 'fault',
  *find({ places, supplyNet }: DerivedTake) {
    for (const module of places.modules) {
      const isFed = supplyNet.islandOf(module).feeds.length > 0;
      if (!isFed || module.facts.needs.every((line) => supplyNet.reaches(module, line))) continue;
      const missing = module.facts.needs.filter((line) => !supplyNet.reaches(module, line));
      yield {
        subjects: [moduleSubject(module)],
        headline: `${list(missing.map(lineName))} ${missing.length === 1 ? 'does' : 'do'} not reach ${module.name}`,
        detail: 'Its group has a power lead, but not one that brings this.',
        remedy: 'Use a lead with all its conductors, or a supply that gives this voltage.',
        measure: { missing: missing.length },
        spots: [moduleSpot(module)],
      };
    }
  },
};

const given = (ratings: Record<string, number>) =>
  example({
    kinds: [kind('both', { draws: { '+12': 10, '-12': 10 }, headers: [powerHeader()] })],
    supplies: [{ ...SUPPLY, ratings }],
    modules: [['a', 'both', 40]],
    ribbons: [ribbon('r', 'lead', [onBoard(0, 'p1'), onModule(1, 'a', 'power')])],
  });

export const examples: Examples = {
  good: () => given({ '+12': 100, '-12': 100 }),
  bad: () => given({ '+12': 100 }),
};
