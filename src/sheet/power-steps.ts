import { supplyBudgets } from '../electrical/budget.ts';
import type { Power } from '../electrical/power.ts';
import type { PlacedModule } from '../geometry/place.ts';
import type { Island } from '../wiring/supply-net.ts';
import { type IslandDraw, islandDraws } from './power-up.ts';

/** What a meter should show of one voltage; absent: nobody knows, or it cannot be measured there. */
export interface ExpectedAt {
  /** Voltage id. */
  readonly line: string;
  /** Of the voltage, V. */
  readonly nominal: number;
  readonly ma?: number;
  readonly volts?: number;
}

/** A place to hold the meter to. */
export interface PowerPlace {
  readonly on: 'module' | 'supply';
  readonly id: string;
  readonly name: string;
  readonly lines: readonly ExpectedAt[];
}

/** A step of powering up, with what is looked at and measured in it. */
export interface PowerStep {
  /** Stable: what the step is about. */
  readonly key: string;
  readonly stage: 'unplugged' | 'supply' | 'boards' | 'island' | 'all';
  readonly title: string;
  /** Sentences; each can be ticked by itself. */
  readonly looks: readonly string[];
  readonly places: readonly PowerPlace[];
  /** Of an island: what its leads carry. */
  readonly draw?: IslandDraw;
}

/** Names of the leads that feed an island, each once. */
export const leadsInto = ({ feeds }: Island): readonly string[] => [
  ...new Set(feeds.flatMap(({ harness }) => harness.ribbons.map(({ name }) => name))),
];

const UNPLUGGED: PowerStep = {
  key: 'power-up/unplugged',
  stage: 'unplugged',
  title: 'Unplugged',
  looks: [
    'Mains and adapter unplugged, 30 s waited. Loose screws counted; none is left behind a panel.',
    'Every connector seated at both ends, none tilted, stripe at pin 1, free pins at the far end.',
    'Every harness is tested, and no steady beep from any voltage to ground or to another.',
  ],
  places: [],
};

const BOARDS: PowerStep = {
  key: 'power-up/boards',
  stage: 'boards',
  title: 'Boards, no modules',
  looks: ['Boards plugged in, nothing on them. On: smell or heat means off at once.'],
  places: [],
};

/** What each supply should show: its voltages where nothing hangs on it, else the currents drawn from it. */
function supplyPlaces(power: Power, isLoaded: boolean): readonly PowerPlace[] {
  const { kit, take } = power.take;
  const budgets = [...supplyBudgets(power)];
  return take.supplies.flatMap((supply): PowerPlace[] => {
    const lines = budgets.flatMap(({ supply: of, voltage, ma }): ExpectedAt[] => {
      const nominal = kit.voltages.get(voltage)?.volts;
      if (of !== supply || nominal === undefined) return [];
      return [{ line: voltage, nominal, ...(isLoaded ? { ma } : { volts: nominal }) }];
    });
    return lines.length > 0 ? [{ on: 'supply', id: supply.id, name: supply.name, lines }] : [];
  });
}

/** What each module of an island should show. */
function modulePlaces({ parts, take }: Power): (island: Island) => readonly PowerPlace[] {
  const powerOfModule = new Map(
    parts.flatMap((part) => part.part.places.modules.map((module) => [module, part] as const)),
  );
  const linesAt = (module: PlacedModule): readonly ExpectedAt[] =>
    module.facts.draws.flatMap(([line, ma]): ExpectedAt[] => {
      const voltage = take.kit.voltages.get(line);
      if (!voltage) return [];
      const volts = powerOfModule.get(module)?.voltsAt(module, voltage);
      return [
        {
          line,
          nominal: voltage.volts,
          ...(ma !== null && { ma }),
          ...(volts !== undefined && { volts }),
        },
      ];
    });
  return ({ modules }) =>
    modules
      .map((module): PowerPlace => {
        const { id, name } = module;
        return { on: 'module', id, name, lines: linesAt(module) };
      })
      .filter(({ lines }) => lines.length > 0);
}

/**
 * The order in which a take is powered up: looked at unplugged, supplies alone, boards, one island at a time, and
 * all of it (common practice, no source). As far as there is something to try: a supply before anything is fed, nothing
 * where no supply gives anything.
 */
export function powerSteps(power: Power): readonly PowerStep[] {
  const { supplies } = power.take.take;
  const alone = supplyPlaces(power, false);
  const placesOf = modulePlaces(power);
  const fed = islandDraws(power).filter(({ island }) => island.modules.length > 0);
  if (alone.length === 0) return [UNPLUGGED];
  const islands = fed.map((draw, i): PowerStep => {
    const { island } = draw;
    const feeds = island.feeds.map(({ seat }) => seat.ribbon.id).sort();
    return {
      key: `power-up/island/${feeds.join('+')}`,
      stage: 'island',
      title: `Island ${i + 1}: ${island.modules.map(({ name }) => name).join(', ')}`,
      looks: [
        `Unplugged: seat ${leadsInto(island).join(' and ')}. On for 5 s: watch, smell. Off before the next.`,
      ],
      places: placesOf(island),
      draw,
    };
  });
  const before: readonly PowerStep[] = [
    UNPLUGGED,
    {
      key: 'power-up/supply',
      stage: 'supply',
      title: 'Supply alone',
      looks: ['Nothing plugged into it. The supply’s own papers go before any figure here.'],
      places: alone,
    },
    ...(supplies.some(({ boards }) => boards.length > 0) ? [BOARDS] : []),
  ];
  if (islands.length === 0) return before;
  return [
    ...before,
    ...islands,
    {
      key: 'power-up/all',
      stage: 'all',
      title: 'All together',
      looks: [
        'Every voltage read at the supply and at the module farthest from it.',
        'After 10 minutes feel for warm spots with the back of a finger, and read again.',
        'Loudspeakers on last, and off first.',
      ],
      places: supplyPlaces(power, true),
    },
  ];
}
