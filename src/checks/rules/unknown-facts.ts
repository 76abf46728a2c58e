import type { PlacedHeader, PlacedModule } from '../../geometry/place.ts';
import { remember } from '../../layout/remember.ts';
import type { DerivedTake } from '../../wiring/derived-take.ts';
import type { About, Check, Examples, Found } from '../check.ts';
import { eachPart } from '../each-part.ts';
import { example, kind } from '../example.ts';
import { count, inDocumentOrder, lineName, list, moduleSubject } from '../words.ts';

/** What is not known of a module and would matter here. */
function missingFacts({ facts, headers }: PlacedModule, { wiring }: DerivedTake): string[] {
  const { unknownDraws, kind: own } = facts;
  const isSeated = (header: PlacedHeader): boolean =>
    wiring.seatedOn.get(header)?.some((joint) => joint.conducts) === true;
  const pin1 = headers.some((header) => header.pin1 === undefined && isSeated(header));
  return [
    ...(unknownDraws.length ? [`current on ${list(unknownDraws.map(lineName))}`] : []),
    ...(own.depthMm === undefined ? ['depth'] : []),
    ...(pin1 ? ['pin 1'] : []),
  ];
}

const incompleteOf = eachPart((part) =>
  part.places.modules.flatMap((module) => {
    const missing = missingFacts(module, part);
    return missing.length > 0
      ? [{ id: module.id, index: module.index, words: `${module.name} (${list(missing)})` }]
      : [];
  }),
);

const tell = remember((incomplete: ReturnType<typeof incompleteOf>): Found => {
  const modules = inDocumentOrder(incomplete);
  return {
    subjects: modules.map(moduleSubject),
    headline: `Facts are missing on ${count(modules.length, 'module')}`,
    detail: `Not known: ${list(modules.map(({ words }) => words))}.`,
    remedy: 'Measure, and enter them.',
    measure: { modules: modules.length },
  };
});

export const about: About = {
  title: 'Facts that are missing',
  why: 'What is not known is not checked: an unknown depth, draw or pin 1 passes every rule.',
  source: 'common practice, no source',
};

export const unknownFacts: Check = {
  id: 'unknown-facts',
  level: 'reminder',
  whole: true,
  *find(take) {
    const incomplete = incompleteOf(take);
    if (incomplete.length > 0) yield tell(incomplete);
  },
};

const known = (draw: number | null) =>
  example({ kinds: [kind('some', { draws: { '+12': draw } })], modules: [['a', 'some', 0]] });

export const examples: Examples = { good: () => known(0), bad: () => known(null) };
