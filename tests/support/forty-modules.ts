import type {
  Board,
  Header,
  Kit,
  Layout,
  Module,
  ModuleKind,
  Ribbon,
  RibbonKind,
  Take,
} from '../../src/layout/layout.ts';

/*
 * A layout of forty modules such as somebody would plan: 12 kinds of module, 12 ribbons laid in each of two takes, and
 * every field of the format somewhere. All of it is made up.
 */

const KINDS: readonly [name: string, hp: number, notes: string][] = [
  ['Cobble', 5, 'Snare-like; trim the decay before mounting'],
  ['Boulder', 15, 'Runs warm'],
  ['Jetty', 5, 'Collector'],
  ['Harbour', 10, 'Main unit, needs the board with the long lead'],
  ['Gull', 8, 'Bought second hand, jack 3 is loose'],
  ['Kelp', 10, 'Depth from the maker’s page'],
  ['Foghorn', 14, 'Loud!'],
  ['Limpet', 4, 'Two of them on loan'],
  ['Breakwater', 12, 'Ask Ida for the manual'],
  ['Lantern', 6, 'LEDs only'],
  ['Sandbar', 9, 'Old revision'],
  ['Tidepool', 3, 'Passive'],
];

const header = (
  id: string,
  bus: string,
  role: Header['role'],
  xMm: number,
  yMm: number,
  more: Partial<Header> = {},
): Header => ({
  id,
  bus,
  role,
  xMm,
  yMm,
  pin1: 'down',
  ...more,
});

const moduleKind = ([name, widthHp, notes]: (typeof KINDS)[number], i: number): ModuleKind => ({
  id: name.toLowerCase(),
  name,
  widthHp,
  heightU: 3,
  depthMm: 22 + ((i * 7) % 19) + (i % 3 === 0 ? 0.5 : 0),
  depthIs: i % 2 === 0 ? 'with-plugs' : 'without-plugs',
  draws: {
    '+12': 20 + ((i * 37) % 90),
    '-12': i % 4 === 3 ? null : 10 + ((i * 23) % 60),
    ...(i % 5 === 0 && { '+5': 15 + i }),
  },
  headers: [
    header('link', 'surf', i % 6 === 2 ? 'host' : 'member', 12.7, 38 + (i % 2), {
      name: 'Link',
      zMm: 28 + (i % 4),
      keyed: i % 2 === 0,
      ...(i % 4 === 1 && { passes: true }),
      ...(i % 6 === 5 && { counts: 2 }),
    }),
    i % 3 === 0
      ? header('power', 'feed-16', 'member', 20.3 + (i % 5), 91, {
          axis: 'horizontal',
          pin1: 'left',
          keyed: true,
        })
      : header('power', 'feed-10', 'member', 14.2 + (i % 5), 88.5, {
          axis: 'vertical',
          ...(i % 6 === 1 && { isolated: true }),
        }),
  ],
  owned: 1 + (i % 6),
  price: 39 + ((i * 31) % 160) + (i % 2) / 2,
  color: `#${(0x3f6f8c + i * 0x1a2b3d).toString(16).slice(-6).padStart(6, '0')}`,
  notes,
  known: (['measured', 'published', 'guessed'] as const)[i % 3] ?? 'guessed',
});

const RIBBON_KINDS: readonly RibbonKind[] = [
  ...[2, 3, 4, 5].map(
    (n): RibbonKind => ({
      id: `surf-${n}`,
      name: `Surf, ${n} connectors`,
      bus: 'surf',
      lay: 'flat',
      bends: n > 3,
      awg: 28,
      connectors: Array.from({ length: n }, (_, i) => ({
        atMm: i * (n > 3 ? 36 : 25.4),
        type: 'socket',
        face: 'panel',
        key: n > 3 ? 'none' : 'with-stripe',
      })),
      owned: n,
      price: 3.5 + n,
    }),
  ),
  ...[100, 180, 250, 320, 400, 500, 600, 750].map(
    (mm, i): RibbonKind => ({
      id: `feed-${mm}`,
      name: `Feed ${i % 2 ? '16 to 10' : '16-way'}, ${mm} mm`,
      bus: 'feed-16',
      lay: 'loose',
      awg: 26,
      connectors: [
        { atMm: 0, key: 'against-stripe' },
        { atMm: mm, ...(i % 2 === 1 && { ways: 10 }), type: 'socket' },
      ],
      owned: 1 + (i % 4),
      price: 4 + i / 2,
    }),
  ),
];

const kit: Kit = {
  voltages: [
    { id: '+12', volts: 12, dropMv: 200 },
    { id: '-12', volts: -12, dropMv: 200 },
    { id: '+5', volts: 5 },
  ],
  buses: [
    {
      id: 'surf',
      name: 'Surf',
      pinout: ['-12', '-12', 'GND', 'GND', 'GND', 'GND', '+12', '+12', 'mix', 'pulse'],
      membersPerHost: 5,
    },
    {
      id: 'feed-10',
      name: 'Feed, 10-way',
      pinout: ['-12', '-12', 'GND', 'GND', 'GND', 'GND', 'GND', 'GND', '+12', '+12'],
    },
    {
      id: 'feed-16',
      name: 'Feed, 16-way',
      pinout: [
        '-12',
        '-12',
        'GND',
        'GND',
        'GND',
        'GND',
        'GND',
        'GND',
        '+12',
        '+12',
        '+5',
        '+5',
        '',
        '',
        'gate',
        'gate',
      ],
    },
  ],
  modules: KINDS.map(moduleKind),
  ribbons: RIBBON_KINDS,
  limits: { seatToleranceMm: 0.8, bendRadiusMm: 4, headroom: 0.25, ambientC: 30 },
};

