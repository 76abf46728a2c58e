import type { PartPower } from '../../electrical/power.ts';
import { exceeds } from '../../geometry/exceeds.ts';
import type { PlacedModule } from '../../geometry/place.ts';
import { GND } from '../../layout/defaults.ts';
import type { LinkGroup } from '../../wiring/link-group.ts';
import type { About, Check, Examples } from '../check.ts';
import { along, example, kind, onBoard, onModule, powerHeader, ribbon, shoreHeader } from '../example.ts';
import { inEachPart, mv } from '../load-words.ts';
import { moduleSpot } from '../spots.ts';
import { figure, moduleSubject } from '../words.ts';

/** 1200 cents to the octave, an octave to the volt: exact. */
const CENTS_PER_MV = 1.2;

/** The modules of a group with the highest and the lowest ground. */
export function farthestApart({ harnesses }: LinkGroup, power: PartPower) {
  let [high, low]: { readonly module: PlacedModule; readonly mv: number }[] = [];
  for (const { moduleSeats } of harnesses) {
    for (const { on } of moduleSeats) {
      const module = on.header.owner as PlacedModule;
      const shift = power.shiftMv(module, GND);
      if (shift === undefined) continue;
      const here = { module, mv: shift };
      if (!high || shift > high.mv) high = here;
      if (!low || shift < low.mv) low = here;
    }
  }
  return high && low && high.module !== low.module ? { high, low } : undefined;
}

export const about: About = {
  title: 'Grounds of linked modules apart',
  why: 'What one module sends, the next reads against its own ground: pitch is out of tune by the difference.',
  source:
    '1 V per octave is 1200 cents per volt, exact; how much is worth knowing: common practice, no source',
};

export const groundShift: Check = {
  id: 'ground-shift',
  level: 'reminder',
  whole: true,
  find: inEachPart(function* (power) {
    const { linkGroups, limits } = power.part;
    for (const group of linkGroups) {
      const pair = farthestApart(group, power);
      if (!pair) continue;
      const { high, low } = pair;
      const shiftMv = high.mv - low.mv;
      if (!exceeds(shiftMv, limits.groundShiftMv)) continue;
      const cents = shiftMv * CENTS_PER_MV;
      yield {
        subjects: [high, low].map(({ module }) => moduleSubject(module)),
        part: group.ribbons[0]?.id ?? '',
        headline: `Grounds of ${high.module.name} and ${low.module.name} are ${mv(shiftMv)} apart`,
        detail: `Estimated. A line of 1 V per octave between them is off by ${figure(cents, 1)} cents.`,
        remedy: 'Feed the group at the module that draws most, or by a shorter lead.',
        measure: { shiftMv, cents, allowed: limits.groundShiftMv },
        spots: [high, low].map(({ module }) => moduleSpot(module)),
      };
    }
  }),
};

/** Current of the second voice returns through 25.4 mm of AWG 28 at 20 °C and two contacts of 20 mΩ, over four conductors. */
const shiftMv = (100 * (0.0254 * 212.9160872 + 2 * 20)) / 4 / 1000;

/** Two linked voices of which the first is fed. */
const allowing = (groundShiftMv: number) =>
  example({
    limits: { ambientC: 20, groundShiftMv },
    kinds: [kind('own', { draws: { '+12': 100 }, headers: [shoreHeader(), powerHeader({ xMm: 12.7 })] })],
    modules: [
      ['a', 'own', 45],
      ['b', 'own', 40],
    ],
    ribbons: [
      ribbon('link', 'stiff', along('a', 'b')),
      ribbon('lead', 'lead', [onBoard(0, 'p1'), onModule(1, 'a', 'power')]),
    ],
  });

export const examples: Examples = {
  good: () => allowing(shiftMv + 0.0001),
  bad: () => allowing(shiftMv - 0.0001),
};
