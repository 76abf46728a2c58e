import type { DerivedTake } from '../../wiring/derived-take.ts';
import { isCrowded } from '../../wiring/gap.ts';
import { distanceMm } from '../../wiring/neighbours.ts';
import type { About, Check, Examples } from '../check.ts';
import { along, example, kind, ribbon, ribbonKind, shoreHeader } from '../example.ts';
import { betweenSpot } from '../spots.ts';
import { mm, namesOf, neighbourPart, neighbourSubjects, targetName } from '../words.ts';

export const about: About = {
  title: 'Connectors without room side by side',
  why: 'Two connector bodies cannot stand closer than they are wide.',
  source: 'common practice, no source',
};

export const crowded: Check = {
  id: 'crowded',
  level: 'fault',
  *find(take: DerivedTake) {
    for (const pair of take.neighbours) {
      if (!isCrowded(pair, take)) continue;
      const distance = distanceMm(pair);
      yield {
        subjects: neighbourSubjects(pair),
        part: neighbourPart(pair),
        headline: `${namesOf(pair.ribbons)} has no room between ${targetName(pair.a.on)} and ${targetName(pair.b.on)}`,
        detail: `The headers lie ${mm(distance)} apart; a connector is ${mm(take.limits.connectorBodyMm)} wide.`,
        remedy: 'Bring the modules further apart.',
        measure: { distanceMm: distance },
        spots: [betweenSpot(pair)],
      };
    }
  },
};

const close = (xMm: number) =>
  example({
    kinds: [kind('slim', { widthHp: 1, headers: [shoreHeader({ xMm })] })],
    ribbonKinds: [ribbonKind('close', [0, 6.5])],
    modules: [
      ['a', 'slim', 1],
      ['b', 'voice', 2],
    ],
    ribbons: [ribbon('r', 'close', along('b', 'a'))],
  });

/** The voice's header lies at 22.86 mm: 6.16 mm and 5.96 mm from the other. */
export const examples: Examples = { good: () => close(11.62), bad: () => close(11.82) };
