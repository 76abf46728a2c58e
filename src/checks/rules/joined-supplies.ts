import { GND } from '../../layout/defaults.ts';
import type { DerivedTake } from '../../wiring/derived-take.ts';
import { type Harness, suppliesOf } from '../../wiring/harness.ts';
import type { Feed } from '../../wiring/supply-net.ts';
import type { About, Check, Examples, Found, Spot } from '../check.ts';
import {
  along,
  BOARD,
  example,
  kind,
  onBoard,
  onModule,
  powerHeader,
  ribbon,
  SUPPLY,
  shoreHeader,
} from '../example.ts';
import { fedModules, feedSpots, suppliesInto } from '../feed-words.ts';
import { inEachPart } from '../load-words.ts';
import { ribbonSpots } from '../spots.ts';
import { list, moduleSubject, namesOf } from '../words.ts';

const carriesVoltage = ({ ribbons }: Harness): boolean =>
  ribbons.some(({ facts }) => [...facts.bus.supplyPins.keys()].some((line) => line !== GND));

function found(
  supplies: ReadonlySet<number>,
  feeds: readonly Feed[],
  spots: readonly Spot[],
  take: DerivedTake,
): Found {
  const joined = take.take.supplies.filter((_, index) => supplies.has(index));
  const modules = fedModules({ modules: [], feeds });
  return {
    subjects: [...joined.map(({ id }) => ({ type: 'supply' as const, id })), ...modules.map(moduleSubject)],
    headline: `${list(joined.map(({ name }) => name))} would be joined`,
    detail: modules.length
      ? `Their voltages meet through ${namesOf(modules)}: two outputs never match, and one drives current back into the other.`
      : 'Their voltages meet on one ribbon: two outputs never match, and one drives current back into the other.',
    remedy: 'Feed each linked group from one supply only.',
    measure: { supplies: joined.length },
    spots,
  };
}

export const about: About = {
  title: 'Two supplies joined',
  why: 'Outputs of two supplies never match to the millivolt: one drives current into the other and both may fail.',
  source: 'common practice, no source',
};

export const joinedSupplies: Check = {
  id: 'joined-supplies',
  level: 'damage',
  whole: true,
  find: inEachPart(function* ({ part: take }) {
    const { islands } = take.supplyNet;
    for (const island of islands) {
      const supplies = suppliesInto(island);
      if (supplies.size > 1) yield found(supplies, island.feeds, feedSpots(island), take);
    }
    for (const harness of take.harnesses) {
      const supplies = suppliesOf(harness);
      if (supplies.size < 2 || !carriesVoltage(harness)) continue;
      const feeds = islands.flatMap((island) => island.feeds.filter((feed) => feed.harness === harness));
      yield found(supplies, feeds, harness.ribbons.flatMap(ribbonSpots).slice(0, 1), take);
    }
  }),
};

/** Two voices with power headers, each fed from a supply of its own; the link between them joins the supplies. */
const apart = (linked: boolean) =>
  example({
    kinds: [kind('own', { draws: { '+12': 40 }, headers: [shoreHeader(), powerHeader({ xMm: 12.7 })] })],
    supplies: [
      SUPPLY,
      { ...SUPPLY, id: 'second', name: 'Second supply', boards: [{ ...BOARD, id: 'board2', xMm: 340 }] },
    ],
    modules: [
      ['a', 'own', 45],
      ['b', 'own', 40],
    ],
    ribbons: [
      ...(linked ? [ribbon('link', 'stiff', along('a', 'b'))] : []),
      ribbon('l1', 'lead', [onBoard(0, 'p1'), onModule(1, 'a', 'power')]),
      ribbon('l2', 'lead', [onBoard(0, 'p1', 'board2'), onModule(1, 'b', 'power')]),
    ],
  });

export const examples: Examples = { good: () => apart(false), bad: () => apart(true) };
