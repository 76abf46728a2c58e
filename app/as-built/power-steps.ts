import { type Power, supplyBudgets } from '../../src/index.ts';
import { moduleRows } from '../power/module-rows.ts';

/** What a meter should show on one voltage; absent: nobody knows, or it cannot be measured there. */
export interface Expected {
  readonly line: string;
  /** Of the voltage, V. */
  readonly nominal: number;
  readonly ma?: number;
  readonly volts?: number;
}

/** A place to hold the meter to. */
export interface Place {
  readonly on: 'module' | 'supply';
  readonly id: string;
  readonly name: string;
  readonly lines: readonly Expected[];
}

/** A step of powering up, with what is measured in it. */
export interface PowerStep {
  /** Stable: what the step is about. */
  readonly key: string;
  readonly title: string;
  readonly says: string;
  readonly places: readonly Place[];
}

/** By module and voltage what arrives there, V against its own ground. */
function voltsAt(power: Power): ReadonlyMap<string, number> {
  const { voltages } = power.take.kit;
  const all = [...voltages.keys()].flatMap((line) =>
    moduleRows(power, line).flatMap(({ id, arrival }): [string, number][] =>
      arrival?.volts === undefined ? [] : [[JSON.stringify([id, line]), arrival.volts]],
    ),
  );
  return new Map(all);
}

function supplyPlaces(power: Power, isLoaded: boolean): readonly Place[] {
  const budgets = [...supplyBudgets(power)];
  return power.take.take.supplies.flatMap(({ id, name }): Place[] => {
    const lines = budgets.flatMap(({ supply, voltage, ma }): Expected[] => {
      const nominal = power.take.kit.voltages.get(voltage)?.volts;
      if (supply.id !== id || nominal === undefined) return [];
      return [{ line: voltage, nominal, ...(isLoaded ? { ma } : { volts: nominal }) }];
    });
    return lines.length > 0 ? [{ on: 'supply', id, name, lines }] : [];
  });
}

const UNPLUGGED: PowerStep = {
  key: 'power-up/unplugged',
  title: 'Unplugged',
  says: 'Every connector looked at: stripe, free pins, seated at both ends. From each voltage to ground no steady beep. No loose screws.',
  places: [],
};

const LOADED = 'Ten minutes: warm spots, then read again.';

/** The order in which a take is powered up: supplies alone, boards, one island at a time, and all of it. */
export function powerSteps(power: Power): readonly PowerStep[] {
  const { take } = power;
  const arrives = voltsAt(power);
  const alone = supplyPlaces(power, false);
  const fed = take.supplyNet.islands.filter(({ modules, feeds }) => feeds.length > 0 && modules.length > 0);
  const islands = fed.map(({ modules, feeds }, i): PowerStep => {
    const leads = [...new Set(feeds.flatMap(({ harness }) => harness.ribbons.map(({ name }) => name)))];
    const ids = feeds.map(({ seat }) => seat.ribbon.id).sort();
    const places = modules.map(({ id, name, facts }): Place => {
      const lines = facts.draws.flatMap(([line, ma]): Expected[] => {
        const nominal = take.kit.voltages.get(line)?.volts;
        const volts = arrives.get(JSON.stringify([id, line]));
        if (nominal === undefined) return [];
        return [{ line, nominal, ...(ma !== null && { ma }), ...(volts !== undefined && { volts }) }];
      });
      return { on: 'module', id, name, lines };
    });
    return {
      key: `power-up/island/${ids.join('+')}`,
      title: `Island ${i + 1}: ${modules.map(({ name }) => name).join(', ')}`,
      says: `${leads.join(' and ')} plugged with power off. 5 s: watch, smell. Off before the next.`,
      places: places.filter(({ lines }) => lines.length > 0),
    };
  });
  if (alone.length === 0 || islands.length === 0) return [UNPLUGGED];
  return [
    UNPLUGGED,
    { key: 'power-up/supply', title: 'Supply alone', says: 'Nothing plugged into it.', places: alone },
    {
      key: 'power-up/boards',
      title: 'Boards, no modules',
      says: 'On: smell or heat means off at once.',
      places: [],
    },
    ...islands,
    { key: 'power-up/all', title: 'All together', says: LOADED, places: supplyPlaces(power, true) },
  ];
}
