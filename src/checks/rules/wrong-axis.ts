import type { Axis } from '../../layout/layout.ts';
import type { DerivedTake } from '../../wiring/derived-take.ts';
import { isWrongAxis } from '../../wiring/laid-ribbon.ts';
import type { About, Check, Examples } from '../check.ts';
import { along, example, kind, ribbon, shoreHeader } from '../example.ts';
import { jointSpots } from '../spots.ts';
import { connectorName, seatPart, seatSubjects, targetName } from '../words.ts';

export const about: About = {
  title: 'Flat ribbon on a lying header',
  why: 'A flat ribbon leaves a connector at right angles to its long side; from a lying header it would run up and down, not along the row.',
  source: 'common practice, no source',
};

export const wrongAxis: Check = {
  id: 'wrong-axis',
  level: 'fault',
  *find({ wiring }: DerivedTake) {
    for (const joint of wiring.joints) {
      if (!isWrongAxis(joint) || !joint.conducts) continue;
      yield {
        subjects: seatSubjects(joint),
        part: seatPart(joint),
        headline: `${connectorName(joint)} would leave ${targetName(joint.on)} upward, not along the row`,
        detail: 'The long side of this header lies along the rail.',
        remedy: 'Use a loose ribbon there.',
        spots: jointSpots(joint),
      };
    }
  },
};

const lying = (axis: Axis) =>
  example({
    kinds: [
      kind('turned', { headers: [shoreHeader({ axis, pin1: axis === 'vertical' ? 'down' : 'left' })] }),
    ],
    modules: [
      ['a', 'voice', 5],
      ['b', 'turned', 0],
    ],
    ribbons: [ribbon('r', 'stiff', along('a', 'b'))],
  });

export const examples: Examples = { good: () => lying('vertical'), bad: () => lying('horizontal') };
