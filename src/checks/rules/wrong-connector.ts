import { typeOf } from '../../layout/defaults.ts';
import type { DerivedTake } from '../../wiring/derived-take.ts';
import { connectorOf, type Joint, linesUnder, waysOf } from '../../wiring/laid-ribbon.ts';
import type { About, Check, Examples } from '../check.ts';
import { AS_NUMBERED, tellMishap } from '../consequence.ts';
import { example, kind, onBoard, onModule, POWER16, powerHeader, ribbon, ribbonKind } from '../example.ts';
import { jointSpots } from '../spots.ts';
import { connectorName, seatPart, seatSubjects, targetInFull } from '../words.ts';

const underType = ({ on }: Joint): string =>
  on.type === 'header' ? 'header' : typeOf(connectorOf(on.ribbon, on.connector));

export const about: About = {
  title: 'Connector that does not belong there',
  why: 'A connector wider than its header hangs over the end and can be pushed on anywhere along it; equal halves do not mate at all.',
  source: 'common practice, no source; contact grid 2.54 mm after IEC 60603-13 (title and scope only)',
};

export const wrongConnector: Check = {
  id: 'wrong-connector',
  level: 'damage',
  *find({ wiring, kit }: DerivedTake) {
    for (const joint of wiring.joints) {
      const { excessWays, cannotMate } = joint.flaws;
      if (!excessWays && !cannotMate) continue;
      const { ribbon: own, connector } = joint;
      const ways = waysOf(own, connector);
      const pins = linesUnder(joint.on).length;
      const type = typeOf(connectorOf(own, connector));
      yield {
        level: excessWays ? 'damage' : 'fault',
        subjects: seatSubjects(joint),
        part: seatPart(joint),
        headline: excessWays
          ? `${connectorName(joint)} has ${ways} ways on ${pins} pins of ${targetInFull(joint.on)}`
          : `${connectorName(joint)} cannot mate with ${targetInFull(joint.on)}`,
        detail: excessWays
          ? tellMishap(joint, AS_NUMBERED, '', kit)
          : `A ${type} does not go onto a ${underType(joint)}.`,
        remedy: excessWays
          ? 'Use a ribbon with as many ways as the header has pins.'
          : 'Turn to a ribbon with the other half.',
        measure: { ways, pins },
        spots: jointSpots(joint),
      };
    }
  },
};

/** A lead of so many ways between a narrow header on the board and a wide one on the module. */
const ended = (ways: number) =>
  example({
    kinds: [kind('wide', { headers: [powerHeader({ bus: POWER16.id })] })],
    ribbonKinds: [
      {
        ...ribbonKind('adapter', [], { bus: POWER16.id, lay: 'loose' }),
        connectors: [{ atMm: 0, ways }, { atMm: 500 }],
      },
    ],
    modules: [['a', 'wide', 40]],
    ribbons: [ribbon('r', 'adapter', [onBoard(0, 'p1'), onModule(1, 'a', 'power')])],
  });

export const examples: Examples = { good: () => ended(10), bad: () => ended(16) };
