import type {
  Board,
  Bus,
  Connector,
  Header,
  Kit,
  Layout,
  Module,
  ModuleKind,
  Ribbon,
  RibbonKind,
  Row,
  Seat,
  Supply,
  Take,
} from './layout.ts';
import { POWER_BUSES } from './power-buses.ts';

/**
 * The demo: the "Shoreline kit", percussion rack of an invented trio. All of it is made up for this program;
 * every figure that the app shows of it is computed. The first take has no damage and no fault, the second a
 * tempting regrouping that goes wrong.
 */
const BUSES: readonly Bus[] = [
  {
    id: 'shore',
    name: 'Shore',
    pinout: ['-12', '-12', 'GND', 'GND', 'GND', '+12', '+12', 'GND', 'mix', 'strike'],
    membersPerHost: 6,
  },
  {
    id: 'tide',
    name: 'Tide',
    pinout: ['GND', 'left', 'GND', 'right', 'GND', 'clock', 'GND', 'reset', 'tone', 'GND'],
    membersPerHost: 3,
  },
  ...POWER_BUSES,
];

const header = (
  id: string,
  bus: string,
  xMm: number,
  yMm: number,
  role: Header['role'] = 'member',
): Header => ({
  id,
  bus,
  role,
  xMm,
  yMm,
  pin1: 'down',
});

const LINK_X = 12.7;
const SHORE_Y = 38;
const TIDE_Y = 74;
/** Clear of the tide ribbon, which passes below. */
const POWER_Y = 91;

function moduleKind(
  id: string,
  widthHp: number,
  depthMm: number,
  [plus12, minus12]: readonly [number, number],
  headers: readonly Header[],
  owned: number,
  more: Partial<ModuleKind> = {},
): ModuleKind {
  const draws = { '+12': plus12, '-12': minus12, ...more.draws };
  const name = id.charAt(0).toUpperCase() + id.slice(1);
  return { known: 'measured', ...more, id, name, widthHp, depthMm, draws, headers, owned };
}

const MODULES: readonly ModuleKind[] = [
  moduleKind(
    'harbour',
    10,
    40,
    [120, 60],
    [header('tide', 'tide', LINK_X, TIDE_Y, 'host'), header('power', 'power-16', 38, 64)],
    1,
    {
      color: '#3f6f8c',
    },
  ),
  moduleKind(
    'jetty',
    5,
    32,
    [50, 45],
    [header('shore', 'shore', LINK_X, SHORE_Y, 'host'), header('tide', 'tide', LINK_X, TIDE_Y)],
    3,
    {
      color: '#6b8f3f',
    },
  ),
  moduleKind(
    'cobble',
    5,
    32,
    [35, 25],
    [header('shore', 'shore', LINK_X, SHORE_Y), header('power', 'power-10', LINK_X, POWER_Y)],
    6,
    {
      color: '#a07f45',
    },
  ),
  moduleKind(
    'boulder',
    15,
    34,
    [60, 45],
    [header('shore', 'shore', 38.1, SHORE_Y), header('power', 'power-10', 60, POWER_Y)],
    2,
    {
      color: '#7d6a8f',
    },
  ),
  moduleKind('gull', 8, 26, [80, 30], [header('power', 'power-16', 20, 64)], 2, { known: 'published' }),
  moduleKind('kelp', 10, 30, [60, 55], [header('power', 'power-16', 25, 64)], 1, { known: 'guessed' }),
  moduleKind('foghorn', 14, 44, [110, 40], [header('power', 'power-16', 35, 64)], 1, {
    known: 'published',
    draws: { '+5': 30 },
  }),
];

const sockets = (...at: number[]): Connector[] => at.map((atMm) => ({ atMm }));

const flat = (
  id: string,
  name: string,
  bus: string,
  connectors: readonly Connector[],
  more: Partial<RibbonKind> = {},
): RibbonKind => ({
  id,
  name,
  bus,
  lay: 'flat',
  connectors,
  owned: 1,
  ...more,
});

/** Pitch of 5 HP modules. */
const PITCH_MM = 25.4;

const FIXED = [2, 3, 4, 5, 6, 7].map((n) =>
  flat(
    `shore-${n}`,
    `Shore, ${n} at 5 HP`,
    'shore',
    sockets(...Array.from({ length: n }, (_, i) => i * PITCH_MM)),
  ),
);

const LEADS = [150, 250, 400, 600].flatMap((lengthMm): RibbonKind[] => [
  {
    id: `lead-16-${lengthMm}`,
    name: `Lead 16-way, ${lengthMm} mm`,
    bus: 'power-16',
    lay: 'loose',
    connectors: sockets(0, lengthMm),
    owned: 3,
    price: 4,
  },
  {
    id: `lead-10-${lengthMm}`,
    name: `Lead 16 to 10, ${lengthMm} mm`,
    bus: 'power-16',
    lay: 'loose',
    connectors: [{ atMm: 0 }, { atMm: lengthMm, ways: 10 }],
    owned: 3,
    price: 4,
  },
]);

