import type { PartPower } from '../../electrical/power.ts';
import { GND } from '../../layout/defaults.ts';
import type { Feed, Island } from '../../wiring/supply-net.ts';
import type { About, Check, Examples } from '../check.ts';
import { along, example, kind, onBoard, onModule, powerHeader, ribbon, shoreHeader } from '../example.ts';
import { fedModules, feedSpots, suppliesInto } from '../feed-words.ts';
import { inEachPart, ma } from '../load-words.ts';
import { lineName, list, moduleSubject, namesOf, ribbonSubjects } from '../words.ts';

const feedRibbons = ({ feeds }: Island) => [...new Set(feeds.flatMap(({ harness }) => harness.ribbons))];

/** What each lead brings on the voltage of which all of them together bring most. */
function shareWords({ feeds }: Island, power: PartPower): string {
  const { supplyLines, voltages } = power.part.kit;
  const seatOf = ({ seat }: Feed) => power.network.seats.find(({ joint }) => joint === seat);
  const brought = (feed: Feed, line: number): number =>
    Math.sign(voltages.get(supplyLines[line] as string)?.volts ?? 0) *
    power.maIn(seatOf(feed)?.branches[line] ?? -1);
  const sums = supplyLines.map((line, i) =>
    line === GND ? 0 : feeds.reduce((sum, feed) => sum + Math.abs(brought(feed, i)), 0),
  );
  const most = sums.indexOf(Math.max(...sums));
  if ((sums[most] as number) === 0) return 'None of them carries any current yet';
  const shares = feeds.map((feed) => `${feed.seat.ribbon.name} ${ma(brought(feed, most))}`);
  return `Estimated on ${lineName(supplyLines[most] as string)}: ${list(shares)}`;
}

export const about: About = {
  title: 'Two power leads into one island',
  why: 'The leads share the current as they please, and ground takes a loop through the link.',
  source: 'common practice, no source',
};

export const doubleFeed: Check = {
  id: 'double-feed',
  level: 'fault',
  whole: true,
  find: inEachPart(function* (power) {
    for (const island of power.part.supplyNet.islands) {
      if (island.feeds.length < 2 || suppliesInto(island).size > 1) continue;
      const modules = fedModules(island);
      const ribbons = feedRibbons(island);
      yield {
        subjects: [...modules.map(moduleSubject), ...ribbonSubjects(ribbons)],
        headline: `${namesOf(modules)} ${modules.length === 1 ? 'is' : 'are one island and'} fed ${island.feeds.length} times`,
        detail: `${namesOf(ribbons)} bring the same voltages; one lead is enough for a linked group. ${shareWords(island, power)}.`,
        remedy: 'Leave one power lead, take the others out.',
        measure: { feeds: island.feeds.length },
        spots: feedSpots(island),
      };
    }
  }),
};

/** Two voices with power headers of their own, linked; the second lead is one too many. */
const feeds = (second: boolean) =>
  example({
    kinds: [kind('own', { draws: { '+12': 40 }, headers: [shoreHeader(), powerHeader({ xMm: 12.7 })] })],
    modules: [
      ['a', 'own', 45],
      ['b', 'own', 40],
    ],
    ribbons: [
      ribbon('link', 'stiff', along('a', 'b')),
      ribbon('l1', 'lead', [onBoard(0, 'p1'), onModule(1, 'a', 'power')]),
      ...(second ? [ribbon('l2', 'lead', [onBoard(0, 'p2'), onModule(1, 'b', 'power')])] : []),
    ],
  });

export const examples: Examples = { good: () => feeds(false), bad: () => feeds(true) };
