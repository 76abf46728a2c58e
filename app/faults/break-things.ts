import {
  connectorsInUse,
  GND,
  type LaidRibbon,
  type Link,
  linesAt,
  type ShortPlace,
  shortPairs,
  type WholeTake,
} from '../../src/index.ts';
import { type Breakage, jointAt } from './breakage.ts';
import { lineName, linkPins, linkPlace, seatOn, several } from './fault-words.ts';

/** One way to break something at a place. */
interface Way {
  readonly label: string;
  readonly breakage: Breakage;
}

/** A place of a thing, and what can break there. */
export interface BreakPlace {
  readonly label: string;
  readonly ways: readonly Way[];
}

/** A thing that can be broken, keyed as the selection names it. */
export interface BreakThing {
  readonly key: string;
  readonly label: string;
  places(): readonly BreakPlace[];
}

const shortsAt = (place: ShortPlace, lines: readonly string[], take: WholeTake): Way[] =>
  [...shortPairs(lines, take)].map((pair) => ({
    label: `${lineName(pair[0])} touches ${lineName(pair[1])}`,
    breakage: { type: 'short', place, lines: pair },
  }));

/** The line alone, then each of its contacts or conductors where it has several. */
function openWays(link: Link, whole: string, noun: string): Way[] {
  const pins = linkPins(link);
  const ways: Way[] = [{ label: whole, breakage: { type: 'open', link, line: null } }];
  for (const [line, on] of pins) {
    ways.push({
      label: `${lineName(line)} open, ${several(noun, on)}`,
      breakage: { type: 'open', link, line },
    });
    if (on.length < 2) continue;
    for (const pin of on)
      ways.push({
        label: `${noun} ${pin + 1} alone open, ${lineName(line)}`,
        breakage: { type: 'pin', link, pin },
      });
  }
  return ways;
}

function ribbonPlaces(ribbon: LaidRibbon, take: WholeTake): BreakPlace[] {
  const inUse = connectorsInUse(ribbon);
  const lines = [...ribbon.facts.bus.supplyPins.keys()];
  const seats = inUse.flatMap((connector): BreakPlace[] => {
    const joint = jointAt(ribbon, connector);
    if (!joint) return [];
    const link: Link = { type: 'seat', joint };
    return [
      {
        label: `Connector ${connector + 1} ${seatOn(ribbon, connector, joint)}`,
        ways: [
          ...openWays(link, 'pulled off', 'contact'),
          ...shortsAt({ type: 'ribbon', ribbon, connector }, lines, take),
        ],
      },
    ];
  });
  const spans = inUse.slice(1).map((to, i): BreakPlace => {
    const link: Link = { type: 'span', ribbon, from: inUse[i] as number, to };
    return { label: linkPlace(link), ways: openWays(link, 'torn through', 'conductor') };
  });
  return [...seats, ...spans];
}

const wire = (link: Link, line: string): Way => ({
  label: link.type === 'supply' ? `gives no ${lineName(line)}` : `${lineName(line)} wire open`,
  breakage: { type: 'open', link, line },
});

/** Everything in a take that can be broken. */
export function breakThings(take: WholeTake): BreakThing[] {
  const { places, wiring } = take;
  const lines = take.kit.supplyLines;
  const ribbons = wiring.ribbons
    .filter((ribbon) => connectorsInUse(ribbon).length > 0 && ribbon.facts.bus.supplyPins.size > 0)
    .map(
      (ribbon): BreakThing => ({
        key: `ribbon:${ribbon.id}`,
        label: ribbon.name,
        places: () => ribbonPlaces(ribbon, take),
      }),
    );
  const modules = places.modules.map(
    (module): BreakThing => ({
      key: `module:${module.id}`,
      label: module.name,
      places: () => [
        {
          label: 'Inside the module',
          ways: shortsAt({ type: 'module', module }, linesAt(module, take), take),
        },
      ],
    }),
  );
  const boards = places.boards.map(
    (board): BreakThing => ({
      key: `board:${board.id}`,
      label: board.name,
      places: () => {
        const link: Link = { type: 'board-lead', board };
        return [
          {
            label: `Its lead to ${board.supply.name}`,
            ways: [
              { label: 'off', breakage: { type: 'open', link, line: null } },
              ...lines.map((line) => wire(link, line)),
            ],
          },
          { label: 'On the board', ways: shortsAt({ type: 'board', board }, lines, take) },
        ];
      },
    }),
  );
  const supplies = take.take.supplies.map((supply): BreakThing => {
    const link: Link = { type: 'supply', supply };
    const given = lines.filter((line) => line !== GND && (supply.ratings[line] ?? 0) > 0);
    return {
      key: `supply:${supply.id}`,
      label: supply.name,
      places: () => [
        {
          label: 'Its outputs',
          ways: [
            { label: 'off', breakage: { type: 'open', link, line: null } },
            ...given.map((line) => wire(link, line)),
          ],
        },
      ],
    };
  });
  return [...ribbons, ...boards, ...supplies, ...modules].filter(({ places: of }) =>
    of().some(({ ways }) => ways.length > 0),
  );
}