const RIBBONS: readonly RibbonKind[] = [
  ...FIXED,
  flat('shore-bend-3', 'Shore, 3 bending', 'shore', sockets(0, 36, 72), { bends: true }),
  flat('shore-bend-4', 'Shore, 4 bending', 'shore', sockets(0, 36, 96, 156), { bends: true }),
  flat('shore-bend-7', 'Shore, 7 bending', 'shore', sockets(0, 36, 72, 108, 144, 180, 216), { bends: true }),
  flat('tide-3', 'Tide, 3 bending', 'tide', sockets(0, 58, 116), { bends: true }),
  flat('tide-more', 'Tide, extension', 'tide', [...sockets(0, 58), { atMm: 116, type: 'plug' }], {
    bends: true,
  }),
  {
    id: 'tide-link',
    name: 'Tide, loose link',
    bus: 'tide',
    lay: 'loose',
    connectors: [{ atMm: 0, type: 'plug' }, { atMm: 400 }],
    owned: 1,
  },
  ...LEADS,
];

const KIT: Kit = {
  voltages: [
    { id: '+12', volts: 12 },
    { id: '-12', volts: -12 },
    { id: '+5', volts: 5 },
  ],
  buses: BUSES,
  modules: MODULES,
  ribbons: RIBBONS,
};

const ROWS: readonly Row[] = [
  { id: 'upper', name: 'Upper row', widthHp: 104, heightU: 3, depthMm: 56, gapMm: 10 },
  { id: 'lower', name: 'Lower row', widthHp: 104, heightU: 3, depthMm: 56 },
];

/** A board with eight 16-way headers side by side, along the floor of a case. */
export const BOARD_OF_EIGHT = {
  widthMm: 114,
  riseMm: 10,
  lead: { lengthMm: 300, awg: 18 },
  headers: Array.from({ length: 8 }, (_, i) => ({
    id: `${i + 1}`,
    bus: 'power-16',
    dxMm: 9 + 13.6 * i,
    pin1: 'down',
  })),
} as const satisfies Partial<Board>;

const board = (id: string, name: string, row: string, xMm: number, riseMm: number): Board => ({
  ...BOARD_OF_EIGHT,
  id,
  name,
  row,
  xMm,
  riseMm,
});

const SUPPLIES: readonly Supply[] = [
  {
    id: 'supply',
    name: 'Supply',
    ratings: { '+12': 1600, '-12': 800, '+5': 500 },
    boards: [board('board-1', 'Board 1', 'upper', 370, 10), board('board-2', 'Board 2', 'lower', 391, 14)],
  },
];

type Places = Readonly<Record<string, readonly (readonly [id: string, atHp: number])[]>>;

const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);

/** Modules by row; `cobble-3` is a Cobble that goes by the name of Cobble 3. */
const placed = (places: Places): Module[] =>
  Object.entries(places).flatMap(([row, modules]) =>
    modules.map(([id, atHp]) => {
      const [kind = id, mark] = id.split('-');
      return { id, kind, row, atHp, label: mark ? `${capital(kind)} ${mark.toUpperCase()}` : capital(kind) };
    }),
  );

const seat = (connector: number, module: string, header: string): Seat => ({
  connector,
  on: { module, header },
});

const ribbon = (label: string, kind: string, ...seats: Seat[]): Ribbon => ({
  id: label.toLowerCase(),
  kind,
  label,
  seats,
});

const lead = (label: string, kind: string, from: string, header: string, module: string): Ribbon =>
  ribbon(label, kind, { connector: 0, on: { board: from, header } }, seat(1, module, 'power'));

const plugged = (connector: number, into: string, socket: number): Seat => ({
  connector,
  on: { ribbon: into, connector: socket },
});

