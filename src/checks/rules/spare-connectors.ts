import { connectorsInUse } from '../../wiring/laid-ribbon.ts';
import type { About, Check, Examples } from '../check.ts';
import { eachPart } from '../each-part.ts';
import { along, example, ribbon } from '../example.ts';
import { count, inDocumentOrder, namesOf, ribbonSpots, ribbonSubjects } from '../words.ts';

/** Seated ribbons with connectors left free, and how many. */
const spareOf = eachPart(({ wiring }) =>
  wiring.ribbons.flatMap((ribbon) => {
    const inUse = connectorsInUse(ribbon).length;
    const free = inUse > 0 ? ribbon.facts.connectors.length - inUse : 0;
    return free > 0 ? [{ ribbon, free, spots: ribbonSpots(ribbon) }] : [];
  }),
);

export const about: About = {
  title: 'Connectors left free',
  why: 'Allowed, and handy for the next module; a free socket may carry a voltage and must not touch anything.',
  source: 'common practice, no source',
};

export const spareConnectors: Check = {
  id: 'spare-connectors',
  level: 'reminder',
  whole: true,
  *find(take) {
    const spare = spareOf(take);
    if (spare.length === 0) return;
    const ribbons = inDocumentOrder(spare.map(({ ribbon }) => ribbon));
    const free = spare.reduce((sum, each) => sum + each.free, 0);
    yield {
      subjects: ribbonSubjects(ribbons),
      headline: `${count(free, 'connector')} left free`,
      detail: `On ${namesOf(ribbons)}. That is allowed.`,
      remedy: 'See that they touch nothing.',
      measure: { free },
      spots: spare.flatMap(({ spots }) => spots),
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
