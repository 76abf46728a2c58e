import { headroomOf, supplyBudgets } from '../../electrical/budget.ts';
import { exceeds } from '../../geometry/exceeds.ts';
import type { About, Check, Examples } from '../check.ts';
import { example, onBoard, onModule, ribbon, SUPPLY } from '../example.ts';
import { beyond, inDraws, ma, supplySpots } from '../load-words.ts';
import { figure, lineName } from '../words.ts';

export const about: About = {
  title: 'Supply overloaded',
  why: 'Beyond its rating a supply overheats, drops its voltage or shuts down, and may take modules with it.',
  source: 'common practice, no source',
};

export const overload: Check = {
  id: 'overload',
  level: 'damage',
  whole: true,
  find: inDraws(function* (power) {
    for (const budget of supplyBudgets(power)) {
      const { supply, voltage, ma: drawn, allowedMa } = budget;
      if (!exceeds(drawn, allowedMa)) continue;
      yield {
        subjects: [{ type: 'supply', id: supply.id }],
        part: voltage,
        headline: `${supply.name} is overloaded on ${lineName(voltage)}`,
        detail: `${beyond(drawn, allowedMa)} are drawn, ${figure(-100 * headroomOf(budget), 1)} % too much. Take ${ma(drawn - allowedMa)} off it.`,
        remedy: 'Feed some modules from another supply, leave some out, or fit a stronger one.',
        measure: { ma: drawn, allowed: allowedMa },
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

export const examples: Examples = { good: () => rated(60), bad: () => rated(59.9) };