const THREE_JETTIES: Take = {
  id: 'three-jetties',
  name: 'Three jetties',
  rows: ROWS,
  supplies: SUPPLIES,
  modules: placed({
    upper: [
      ['harbour', 0],
      ['jetty-a', 10],
      ['cobble-1', 15],
      ['cobble-2', 20],
      ['boulder-1', 25],
      ['jetty-b', 40],
      ['boulder-2', 45],
      ['cobble-3', 60],
      ['cobble-4', 65],
      ['gull-1', 72],
      ['foghorn', 82],
    ],
    lower: [
      ['jetty-c', 30],
      ['cobble-5', 35],
      ['cobble-6', 40],
      ['kelp', 48],
      ['gull-2', 60],
    ],
  }),
  ribbons: [
    ribbon(
      'S1',
      'shore-5',
      seat(0, 'boulder-1', 'shore'),
      seat(2, 'cobble-2', 'shore'),
      seat(3, 'cobble-1', 'shore'),
      seat(4, 'jetty-a', 'shore'),
    ),
    ribbon(
      'S2',
      'shore-bend-4',
      seat(0, 'cobble-4', 'shore'),
      seat(1, 'cobble-3', 'shore'),
      seat(2, 'boulder-2', 'shore'),
      seat(3, 'jetty-b', 'shore'),
    ),
    ribbon(
      'S3',
      'shore-3',
      seat(0, 'cobble-6', 'shore'),
      seat(1, 'cobble-5', 'shore'),
      seat(2, 'jetty-c', 'shore'),
    ),
    ribbon('T1', 'tide-3', seat(1, 'jetty-a', 'tide'), seat(2, 'harbour', 'tide')),
    ribbon('T2', 'tide-more', seat(0, 'jetty-b', 'tide'), plugged(2, 't1', 0)),
    ribbon('T3', 'tide-link', plugged(0, 't2', 1), seat(1, 'jetty-c', 'tide')),
    lead('L1', 'lead-16-400', 'board-1', '1', 'harbour'),
    lead('L2', 'lead-10-400', 'board-1', '2', 'boulder-1'),
    lead('L3', 'lead-10-250', 'board-1', '3', 'boulder-2'),
    lead('L4', 'lead-16-150', 'board-1', '4', 'gull-1'),
    lead('L5', 'lead-16-150', 'board-1', '7', 'foghorn'),
    lead('L6', 'lead-10-400', 'board-2', '1', 'cobble-6'),
    lead('L7', 'lead-16-250', 'board-2', '2', 'kelp'),
    lead('L8', 'lead-16-150', 'board-2', '3', 'gull-2'),
  ],
};

/**
 * Fewer leads and one long ribbon look like a saving. But Cobble 3 stands half an HP off, the long group has
 * no lead at all, Jetty B and Jetty C meet on one ribbon and are fed twice, two Cobbles are left without a
 * host, and Foghorn stands on a board.
 */
const ONE_LONG_JETTY: Take = {
  id: 'one-long-jetty',
  name: 'One long jetty',
  rows: ROWS,
  supplies: SUPPLIES,
  modules: placed({
    upper: [
      ['harbour', 0],
      ['jetty-a', 10],
      ['cobble-1', 15],
      ['cobble-2', 20],
      ['cobble-3', 25.5],
      ['boulder-1', 35],
      ['gull-1', 72],
    ],
    lower: [
      ['jetty-b', 0],
      ['boulder-2', 5],
      ['cobble-4', 20],
      ['jetty-c', 25],
      ['cobble-5', 32],
      ['cobble-6', 37],
      ['kelp', 48],
      ['gull-2', 60],
      ['foghorn', 78],
    ],
  }),
  ribbons: [
    ribbon(
      'S1',
      'shore-7',
      seat(0, 'boulder-1', 'shore'),
      seat(3, 'cobble-3', 'shore'),
      seat(4, 'cobble-2', 'shore'),
      seat(5, 'cobble-1', 'shore'),
      seat(6, 'jetty-a', 'shore'),
    ),
    ribbon(
      'S2',
      'shore-bend-4',
      seat(0, 'jetty-c', 'shore'),
      seat(1, 'cobble-4', 'shore'),
      seat(2, 'boulder-2', 'shore'),
      seat(3, 'jetty-b', 'shore'),
    ),
    ribbon('S3', 'shore-2', seat(0, 'cobble-6', 'shore'), seat(1, 'cobble-5', 'shore')),
    ribbon('T1', 'tide-3', seat(1, 'jetty-a', 'tide'), seat(2, 'harbour', 'tide')),
    ribbon('T2', 'tide-link', plugged(0, 't1', 0), seat(1, 'jetty-b', 'tide')),
    lead('L1', 'lead-16-400', 'board-1', '1', 'harbour'),
    lead('L2', 'lead-16-150', 'board-1', '2', 'gull-1'),
    lead('L3', 'lead-10-400', 'board-2', '1', 'boulder-2'),
    lead('L4', 'lead-10-400', 'board-2', '2', 'cobble-4'),
    lead('L5', 'lead-10-400', 'board-2', '3', 'cobble-6'),
    lead('L6', 'lead-16-250', 'board-2', '4', 'kelp'),
    lead('L7', 'lead-16-250', 'board-2', '5', 'gull-2'),
    lead('L8', 'lead-16-150', 'board-2', '6', 'foghorn'),
  ],
};

export const demoLayout = (): Layout => ({
  format: 'ribbonwright',
  version: 1,
  title: 'Shoreline kit',
  kit: KIT,
  takes: [THREE_JETTIES, ONE_LONG_JETTY],
});
