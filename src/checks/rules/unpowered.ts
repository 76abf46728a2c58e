import type { DerivedTake } from '../../wiring/derived-take.ts';
import type { Island } from '../../wiring/supply-net.ts';
import type { About, Check, Examples } from '../check.ts';
import { example, onBoard, onModule, ribbon } from '../example.ts';
import { moduleSpot } from '../spots.ts';
import { figure, lineName, list, moduleSubject, namesOf } from '../words.ts';

/** What an island draws per voltage, mA; unknown draws are told apart. */
function drawWords({ modules }: Island): string {
  const sums = new Map<string, { ma: number; unknown: boolean }>();
  for (const { facts } of modules) {
    for (const [voltage, ma] of facts.draws) {
      const sum = sums.get(voltage) ?? { ma: 0, unknown: false };
      sums.set(voltage, { ma: sum.ma + (ma ?? 0), unknown: sum.unknown || ma === null });
    }
  }
  const words = [...sums].map(
    ([voltage, { ma, unknown }]) => `${unknown ? 'at least ' : ''}${figure(ma)} mA on ${lineName(voltage)}`,
  );
  return list(words);
}

export const about: About = {
  title: 'Island without a power lead',
  why: 'Linked modules share one feed; without it the whole group stays dark, or draws through its signal pins.',
  source: 'common practice, no source',
};

export const unpowered: Check = {
  id: 'unpowered',
  level: 'fault',
  *find({ supplyNet }: DerivedTake) {
    for (const island of supplyNet.islands) {
      const { modules, feeds } = island;
      const [first] = modules;
      if (!first || feeds.length > 0 || !modules.some(({ facts }) => facts.draws.length > 0)) continue;
      const alone = modules.length === 1;
      yield {
        subjects: modules.map(moduleSubject),
        headline: `${namesOf(modules)} ${alone ? 'has' : 'have'} no power lead`,
        detail: `${alone ? 'It draws' : `${modules.length} linked modules draw`} ${drawWords(island)}. One lead ${alone ? 'feeds it' : 'to any of them that has a power header is enough'}.`,
        remedy: alone ? 'Give it a power lead.' : 'Give one of them a power lead.',
        measure: { modules: modules.length },
        spots: [moduleSpot(first)],
      };
    }
  },
};

const fed = (...seats: Parameters<typeof ribbon>[2][number][]) =>
  example({ modules: [['a', 'plain', 30]], ribbons: [ribbon('r', 'lead', seats)] });

export const examples: Examples = {
  good: () => fed(onBoard(0, 'p1'), onModule(1, 'a', 'power')),
  bad: () => fed(onBoard(0, 'p1')),
};
