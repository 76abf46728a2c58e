import type { PlacedHeader, PlacedModule } from '../../geometry/place.ts';
import type { DerivedTake } from '../../wiring/derived-take.ts';
import type { About, Check, Examples } from '../check.ts';
import { eachPart } from '../each-part.ts';
import { example, kind } from '../example.ts';
import { count, lineName, list, moduleSpot, moduleSubject } from '../words.ts';

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
  part.places.modules
    .map((module) => ({ module, missing: missingFacts(module, part) }))
    .filter(({ missing }) => missing.length > 0),
);

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
    const incomplete = incompleteOf(take).sort((a, b) => a.module.index - b.module.index);
    if (incomplete.length === 0) return;
    const byModule = incomplete.map(({ module, missing }) => `${module.name} (${list(missing)})`);
    yield {
      subjects: incomplete.map(({ module }) => moduleSubject(module)),
      headline: `Facts are missing on ${count(incomplete.length, 'module')}`,
      detail: `Not known: ${list(byModule)}.`,
      remedy: 'Measure, and enter them.',
      measure: { modules: incomplete.length },
      spots: incomplete.map(({ module }) => moduleSpot(module)),
    };
  },
};

const known = (draw: number | null) =>
  example({ kinds: [kind('some', { draws: { '+12': draw } })], modules: [['a', 'some', 0]] });

export const examples: Examples = { good: () => known(0), bad: () => known(null) };
