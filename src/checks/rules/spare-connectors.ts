import type { DerivedTake } from '../../wiring/derive.ts';
import { connectorsInUse } from '../../wiring/laid-ribbon.ts';
import type { About, Check, Examples } from '../check.ts';
import { along, example, ribbon } from '../example.ts';
import { count, namesOf, ribbonSpots, ribbonSubjects } from '../words.ts';

export const about: About = {
  title: 'Connectors left free',
  why: 'Allowed, and handy for the next module; a free socket may carry a voltage and must not touch anything.',
  source: 'common practice, no source',
};

export const spareConnectors: Check = {
  id: 'spare-connectors',
  level: 'reminder',
  *find({ wiring }: DerivedTake) {
    let free = 0;
    const ribbons = wiring.ribbons.filter((laid) => {
      const inUse = connectorsInUse(laid).length;
      const spare = inUse > 0 ? laid.facts.connectors.length - inUse : 0;
      free += spare;
      return spare > 0;
    });
    if (ribbons.length === 0) return;
    yield {
      subjects: ribbonSubjects(ribbons),
      headline: `${count(free, 'connector')} left free`,
      detail: `On ${namesOf(ribbons)}. That is allowed.`,
      remedy: 'See that they touch nothing.',
      measure: { free },
      spots: ribbons.flatMap(ribbonSpots),
    };
  },
};

const seated = (kindId: string) =>
  example({
    modules: [
      ['a', 'voice', 5],
      ['b', 'voice', 0],
    ],
    ribbons: [ribbon('r', kindId, along('a', 'b'))],
  });

export const examples: Examples = { good: () => seated('stiff'), bad: () => seated('stiff3') };
