import type { DerivedTake } from '../../wiring/derived-take.ts';
import type { About, Check, Examples } from '../check.ts';
import { along, example, ribbon } from '../example.ts';
import { jointSpots } from '../spots.ts';
import { connectorName, seatPart, seatSubjects, targetName } from '../words.ts';

export const about: About = {
  title: 'Connector that opens to the wrong side',
  why: 'Headers on modules point to the rear, so a socket must open towards the panel; each half-twist turns it over.',
  source: 'common practice, no source',
};

export const looksAway: Check = {
  id: 'looks-away',
  level: 'fault',
  *find({ wiring }: DerivedTake) {
    for (const joint of wiring.joints) {
      if (!joint.looksAway) continue;
      const atJoint = joint.on.type === 'connector';
      yield {
        subjects: seatSubjects(joint),
        part: seatPart(joint),
        headline: atJoint
          ? `${connectorName(joint)} and ${targetName(joint.on)} open to the same side`
          : `${connectorName(joint)} opens away from ${targetName(joint.on)}`,
        detail: atJoint
          ? 'Plug and socket must face one another.'
          : 'As the ribbon lies, its socket opens to the rear and the header points there too.',
        remedy: 'Add or remove a half-twist before it, or press the connector on the other face.',
        spots: jointSpots(joint),
      };
    }
  },
};

const twisted = (...twists: number[]) =>
  example({
    modules: [
      ['a', 'voice', 10],
      ['b', 'voice', 0],
    ],
    ribbons: [ribbon('r', 'bending', along('a', 'b'), { twists })],
  });

export const examples: Examples = { good: () => twisted(2), bad: () => twisted(1) };
