import type { PlacedModule } from '../../geometry/place.ts';
import { GND } from '../../layout/defaults.ts';
import type { DerivedTake } from '../../wiring/derived-take.ts';
import { suppliesOf } from '../../wiring/harness.ts';
import { waysOf } from '../../wiring/laid-ribbon.ts';
import { carries, gives, type Island } from '../../wiring/supply-net.ts';
import type { About, Check, Examples } from '../check.ts';
import { example, kind, onBoard, onModule, powerHeader, ribbon, SUPPLY } from '../example.ts';
import { moduleSpot } from '../spots.ts';
import { figure, lineName, list, moduleSubject, namesOf } from '../words.ts';

/** Where a line ends that does not reach a module. */
function whereItEnds(line: string, { feeds }: Island, { take }: DerivedTake): string {
  const supplies = [...new Set(feeds.flatMap(({ harness }) => [...suppliesOf(harness)]))].flatMap(
    (index) => take.supplies[index] ?? [],
  );
  if (!supplies.some((supply) => gives(supply, line))) {
    return `${namesOf(supplies)} ${supplies.length === 1 ? 'does' : 'do'} not give ${lineName(line)}`;
  }
  const leads = [...new Set(feeds.flatMap(({ harness }) => harness.ribbons))];
  const brings = feeds.some(({ seat, harness }) =>
    [seat, ...harness.boardSeats].every(({ ribbon, connector }) =>
      carries(ribbon.facts.bus, waysOf(ribbon, connector), line),
    ),
  );
  return brings
    ? `${namesOf(leads)} ${leads.length === 1 ? 'brings' : 'bring'} ${lineName(line)} to its group, but no link carries it on`
    : `${namesOf(leads)} ${leads.length === 1 ? 'does' : 'do'} not bring ${lineName(line)} from end to end`;
}

/** "It draws 30 mA on +5 V." */
function drawWords({ facts }: PlacedModule, missing: readonly string[]): string {
  const draws = facts.draws.filter(([voltage]) => missing.includes(voltage) || missing.includes(GND));
  const words = draws.map(
    ([voltage, ma]) => `${ma === null ? 'an unknown current' : `${figure(ma)} mA`} on ${lineName(voltage)}`,
  );
  return `It draws ${list(words)}`;
}

export const about: About = {
  title: 'A voltage that does not arrive',
  why: 'A module on one of its two voltages does not work, and may be harmed.',
  source: 'common practice, no source',
};

export const missingVoltage: Check = {
  id: 'missing-voltage',
  level: 'fault',
  *find(part: DerivedTake) {
    const { places, supplyNet } = part;
    for (const module of places.modules) {
      const island = supplyNet.islandOf(module);
      if (island.feeds.length === 0 || module.facts.needs.every((line) => supplyNet.reaches(module, line)))
        continue;
      const missing = module.facts.needs.filter((line) => !supplyNet.reaches(module, line));
      yield {
        subjects: [moduleSubject(module)],
        headline: `${list(missing.map(lineName))} ${missing.length === 1 ? 'does' : 'do'} not reach ${module.name}`,
        detail: `${list([...new Set(missing.map((line) => whereItEnds(line, island, part)))])}. ${drawWords(module, missing)}.`,
        remedy: 'Use a lead with all its conductors, or a supply that gives this voltage.',
        measure: { missing: missing.length },
        spots: [moduleSpot(module)],
      };
    }
  },
};

const given = (ratings: Record<string, number>) =>
  example({
    kinds: [kind('both', { draws: { '+12': 10, '-12': 10 }, headers: [powerHeader()] })],
    supplies: [{ ...SUPPLY, ratings }],
    modules: [['a', 'both', 40]],
    ribbons: [ribbon('r', 'lead', [onBoard(0, 'p1'), onModule(1, 'a', 'power')])],
  });

export const examples: Examples = {
  good: () => given({ '+12': 100, '-12': 100 }),
  bad: () => given({ '+12': 100 }),
};
