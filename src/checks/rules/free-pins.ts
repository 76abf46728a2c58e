import type { DerivedTake } from '../../wiring/derived-take.ts';
import { waysOf } from '../../wiring/laid-ribbon.ts';
import type { About, Check, Examples } from '../check.ts';
import { example, kind, onBoard, onModule, POWER16, powerHeader, ribbon, ribbonKind } from '../example.ts';
import { jointSpots } from '../spots.ts';
import { connectorName, count, seatPart, seatSubjects, targetName } from '../words.ts';

export const about: About = {
  title: 'Narrow connector on a wide header',
  why: 'It works only from pin 1 on, and an open header does not stop it from sitting a pair further.',
  source: 'common practice, no source',
};

export const freePins: Check = {
  id: 'free-pins',
  level: 'reminder',
  *find({ wiring }: DerivedTake) {
    for (const joint of wiring.joints) {
      if (joint.on.type !== 'header' || !joint.conducts) continue;
      const ways = waysOf(joint.ribbon, joint.connector);
      const { pins } = joint.on.header.bus;
      if (ways >= pins) continue;
      yield {
        subjects: seatSubjects(joint),
        part: seatPart(joint),
        headline: `${connectorName(joint)} leaves ${count(pins - ways, 'pin')} free on ${targetName(joint.on)}`,
        detail: `${ways} ways on ${pins} pins: it must start at pin 1, with all free pins at the other end.`,
        remedy: 'Count the free pins when it is seated.',
        measure: { freePins: pins - ways },
        spots: jointSpots(joint),
      };
    }
  },
};

const narrow = (ways: number) =>
  example({
    kinds: [kind('wide', { headers: [powerHeader({ bus: 'power16' })] })],
    ribbonKinds: [
      {
        ...ribbonKind('adapter', [], { bus: POWER16.id, lay: 'loose' }),
        connectors: [
          { atMm: 0, ways: 10 },
          { atMm: 500, ways },
        ],
      },
    ],
    modules: [['a', 'wide', 40]],
    ribbons: [ribbon('r', 'adapter', [onBoard(0, 'p1'), onModule(1, 'a', 'power')])],
  });

export const examples: Examples = { good: () => narrow(16), bad: () => narrow(10) };
