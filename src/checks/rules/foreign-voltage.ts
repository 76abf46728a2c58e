import type { DerivedTake } from '../../wiring/derived-take.ts';
import type { About, Check, Examples } from '../check.ts';
import { example, kind, powerHeader } from '../example.ts';
import { moduleSpot } from '../spots.ts';
import { lineName, list, moduleSubject } from '../words.ts';

export const about: About = {
  title: 'Draw on a voltage that no header brings',
  why: 'Either the header or the draw was entered wrongly, or the module needs a lead that is not drawn.',
  source: 'common practice, no source',
};

export const foreignVoltage: Check = {
  id: 'foreign-voltage',
  level: 'fault',
  *find({ places }: DerivedTake) {
    for (const module of places.modules) {
      const { foreign } = module.facts;
      if (foreign.length === 0) continue;
      const voltages = list(foreign.map(lineName));
      yield {
        subjects: [moduleSubject(module)],
        headline: `${module.name} draws ${voltages}, and no header of it carries that`,
        detail: `Its kind, ${module.facts.kind.name}, has ${module.headers.length === 0 ? 'no headers' : 'headers without this voltage'}.`,
        remedy: 'Correct the draws or the headers of the kind.',
        spots: [moduleSpot(module)],
      };
    }
  },
};

const drawing = (voltage: string) =>
  example({
    kinds: [kind('drawing', { draws: { [voltage]: 10 }, headers: [powerHeader()] })],
    modules: [['a', 'drawing', 0]],
  });

export const examples: Examples = { good: () => drawing('-12'), bad: () => drawing('+5') };
