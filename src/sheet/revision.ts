import type { PlacedBoard, PlacedHeader, PlacedModule } from '../geometry/place.ts';
import { faceOf, typeOf } from '../layout/defaults.ts';
import type { RibbonFacts } from '../layout/kit-index.ts';
import type { Bus } from '../layout/layout.ts';
import { remember } from '../layout/remember.ts';
import type { Harness } from '../wiring/harness.ts';
import type { Joint, LaidRibbon } from '../wiring/laid-ribbon.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import { hashOf } from './fnv-hash.ts';

/*
 * A revision code stands for what a drawing and its wiring are: where everything sits, what shape it has, which line
 * lies on which pin, what is seated where. It is the same for the same case however its lists are sorted and whatever
 * things are called, and another one as soon as a hand has something to do in the case. Names, notes, prices, colours
 * and currents are no part of it.
 */

/** Letters and figures that nobody takes for one another, read aloud or written by hand. */
const LETTERS = 'ACDEFHJKMNPRTUVWXY';
const FIGURES = '34679';
const ALL = LETTERS + FIGURES;

const PATTERN = [LETTERS, FIGURES, ALL, ALL, ALL] as const;

/** A code such as "K7-3F9": one of a million. */
function codeOf(content: unknown): string {
  let rest = hashOf(JSON.stringify(content));
  // The low bits of the last bytes are mixed least.
  rest ^= rest >> 32n;
  const signs = PATTERN.map((choice) => {
    const sign = choice[Number(rest % BigInt(choice.length))] as string;
    rest /= BigInt(choice.length);
    return sign;
  });
  return `${signs.slice(0, 2).join('')}-${signs.slice(2).join('')}`;
}

const byText = (contents: readonly unknown[]): string[] =>
  contents.map((content) => JSON.stringify(content)).sort();

/** A pinout in short, since every header bears one. */
const pinoutShape = remember(({ pinout }: Bus): string => hashOf(JSON.stringify(pinout)).toString(36));

/** Places are compared to a thousandth, so that sums of floats that mean the same place are the same. */
const place = (mm: number | undefined): number | null =>
  mm === undefined ? null : Math.round(mm * 1000) / 1000 + 0;

/** A header's shape and pinout, and where it lies in its row. */
const headerShape = (header: PlacedHeader): unknown => [
  header.row.index,
  place(header.xMm),
  place(header.yMm),
  place(header.zMm),
  header.axis,
  header.pin1 ?? null,
  header.keyed,
  header.passes,
  header.isolated,
  header.role ?? null,
  header.counts,
  pinoutShape(header.bus.bus),
];

const moduleShape = ({ row, leftMm, rightMm, facts, headers }: PlacedModule): unknown => [
  row.index,
  place(leftMm),
  place(rightMm),
  facts.heightU,
  place(facts.kind.depthMm),
  facts.kind.depthIs ?? 'with-plugs',
  byText(headers.map(headerShape)),
];

const boardShape = ({ row, board, supplyIndex, headers }: PlacedBoard): unknown => [
  supplyIndex,
  row.index,
  place(board.xMm),
  place(board.widthMm ?? 0),
  place(board.riseMm ?? 0),
  board.lead ? [place(board.lead.lengthMm), board.lead.awg] : null,
  byText(headers.map(headerShape)),
];

const ribbonShape = ({ kind, connectors, ways, bus, flat, bends }: RibbonFacts): unknown => [
  flat,
  bends,
  kind.awg ?? 28,
  pinoutShape(bus.bus),
  connectors.map((connector, i) => [
    place(connector.atMm),
    typeOf(connector),
    ways[i],
    faceOf(connector),
    connector.key ?? 'none',
  ]),
];

/** A ribbon, how it is turned, and the headers that it sits on; of two seats in one place only one conducts. */
function headersOf({ ribbon, facts, uses }: LaidRibbon): unknown {
  const seats = uses.flatMap((joints, connector) =>
    joints.flatMap(({ on, conducts }) =>
      on.type === 'header' ? [[connector, conducts, headerShape(on.header)]] : [],
    ),
  );
  const halfTwists = (ribbon.twists ?? []).slice(0, facts.connectors.length - 1);
  while (halfTwists.length > 0 && halfTwists.at(-1) === 0) halfTwists.pop();
  return [ribbonShape(facts), facts.flat ? (ribbon.stripe ?? 'down') : null, halfTwists, byText(seats)];
}

/** The same with the ribbons that are plugged into it, or it into them. */
function ribbonContent(laid: LaidRibbon): unknown {
  const end = (ribbon: LaidRibbon, connector: number): unknown => [connector, headersOf(ribbon)];
  const joints = new Set<Joint>(laid.uses.flat());
  const plugged = [...joints].flatMap(({ ribbon, connector, on, conducts }) =>
    on.type === 'connector' && ribbon === laid
      ? [[conducts, end(ribbon, connector), end(on.ribbon, on.connector)]]
      : [],
  );
  return [headersOf(laid), byText(plugged)];
}

/** The code of a take: all that is in the case. */
export const revisionOf = remember(({ take, places, wiring }: WholeTake): string =>
  codeOf([
    take.rows.map(({ widthHp, heightU, depthMm, gapMm }) => [widthHp, heightU, depthMm, gapMm ?? 0]),
    byText(places.modules.map(moduleShape)),
    byText(places.boards.map(boardShape)),
    byText(wiring.ribbons.map(ribbonContent)),
  ]),
);

/** The code of a harness: its ribbons, and where they are plugged. */
export const harnessRevision = remember(({ ribbons }: Harness): string =>
  codeOf(byText(ribbons.map(ribbonContent))),
);
