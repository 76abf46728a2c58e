import type { Key } from '../../layout/layout.ts';
import type { DerivedTake } from '../../wiring/derived-take.ts';
import { connectorOf } from '../../wiring/laid-ribbon.ts';
import type { About, Check, Examples } from '../check.ts';
import { example, kind, onBoard, onModule, powerHeader, ribbon, ribbonKind } from '../example.ts';
import { jointSpots } from '../spots.ts';
import { connectorName, seatPart, seatSubjects, targetName } from '../words.ts';

export const about: About = {
  title: 'Key on the wrong side of the stripe',
  why: 'A connector pressed on with its key against the stripe goes into a boxed header in one way only: reversed.',
  source:
    'common practice, no source; notch on the side of the odd pins (DIN 41651, as quoted in secondary texts)',
};

export const keyAgainst: Check = {
  id: 'key-against',
  level: 'damage',
  *find({ wiring }: DerivedTake) {
    for (const joint of wiring.joints) {
      if (joint.on.type !== 'header' || !joint.on.header.keyed || !joint.conducts) continue;
      if (connectorOf(joint.ribbon, joint.connector).key !== 'against-stripe') continue;
      yield {
        subjects: seatSubjects(joint),
        part: seatPart(joint),
        headline: `${connectorName(joint)} goes into ${targetName(joint.on)} only reversed`,
        detail: 'Its key lies against the stripe, and the header is boxed with a notch.',
        remedy: 'Make this ribbon anew; do not cut the key off.',
        spots: jointSpots(joint),
      };
    }
  },
};

const keyed = (key: Key) =>
  example({
    kinds: [kind('boxed', { headers: [powerHeader({ keyed: true })] })],
    ribbonKinds: [
      {
        ...ribbonKind('own', [], { bus: 'power', lay: 'loose' }),
        connectors: [{ atMm: 0 }, { atMm: 500, key }],
      },
    ],
    modules: [['a', 'boxed', 40]],
    ribbons: [ribbon('r', 'own', [onBoard(0, 'p1'), onModule(1, 'a', 'power')])],
  });

export const examples: Examples = { good: () => keyed('with-stripe'), bad: () => keyed('against-stripe') };
