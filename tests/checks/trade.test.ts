import { describe, expect, it } from 'vitest';
import type { Note } from '../../src/checks/check.ts';
import { checkLayout } from '../../src/checks/check-layout.ts';
import type { Board, Layout, ModuleKind, Ribbon, RibbonKind, Seat } from '../../src/layout/layout.ts';

/*
 * How such racks are built: common practice, no source. A voice is 6 HP wide here, so that a link ribbon has
 * its connectors at 6 × 5.08 = 30.48 mm; collectors gather up to eight voices, a main unit up to four
 * collectors. Names are invented.
 */
const PITCH_MM = 30.48;

const VOICE_BUS = {
  id: 'voices',
  name: 'Voices',
  membersPerHost: 8,
  pinout: ['-12', '-12', 'GND', 'GND', '+12', '+12', 'mix', 'GND'],
};
const MAIN_BUS = { id: 'main', name: 'Main', membersPerHost: 4, pinout: ['GND', 'left', 'GND', 'right'] };
const POWER_BUS = { id: 'power', name: 'Power', pinout: ['-12', '-12', 'GND', 'GND', '+12', '+12'] };

const voiceHeader = { id: 'link', bus: 'voices', xMm: 15.24, yMm: 40, pin1: 'down' } as const;
const mainHeader = { id: 'main', bus: 'main', xMm: 15.24, yMm: 80, pin1: 'down' } as const;
const power = { id: 'power', bus: 'power', role: 'member', xMm: 15.24, yMm: 110, pin1: 'down' } as const;

const kinds: ModuleKind[] = [
  {
    id: 'voice',
    name: 'Voice',
    widthHp: 6,
    depthMm: 30,
    draws: { '+12': 30, '-12': 20 },
    headers: [{ ...voiceHeader, role: 'member' }, power],
  },
  {
    id: 'wide',
    name: 'Wide voice',
    widthHp: 18,
    depthMm: 30,
    draws: { '+12': 60, '-12': 40 },
    headers: [
      { ...voiceHeader, role: 'member', xMm: 45.72 },
      { ...power, xMm: 45.72 },
    ],
  },
  {
    id: 'collector',
    name: 'Collector',
    widthHp: 6,
    depthMm: 30,
    draws: { '+12': 50, '-12': 50 },
    headers: [
      { ...voiceHeader, role: 'host' },
      { ...mainHeader, role: 'member' },
    ],
  },
  {
    id: 'main',
    name: 'Main unit',
    widthHp: 12,
    depthMm: 30,
    draws: { '+12': 90, '-12': 90 },
    headers: [{ ...mainHeader, role: 'host' }, power],
  },
];

const fixed = (id: string, bus: string, n: number): RibbonKind => ({
  id,
  name: id,
  bus,
  lay: 'flat',
  connectors: Array.from({ length: n }, (_, i) => ({ atMm: i * PITCH_MM })),
});

const ribbonKinds: RibbonKind[] = [
  ...[2, 3, 4, 5, 6, 7, 8, 9, 10].map((n) => fixed(`link-${n}`, 'voices', n)),
  ...[6, 7].map((n) => fixed(`main-${n}`, 'main', n)),
  { id: 'lead', name: 'Lead', bus: 'power', lay: 'loose', connectors: [{ atMm: 0 }, { atMm: 900 }] },
];

type Placed = readonly [id: string, kind: string, atHp: number];

function rack(modules: readonly Placed[], ribbons: readonly Ribbon[]): Layout {
  const board: Board = {
    id: 'board',
    name: 'Board',
    row: 'row',
    xMm: 200,
    headers: Array.from({ length: 8 }, (_, i) => ({ id: `${i}`, bus: 'power', dxMm: i * 12, pin1: 'down' })),
  };
  return {
    format: 'ribbonwright',
    version: 1,
    title: 'Trade',
    kit: {
      voltages: [
        { id: '+12', volts: 12 },
        { id: '-12', volts: -12 },
      ],
      buses: [VOICE_BUS, MAIN_BUS, POWER_BUS],
      modules: kinds,
      ribbons: ribbonKinds,
    },
    takes: [
      {
        id: 'take',
        name: 'Take',
        rows: [{ id: 'row', widthHp: 168, heightU: 3, depthMm: 60 }],
        supplies: [{ id: 'supply', name: 'Supply', ratings: { '+12': 3000, '-12': 3000 }, boards: [board] }],
        modules: modules.map(([id, kind, atHp]) => ({ id, kind, row: 'row', atHp })),
        ribbons,
      },
    ],
  };
}

/** Seats connectors one after the other; rear view left to right is front right to left. '' leaves one free. */
const seats = (header: string, ...modules: string[]): Seat[] =>
  modules.flatMap((module, connector) => (module ? [{ connector, on: { module, header } }] : []));

