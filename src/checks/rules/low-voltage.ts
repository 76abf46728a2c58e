import { exceeds } from '../../geometry/exceeds.ts';
import { dropMvOf, GND } from '../../layout/defaults.ts';
import type { About, Check, Examples } from '../check.ts';
import { example, onBoard, onModule, ribbon } from '../example.ts';
import { inEachPart, mv } from '../load-words.ts';
import { moduleSpot } from '../spots.ts';
import { figure, lineName, moduleSubject } from '../words.ts';

export const about: About = {
  title: 'Too little voltage at a module',
  why: 'Ribbon and contacts take their share of the voltage; with too little left a module is out of tune or resets.',
  source: 'common practice, no source',
};

export const lowVoltage: Check = {
  id: 'low-voltage',
  level: 'fault',
  whole: true,
  find: inEachPart(function* (power) {
    const { kit, places } = power.part;
    for (const module of places.modules) {
      for (const [line] of module.facts.draws) {
        const voltage = kit.voltages.get(line);
        const lossMv = voltage && power.lossMv(module, voltage);
        if (!voltage || lossMv === undefined || !exceeds(lossMv, dropMvOf(voltage))) continue;
        const volts = Math.sign(voltage.volts) * (Math.abs(voltage.volts) - lossMv / 1000);
        const groundMv = Math.abs(power.shiftMv(module, GND) ?? 0);
        yield {
          subjects: [moduleSubject(module)],
          part: line,
          headline: `${module.name} gets ${figure(volts)} V of ${lineName(line)}`,
          detail: `Estimated, ${mv(lossMv)} are lost on the way, ${mv(groundMv)} of ground shift in it; ${mv(dropMvOf(voltage))} are allowed.`,
          remedy: 'Feed its group at another module or by a shorter lead, or give it a lead of its own.',
          measure: { lossMv, allowed: dropMvOf(voltage) },
          spots: [moduleSpot(module)],
        };
      }
    }
  }),
};

/** A lead of 300 mm of AWG 28 at 20 °C: 2 conductors there and 6 back, a contact of 20 mΩ at both ends of each. */
const lossMv = (60 * (0.3 * 212.9160872 + 40) * (1 / 2 + 1 / 6)) / 1000;

/** One module that draws 60 mA through that lead. */
function allowing(dropMv: number) {
  const layout = example({
    limits: { ambientC: 20 },
    modules: [['a', 'plain', 40]],
    ribbons: [ribbon('r', 'lead', [onBoard(0, 'p1'), onModule(1, 'a', 'power')])],
  });
  const voltages = layout.kit.voltages.map((voltage) => ({ ...voltage, dropMv }));
  return { ...layout, kit: { ...layout.kit, voltages } };
}

export const examples: Examples = {
  good: () => allowing(lossMv + 0.001),
  bad: () => allowing(lossMv - 0.001),
};
