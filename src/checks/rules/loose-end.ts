import type { DerivedTake } from '../../wiring/derived-take.ts';
import { connectorsInUse } from '../../wiring/laid-ribbon.ts';
import type { About, Check, Examples } from '../check.ts';
import { along, example, ribbon } from '../example.ts';
import { ribbonSpots } from '../spots.ts';
import { ribbonSubject } from '../words.ts';

export const about: About = {
  title: 'Ribbon with one connector in use',
  why: 'It joins nothing, and its free connectors, which may carry a voltage, hang among the boards.',
  source: 'common practice, no source',
};

export const looseEnd: Check = {
  id: 'loose-end',
  level: 'fault',
  *find({ wiring }: DerivedTake) {
    for (const ribbonOf of wiring.ribbons) {
      const inUse = connectorsInUse(ribbonOf);
      const [only] = inUse;
      if (inUse.length !== 1 || only === undefined) continue;
      yield {
        subjects: [ribbonSubject(ribbonOf)],
        headline: `${ribbonOf.name} ends in the air`,
        detail: `Only connector ${only + 1} of ${ribbonOf.facts.connectors.length} is in use.`,
        remedy: 'Seat a second connector, or take the ribbon out.',
        measure: { inUse: 1 },
        spots: ribbonSpots(ribbonOf),
      };
    }
  },
};

const seated = (...modules: string[]) =>
  example({
    modules: [
      ['a', 'voice', 5],
      ['b', 'voice', 0],
    ],
    ribbons: [ribbon('r', 'stiff', along(...modules))],
  });

export const examples: Examples = { good: () => seated('a', 'b'), bad: () => seated('a') };