const link = (id: string, ...modules: string[]): Ribbon => ({
  id,
  kind: `link-${modules.length}`,
  seats: seats('link', ...modules),
});
const lead = (id: string, header: number, module: string): Ribbon => ({
  id,
  kind: 'lead',
  seats: [
    { connector: 0, on: { board: 'board', header: `${header}` } },
    { connector: 1, on: { module, header: 'power' } },
  ],
});

const notesOf = (layout: Layout): Note[] => checkLayout(layout).flatMap(({ notes }) => notes);
const severe = (layout: Layout): string[] =>
  notesOf(layout)
    .filter(({ level }) => level !== 'reminder')
    .map(({ check, level }) => `${level} ${check}`);
const checksOf = (layout: Layout): string[] => notesOf(layout).map(({ check }) => check);

/** A collector at the left end and so many voices beside it, on one ribbon, with one lead to the first voice. */
function group(voices: number, more: readonly Ribbon[] = []): Layout {
  const names = Array.from({ length: voices }, (_, i) => `v${i + 1}`);
  return rack(
    [['c', 'collector', 0], ...names.map((id, i): Placed => [id, 'voice', 6 * (i + 1)])],
    [link('r', ...[...names].reverse(), 'c'), lead('l', 0, 'v1'), ...more],
  );
}

describe('facts of the trade (common practice, no source)', () => {
  it('a fixed link ribbon lands on modules of 6 HP side by side: 30.48 mm', () => {
    expect(severe(group(3))).toEqual([]);
  });

  it('an 18 HP module has its header where the middle one of three 6 HP modules has it', () => {
    const layout = rack(
      [
        ['c', 'collector', 0],
        ['v', 'voice', 6],
        ['w', 'wide', 12],
      ],
      [link('r', 'w', '', 'v', 'c'), lead('l', 0, 'v')],
    );
    expect(severe(layout)).toEqual([]);
  });

  it('up to eight members hang on a collector; nine would do damage', () => {
    expect(severe(group(8))).toEqual([]);
    expect(severe(group(9))).toEqual(['damage over-members']);
  });

  it('up to four collectors hang on a main unit; five would do damage', () => {
    /* The main unit is 12 HP wide: its header lies two pitches left of the first collector's. */
    const onMain = (collectors: number): string[] => {
      const names = Array.from({ length: collectors }, (_, i) => `c${i + 1}`);
      const layout = rack(
        [['m', 'main', 0], ...names.map((id, i): Placed => [id, 'collector', 12 + 6 * i])],
        [{ id: 'r', kind: `main-${collectors + 2}`, seats: seats('main', ...[...names].reverse(), '', 'm') }],
      );
      return severe(layout).filter((line) => line.startsWith('damage'));
    };
    expect(onMain(4)).toEqual([]);
    expect(onMain(5)).toEqual(['damage over-members']);
  });

  it('a member hangs on no two hosts', () => {
    const layout = rack(
      [
        ['c', 'collector', 0],
        ['v', 'voice', 6],
        ['d', 'collector', 12],
      ],
      [link('r', 'd', 'v', 'c'), lead('l', 0, 'v')],
    );
    expect(severe(layout)).toEqual(['damage two-hosts']);
  });

  it('two collectors are never joined', () => {
    const layout = rack(
      [
        ['c', 'collector', 0],
        ['d', 'collector', 6],
      ],
      [link('r', 'd', 'c')],
    );
    expect(severe(layout)).toContain('damage two-hosts');
  });

  it('one power lead feeds a linked group, the collector without a power header through its ribbon', () => {
    expect(severe(group(2))).toEqual([]);
    expect(severe(group(2, [lead('l2', 1, 'v2')]))).toEqual(['fault double-feed']);
    const unfed = group(2);
    const [take] = unfed.takes;
    const dark = { ...unfed, takes: [{ ...take, ribbons: take?.ribbons.slice(0, 1) }] } as Layout;
    expect(severe(dark)).toEqual(['fault unpowered']);
  });

  it('spare connectors are allowed and told', () => {
    const layout = rack(
      [
        ['c', 'collector', 0],
        ['v', 'voice', 12],
      ],
      [link('r', 'v', '', 'c'), lead('l', 0, 'v')],
    );
    expect(severe(layout)).toEqual([]);
    expect(checksOf(layout)).toContain('spare-connectors');
  });

  it('the stripe lies down; a ribbon laid stripe up is reversed at every header', () => {
    const layout = group(2);
    const [take] = layout.takes;
    const turned = {
      ...layout,
      takes: [
        {
          ...take,
          ribbons: take?.ribbons.map((ribbon) => (ribbon.id === 'r' ? { ...ribbon, stripe: 'up' } : ribbon)),
        },
      ],
    } as Layout;
    expect(severe(turned)).toEqual(Array(3).fill('damage stripe-reversed'));
  });
});
