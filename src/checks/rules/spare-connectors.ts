import { remember } from '../../layout/remember.ts';
import { connectorsInUse } from '../../wiring/laid-ribbon.ts';
import type { About, Check, Examples, Found } from '../check.ts';
import { eachPart } from '../each-part.ts';
import { along, example, ribbon } from '../example.ts';
import { count, inDocumentOrder, namesOf, ribbonSubject } from '../words.ts';

/** Seated ribbons with connectors left free, and how many. */
const spareOf = eachPart(({ wiring }) =>
  wiring.ribbons.flatMap((laid) => {
    const inUse = connectorsInUse(laid).length;
    const free = inUse > 0 ? laid.facts.connectors.length - inUse : 0;
    return free > 0 ? [{ id: laid.id, index: laid.index, name: laid.name, free }] : [];
  }),
);

const tell = remember((spare: ReturnType<typeof spareOf>): Found => {
  const ribbons = inDocumentOrder(spare);
  const free = spare.reduce((sum, each) => sum + each.free, 0);
  return {
    subjects: ribbons.map(ribbonSubject),
    headline: `${count(free, 'connector')} left free`,
    detail: `On ${namesOf(ribbons)}. That is allowed.`,
    remedy: 'See that they touch nothing.',
    measure: { free },
  };
});

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
    if (spare.length > 0) yield tell(spare);
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
