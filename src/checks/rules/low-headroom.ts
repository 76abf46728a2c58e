import { headroomOf, supplyBudgets } from '../../electrical/budget.ts';
import { exceeds } from '../../geometry/exceeds.ts';
import type { About, Check, Examples } from '../check.ts';
import { example, onBoard, onModule, ribbon, SUPPLY } from '../example.ts';
import { beyond, inDraws, supplySpots } from '../load-words.ts';
import { figure, lineName } from '../words.ts';

export const about: About = {
  title: 'Little headroom on a supply',
  why: 'Modules draw more at switch-on and when they work hard, and a supply near its rating runs hot.',
  source: 'common practice, no source',
};

export const lowHeadroom: Check = {
  id: 'low-headroom',
  level: 'reminder',
  whole: true,
  find: inDraws(function* (power) {
    const kept = power.take.limits.headroom;
    for (const budget of supplyBudgets(power)) {
      const { supply, voltage, ma, allowedMa } = budget;
      if (exceeds(ma, allowedMa) || !exceeds(ma, allowedMa * (1 - kept))) continue;
      yield {
        subjects: [{ type: 'supply', id: supply.id }],
        part: voltage,
        headline: `${supply.name} has ${figure(100 * headroomOf(budget), 1)} % headroom on ${lineName(voltage)}`,
        detail: `${beyond(ma, allowedMa)} are drawn; ${figure(100 * kept, 1)} % are kept free.`,
        remedy: 'Feed some modules from another supply, or fit a stronger one.',
        measure: { ma, allowed: allowedMa * (1 - kept) },
        spots: supplySpots(supply, power),
      };
    }
  }),
};

/** One module that draws 60 mA. */
const rated = (ratingMa: number) =>
  example({
    supplies: [{ ...SUPPLY, ratings: { '+12': ratingMa } }],
    modules: [['a', 'plain', 40]],
    ribbons: [ribbon('r', 'lead', [onBoard(0, 'p1'), onModule(1, 'a', 'power')])],
  });

export const examples: Examples = { good: () => rated(75), bad: () => rated(74.9) };
