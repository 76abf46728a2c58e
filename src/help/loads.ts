import { estimate } from '../checks/load-words.ts';
import { farthestApart } from '../checks/rules/ground-shift.ts';
import { figure, lineName } from '../checks/words.ts';
import { boardBudgets, supplyBudgets } from '../electrical/budget.ts';
import { powerOf } from '../electrical/power.ts';
import { spanCurrents } from '../electrical/span-currents.ts';
import { dropMvOf, GND } from '../layout/defaults.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import type { Gauge } from './gauge.ts';

/** What is drawn from each supply, beside its rating or what of it is not kept free. */
export function supplyLoads(take: WholeTake, keepsFree: boolean): Gauge[] {
  const kept = keepsFree ? take.limits.headroom : 0;
  return [...supplyBudgets(powerOf(take))]
    .filter(({ ma }) => ma > 0)
    .map(({ supply, voltage, ma, allowedMa }) => ({
      title: `${supply.name}, ${lineName(voltage)}`,
      parts: [{ value: ma, words: 'drawn' }],
      words: 'drawn',
      limit: allowedMa * (1 - kept),
      limitWords: keepsFree ? `with ${figure(100 * kept)} % kept free` : 'rated',
      unit: 'mA',
      ...(keepsFree && { mark: { value: allowedMa, words: `rated ${estimate(allowedMa)}` } }),
    }));
}

export const boardLoads = (take: WholeTake): Gauge[] =>
  [...boardBudgets(powerOf(take))].map(({ board, voltage, ma, allowedMa }) => ({
    title: `${board.name}, ${lineName(voltage)}`,
    parts: [{ value: ma, words: 'drawn' }],
    words: 'drawn',
    limit: allowedMa,
    limitWords: 'allowed',
    unit: 'mA',
  }));

/** The conductor, and with it its contacts, that carries most. */
export function contactLoads(take: WholeTake): Gauge[] {
  const power = powerOf(take);
  const spans = take.kit.supplyLines.flatMap((line) =>
    [...spanCurrents(power, line)].map(({ ribbon, ma, conductors }) => ({
      line,
      ribbon,
      conductors,
      each: Math.abs(ma) / conductors,
    })),
  );
  const [most] = spans.sort((a, b) => b.each - a.each);
  if (!most) return [];
  return [
    {
      title: `Each contact of ${most.ribbon.name}, ${lineName(most.line)}, shared by ${most.conductors}`,
      parts: [{ value: most.each, words: 'carried' }],
      words: 'carried',
      limit: take.limits.contactMa,
      limitWords: 'allowed',
      unit: 'mA',
    },
  ];
}

/** What is lost on the way to each module and back, by each voltage that it draws. */
export function losses(take: WholeTake): Gauge[] {
  return powerOf(take).parts.flatMap((power) =>
    power.part.places.modules.flatMap((module) =>
      module.facts.draws.flatMap(([line]) => {
        const voltage = take.kit.voltages.get(line);
        const lossMv = voltage && power.lossMv(module, voltage);
        if (!voltage || lossMv === undefined) return [];
        const back = Math.abs(power.shiftMv(module, GND) ?? 0);
        return {
          title: `Lost of ${lineName(line)} at ${module.name}`,
          parts: [
            { value: lossMv - back, words: 'there' },
            { value: back, words: 'and back' },
          ],
          words: 'lost',
          limit: dropMvOf(voltage),
          limitWords: 'allowed',
          unit: 'mV',
        };
      }),
    ),
  );
}

/** By how much the grounds of the farthest two of each group lie apart. */
export function shifts(take: WholeTake): Gauge[] {
  return powerOf(take).parts.flatMap((power) =>
    power.part.linkGroups.flatMap((group) => {
      const pair = farthestApart(group, power);
      if (!pair) return [];
      const { high, low } = pair;
      return {
        title: `Ground of ${high.module.name} above that of ${low.module.name}`,
        parts: [{ value: high.mv - low.mv, words: 'apart' }],
        words: 'apart',
        limit: power.part.limits.groundShiftMv,
        limitWords: 'allowed',
        unit: 'mV',
      };
    }),
  );
}
