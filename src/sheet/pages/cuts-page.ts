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
import type { PageMaker } from '../sheet-page.ts';
import { caution, pagesWith, sentences, type WideTable } from './table.ts';

const COLUMNS = [
  { head: 'Piece', share: 22 },
  { head: 'Kind', share: 46 },
  { head: `Cut, −0/+${CUT_TOLERANCE_MM}`, share: 26, align: 'right' },
  { head: 'Conductors', share: 22, align: 'right' },
  { head: 'Gauge, AWG', share: 26 },
  { head: 'From stock', share: 22 },
  { head: 'Cut', share: 12, box: true },
  { head: 'Pressed', share: 18, box: true },
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
  `${cut.awg}${cut.isAwgAssumed ? ', assumed' : ''}`,
  WHERE[stocked],
  '',
  '',
];

function endWords({ isFolded }: CutConnector, i: number, last: number): string {
  if (i > 0 && i < last) return 'straight through';
  return isFolded ? 'folded back, clip on' : `flush, ≤ ${figure(OVERHANG_MM)} mm out`;
}

/** Where the connectors of one kind go, each from the first. */
function placesTable(
  { connectors, facts, cutMm, endMm, spanMm, placeToleranceMm }: Cut,
  pieces: readonly Piece[],
): WideTable {
  const last = connectors.length - 1;
  return {
    heading: facts.kind.name,
    says: `For ${list(
      pieces.map(({ ribbon }) => ribbon.name),
      20,
    )}. Cut ${mm(cutMm)}; first centre ${mm(endMm)} from the square end, all others from the first centre, each ±${figure(placeToleranceMm)} mm; last centre at ${mm(spanMm)}.`,
    columns: [
      { head: 'No.', share: 8, align: 'right' },
      { head: 'From first', share: 22, align: 'right' },
      { head: 'From end', share: 22, align: 'right' },
      { head: 'Connector', share: 40 },
      { head: 'Opens', share: 30 },
      { head: 'Key', share: 38 },
      { head: 'Ribbon there', share: 50 },
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
  };
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

/** Said where all ribbons are owned. */
export const NOTHING_TO_CUT = 'All ribbons are owned: nothing is to be cut.';

/** Each piece that must be made, and where its connectors go. */
export const cutsPage: PageMaker = ({ take, options }) => {
  const all = piecesOf(take);
  const pieces = options.everyPiece ? all : toMake(all);
  const named = { id: 'cuts', title: 'Cut list' } as const;
  if (pieces.length === 0) {
    // The parts list says so too: no page for one sentence, unless it would be said nowhere.
    const isSaid = all.length === 0 || (options.pages?.has('parts') ?? true);
    return isSaid ? [] : pagesWith(named, [sentences('Nothing to cut', [NOTHING_TO_CUT])], options);
  }
  const byCut = groupBy(pieces, ({ cut }) => cut);
  return pagesWith(
    named,
    [
      caution('A sharp blade: cut away from your hand, on a mat, and square.'),
      {
        heading: options.everyPiece ? 'Every piece' : 'Pieces to be made',
        says: `Never shorter than called, at most ${CUT_TOLERANCE_MM} mm longer. What is over comes off behind the last connector: no end may stand out of its connector by more than ${figure(OVERHANG_MM)} mm.`,
        columns: COLUMNS,
        rows: pieces.map(rowOf),
      },
      sentences('Making them', HOW),
      ...[...byCut].map(([cut, own]) => placesTable(cut, own)),
      {
        heading: 'Labels for both ends',
        columns: [
          { head: 'Piece', share: 40 },
          { head: 'Connector → where it goes', share: 130 },
        ],
        rows: pieces.map(({ ribbon }) => [ribbon.name, goesTo(ribbon) || 'not seated']),
      },
    ],
    options,
  );
};
