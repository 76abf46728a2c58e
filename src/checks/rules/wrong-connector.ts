import type { DerivedTake } from '../../wiring/derive.ts';
import { connectorOf, type Joint, linesUnder, waysOf } from '../../wiring/laid-ribbon.ts';
import { typeOf } from '../../layout/defaults.ts';
import type { Check, Examples } from '../check.ts';
import { mishapAsSeated, tellMishap } from '../consequence.ts';
import { along, example, onModule, POWER16, ribbon, ribbonKind } from '../example.ts';
import { connectorName, jointSpots, seatPart, seatSubjects, targetName } from '../words.ts';

const underType = ({ on }: Joint): string =>
  on.type === 'header' ? 'header' : typeOf(connectorOf(on.ribbon, on.connector));

export const wrongConnector: Check = {
  id: 'wrong-connector',
  title: 'Connector that does not belong there',
  level: 'damage',
  why: 'A connector wider than its header hangs over the end and can be pushed on anywhere along it; equal halves do not mate at all.',
  source: 'common practice, no source; contact grid 2.54 mm after IEC 60603-13 (title and scope only)',
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
          ? `${connectorName(joint)} has ${ways} ways on ${pins} pins of ${targetName(joint.on)}`
          : `${connectorName(joint)} cannot mate with ${targetName(joint.on)}`,
        detail: excessWays
          ? tellMishap(mishapAsSeated(joint, kit), '', kit, joint.on)
          : `A ${type} does not go onto a ${underType(joint)}.`,
        remedy: excessWays ? 'Use a ribbon with as many ways as the header has pins.' : 'Turn to a ribbon with the other half.',
        measure: { ways, pins },
        spots: jointSpots(joint),
      };
    }
  },
};

export const examples: Examples = {
  good: () =>
    example({
      modules: [['a', 'plain', 0], ['b', 'plain', 8]],
      ribbons: [ribbon('r', 'lead', [onModule(0, 'a', 'power'), onModule(1, 'b', 'power')])],
    }),
  bad: () =>
    example({
      ribbonKinds: [ribbonKind('wide', [0, 300], { bus: POWER16.id, lay: 'loose' })],
      modules: [['a', 'plain', 0], ['b', 'plain', 8], ['c', 'voice', 20], ['d', 'voice', 25]],
      ribbons: [
        ribbon('r', 'wide', [onModule(0, 'a', 'power'), onModule(1, 'b', 'power')]),
        ribbon('s', 'stiff', along('d', 'c')),
      ],
    }),
};