const ROWS = ['Top', 'Middle', 'Bottom'].map((name, i) => ({
  id: name.toLowerCase(),
  name: `${name} row`,
  case: i < 2 ? 'Travel case' : 'Skiff',
  widthHp: i < 2 ? 126 : 104,
  heightU: 3,
  depthMm: [62, 58, 45][i] as number,
  gapMm: 8 * i,
}));

const board = (i: number): Board => ({
  id: `board-${i + 1}`,
  name: `Board ${i + 1}`,
  row: ROWS[i]?.id ?? 'top',
  xMm: 210.5 + 63 * i,
  yMm: 58,
  widthMm: 114,
  riseMm: 8 + 2 * i,
  lead: { lengthMm: 280 + 40 * i, awg: 18 },
  headers: Array.from({ length: 6 }, (_, k) => ({
    id: `${k + 1}`,
    bus: 'feed-16',
    dxMm: 9 + 13.6 * k,
    dyMm: 2,
    axis: 'vertical',
    pin1: 'down',
    keyed: true,
  })),
  limits: { '+12': 2000, '-12': 1000 },
});

const MARKS = ['kick', 'low tom', 'high tom', 'rim', 'clap', 'hats', 'ride', 'bell', 'noise', 'sub'];

/** @param shift - how far the second half of each row stands from its place in the other take, HP */
function take(id: string, name: string, shift: number): Take {
  const ends = [0, 0, 0];
  const modules: Module[] = Array.from({ length: 40 }, (_, i) => {
    const kind = kit.modules[(i * 5 + (i >> 3)) % 12] as ModuleKind;
    const r = Math.floor(i / 14);
    const at = (ends[r] as number) + (i % 7 === 3 ? 1.5 : 0) + (i % 14 === 8 ? shift : 0);
    ends[r] = at + kind.widthHp;
    return {
      id: `${kind.id}-${Math.floor(i / 12) + 1}`,
      kind: kind.id,
      row: ROWS[r]?.id ?? 'top',
      atHp: at,
      label: `${kind.name} ${MARKS[(i * 3) % MARKS.length]}`,
      ...(i % 9 === 0 && { pinned: true }),
    };
  });
  const unique = modules.map((module, i) => ({
    ...module,
    id: modules.findIndex(({ id: other }) => other === module.id) === i ? module.id : `${module.id}-b${i}`,
  }));
  const ribbons: Ribbon[] = Array.from({ length: 12 }, (_, i): Ribbon => {
    const at = unique[i * 3 + (shift > 0 && i > 7 ? 1 : 0)]?.id ?? '';
    const beside = unique[i * 3 + 1 + (shift > 0 && i > 7 ? 1 : 0)]?.id ?? '';
    if (i < 5) {
      return {
        id: `ribbon-${i + 1}`,
        kind: `surf-${2 + (i % 4)}`,
        label: `S${i + 1}`,
        locked: i === 2,
        stripe: i % 2 ? 'up' : 'down',
        twists: i === 4 ? [1] : [0],
        seats: [
          { connector: 0, on: { module: beside, header: 'link' } },
          { connector: 1, on: { module: at, header: 'link' } },
        ],
      };
    }
    return {
      id: `ribbon-${i + 1}`,
      kind: RIBBON_KINDS[4 + (i % 8)]?.id ?? 'feed-100',
      label: `L${i - 4}`,
      seats: [
        i === 11
          ? { connector: 0, on: { ribbon: 'ribbon-6', connector: 1 } }
          : { connector: 0, on: { board: `board-${(i % 3) + 1}`, header: `${Math.floor(i / 3)}` } },
        { connector: 1, on: { module: at, header: 'power' } },
      ],
    };
  });
  return {
    id,
    name,
    rows: ROWS,
    supplies: [
      {
        id: 'main',
        name: 'Main supply',
        ratings: { '+12': 4200, '-12': 2500, '+5': 1500 },
        boards: [0, 1, 2].map(board),
      },
    ],
    modules: unique,
    ribbons,
    accepted: [
      { key: `unlinked/module:${unique[6]?.id}`, why: 'Runs by itself on stage', facts: 'bus=surf' },
      { key: `guessed-data/module:${unique[11]?.id}`, why: 'Will be measured' },
    ],
    built: { rev: 'B', date: '2026-03-14', ticked: ['feed-1', 'feed-2', 'ribbon-1'] },
  };
}

export const fortyModules = (): Layout => ({
  format: 'ribbonwright',
  version: 1,
  id: '5f1c9a02-7d1e-4b3f-9a44-0c1d2e3f4a5b',
  parent: 'a81b6c3d-2f4e-4f60-8b7a-91c0d2e4f6a8',
  title: 'Stage case, spring tour',
  notes: 'Forty modules over three rows.\nThe skiff travels apart.',
  kit,
  takes: [take('now', 'As it stands', 0), take('next', 'After the tour', 4)],
});
