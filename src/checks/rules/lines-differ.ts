import type { Bus } from '../../layout/layout.ts';
import type { DerivedTake } from '../../wiring/derived-take.ts';
import { linesOf, linesUnder } from '../../wiring/laid-ribbon.ts';
import type { About, Check, Examples } from '../check.ts';
import { AS_NUMBERED, tellMishap } from '../consequence.ts';
import { along, example, kind, ribbon, SHORE, shoreHeader } from '../example.ts';
import { jointSpots } from '../spots.ts';
import { connectorName, count, lineName, seatPart, seatSubjects, targetInFull } from '../words.ts';

export const about: About = {
  title: 'Ribbon and header carry different lines',
  why: 'A connector that fits joins whatever lies on equal pins: a voltage on a signal input, or two voltages together.',
  source:
    'common practice, no source; conductor k lies on contact k (IEC 60603-13, as quoted in secondary texts)',
};

export const linesDiffer: Check = {
  id: 'lines-differ',
  level: 'damage',
  *find({ wiring, kit }: DerivedTake) {
    for (const joint of wiring.joints) {
      const { differingPins } = joint.flaws;
      const [first] = differingPins;
      if (first === undefined) continue;
      const mine = lineName(linesOf(joint.ribbon)[first] as string);
      const theirs = lineName(linesUnder(joint.on)[first] as string);
      yield {
        subjects: seatSubjects(joint),
        part: seatPart(joint),
        headline: `${connectorName(joint)} carries other lines than ${targetInFull(joint.on)}`,
        detail: `${count(differingPins.length, 'pin differs', 'pins differ')}, the first is pin ${first + 1}: ${mine} on ${theirs}. ${tellMishap(joint, AS_NUMBERED, '', kit)}`,
        remedy: 'Seat it on a header of its own bus.',
        measure: { pins: differingPins.length },
        spots: jointSpots(joint),
      };
    }
  },
};

/** The shore bus with other names on its last two pins. */
const inlet = (...last: string[]): Bus => ({
  ...SHORE,
  id: 'inlet',
  pinout: [...SHORE.pinout.slice(0, 8), ...last],
});

const across = (bus: Bus) =>
  example({
    buses: [bus],
    kinds: [kind('guest', { headers: [shoreHeader({ bus: 'inlet' })] })],
    modules: [
      ['a', 'voice', 5],
      ['b', 'guest', 0],
    ],
    ribbons: [ribbon('r', 'stiff', along('a', 'b'))],
  });

export const examples: Examples = {
  good: () => across(inlet('', 'strike')),
  bad: () => across(inlet('GND', 'strike')),
};
