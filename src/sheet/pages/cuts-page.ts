import { figure, list, mm, targetName } from '../../checks/words.ts';
import { groupBy } from '../../layout/group-by.ts';
import type { LaidRibbon } from '../../wiring/laid-ribbon.ts';
import {
  CUT_TOLERANCE_MM,
  type Cut,
  type CutConnector,
  OVERHANG_MM,
  type Piece,
  piecesOf,
  toMake,
} from '../cut-list.ts';
import { roomOn } from '../cut-rows.ts';
import type { PageMaker } from '../sheet-page.ts';
import { pagedLots } from './paged.ts';
import { cautionLot, listLot, TICK, tableLot } from './table.ts';

const COLUMNS = [
  { name: 'Piece', widthMm: 28 },
  { name: 'Kind', widthMm: 46 },
  { name: `Cut, −0/+${CUT_TOLERANCE_MM}`, widthMm: 26, align: 'end' },
  { name: 'Conductors', widthMm: 22, align: 'end' },
  { name: 'Gauge', widthMm: 24 },
  { name: 'From stock', widthMm: 22 },
  { name: 'Cut', widthMm: 9, align: 'middle' },
  { name: 'Pressed', widthMm: 9 + 0, align: 'middle' },
] as const;

const WHERE = { owned: 'owned', short: 'none left', uncounted: 'not counted' } as const;

const FACES = { panel: 'away from you', rear: 'towards you' } as const;
const KEYS = {
  none: 'no key',
  'with-stripe': 'at the stripe',
  'against-stripe': 'away from the stripe',
} as const;

const rowOf = ({ ribbon, stocked, cut }: Piece) => [
  ribbon.name,
  cut.facts.kind.name,
  mm(cut.cutMm),
  String(cut.conductors),
  `AWG ${cut.awg}${cut.isAwgAssumed ? ' assumed' : ''}`,
  WHERE[stocked],
  TICK,
  TICK,
];

function endWords({ isFolded }: CutConnector, i: number, last: number): string {
  if (i > 0 && i < last) return 'straight through';
  return isFolded ? 'folded back, clip on' : `flush, at most ${figure(OVERHANG_MM)} mm out`;
}

/** Where the connectors of one kind go, each from the first. */
function placesLot(
  { connectors, facts, cutMm, endMm, spanMm, placeToleranceMm }: Cut,
  pieces: readonly Piece[],
) {
  const last = connectors.length - 1;
  return tableLot({
    title: facts.kind.name,
    words: `For ${list(
      pieces.map(({ ribbon }) => ribbon.name),
      20,
    )}. Cut ${mm(cutMm)}; first centre ${mm(endMm)} from the square end, all others from the first centre, each ±${figure(placeToleranceMm)} mm; last centre at ${mm(spanMm)}.`,
    columns: [
      { name: 'No.', widthMm: 10, align: 'end' },
      { name: 'From first', widthMm: 22, align: 'end' },
      { name: 'From end', widthMm: 22, align: 'end' },
      { name: 'Connector', widthMm: 32 },
      { name: 'Opens', widthMm: 28 },
      { name: 'Key', widthMm: 34 },
      { name: 'Ribbon there', widthMm: 38 },
    ],
    rows: connectors.map((each, i) => [
      String(each.number),
      mm(each.atMm),
      mm(each.fromEndMm),
      `${each.type}, ${each.ways} contacts`,
      FACES[each.face],
      KEYS[each.key],
      endWords(each, i, last),
    ]),
  });
}

/** What each connector of a ribbon sits on. */
const goesTo = (ribbon: LaidRibbon): string =>
  ribbon.uses
    .flatMap((joints, connector) =>
      joints
        .filter((joint) => joint.ribbon === ribbon && joint.conducts)
        .map(({ on }) => `${connector + 1} → ${targetName(on)}`),
    )
    .join(' · ');

const HOW = [
  'Lay the ribbon with the stripe towards you and mark all centres from the first one, never from one to the next: errors then do not add up.',
  'The first conductor, at the stripe, lies on contact 1 of every connector: the mark on each connector goes to the stripe. Where a connector has fewer contacts than the ribbon conductors, those beyond it pass by on the other side.',
  'Opens towards you, or away: as the piece lies so, connectors in order from left to right. For a folded end, fold after pressing: press it so that it opens to the side said once it is folded.',
  'Press straight and evenly between flat jaws until both latches click; not with bare pliers. A connector that was pressed once is spent.',
  'Test each piece by its continuity table before it comes near a module.',
];

/** Each piece that must be made, and where its connectors go. */
export const cutsPage: PageMaker = ({ take, options }) => {
  const all = piecesOf(take);
  const pieces = options.everyPiece ? all : toMake(all);
  if (all.length === 0) return [];
  const { widthMm } = roomOn(options.paper);
  const named = { id: 'cuts', title: 'Cut list' } as const;
  if (pieces.length === 0)
    return pagedLots(
      named,
      [listLot(undefined, ['All ribbons are owned: nothing is to be cut.'], widthMm)],
      options,
    );
  const byCut = groupBy(pieces, ({ cut }) => cut);
  return pagedLots(
    named,
    [
      cautionLot('A sharp blade: cut away from your hand, on a mat, and square.', widthMm),
      tableLot({
        title: options.everyPiece ? 'Every piece' : 'Pieces to be made',
        words: `Never shorter than called, at most ${CUT_TOLERANCE_MM} mm longer. What is over comes off behind the last connector.`,
        columns: COLUMNS,
        rows: pieces.map(rowOf),
      }),
      listLot('Making them', HOW, widthMm),
      ...[...byCut].map(([cut, own]) => placesLot(cut, own)),
      tableLot({
        title: 'Labels for both ends',
        columns: [
          { name: 'Piece', widthMm: 40 },
          { name: 'Connector → where it goes', widthMm: 130 },
        ],
        rows: pieces.map(({ ribbon }) => [ribbon.name, goesTo(ribbon) || 'not seated']),
      }),
    ],
    options,
  );
};
