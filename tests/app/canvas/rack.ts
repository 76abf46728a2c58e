import type { Kit, Module, Ribbon, Take, WholeTake } from '../../../src/index.ts';
import { deriveTake } from '../../../src/index.ts';

/*
 * An invented rack for the canvas: rows of 5 HP modules with four headers each, in groups of five that four
 * stiff ribbons join, as many as asked for.
 */
const HEADER_YS = [30, 55, 80, 104] as const;

const GROUP = 5;

const PER_ROW = 20;

const KIT: Kit = {
  voltages: [
    { id: '+12', volts: 12 },
    { id: '-12', volts: -12 },
  ],
  buses: [
    {
      id: 'shore',
      name: 'Shore',
      pinout: ['-12', '-12', 'GND', 'GND', 'GND', 'GND', '+12', '+12', 'mix', 'strike'],
    },
    { id: 'power', name: 'Power', pinout: ['-12', '-12', 'GND', 'GND', 'GND', 'GND', '+12', '+12', '', ''] },
  ],
  modules: [
    {
      id: 'cobble',
      name: 'Cobble',
      widthHp: 5,
      depthMm: 30,
      draws: {},
      headers: HEADER_YS.map((yMm, i) => ({
        id: `h${i}`,
        bus: 'shore',
        role: 'member' as const,
        xMm: 12.7,
        yMm,
        pin1: 'down' as const,
      })),
    },
    {
      id: 'boulder',
      name: 'Boulder',
      widthHp: 15,
      depthMm: 34,
      draws: {},
      headers: [{ id: 'p', bus: 'power', role: 'member', xMm: 60, yMm: 64, pin1: 'down' }],
    },
  ],
  ribbons: [
    {
      id: 'stiff',
      name: 'Stiff',
      bus: 'shore',
      lay: 'flat',
      connectors: Array.from({ length: GROUP }, (_, i) => ({ atMm: i * 25.4 })),
    },
    {
      id: 'pair',
      name: 'Pair',
      bus: 'shore',
      lay: 'flat',
      connectors: [{ atMm: 0 }, { atMm: 25.4 }, { atMm: 50.8 }],
    },
    { id: 'lead', name: 'Lead', bus: 'power', lay: 'loose', connectors: [{ atMm: 0 }, { atMm: 400 }] },
  ],
};

const module = (i: number): Module => ({
  id: `m${i}`,
  kind: 'cobble',
  row: `r${Math.floor(i / PER_ROW)}`,
  atHp: (i % PER_ROW) * 5,
});

/** Four ribbons over each group; connector 0 lies leftmost seen from the rear, so on the last module. */
function ribbonsOver(group: number): Ribbon[] {
  return HEADER_YS.map((_, h) => ({
    id: `g${group}h${h}`,
    kind: 'stiff',
    seats: Array.from({ length: GROUP }, (_, i) => ({
      connector: GROUP - 1 - i,
      on: { module: `m${group * GROUP + i}`, header: `h${h}` },
    })),
  }));
}

/** A take of so many modules, a multiple of five, each on four ribbons. */
export function rackTake(modules: number): Take {
  const rows = Math.ceil(modules / PER_ROW);
  return {
    id: 'take',
    name: 'Take',
    rows: Array.from({ length: rows }, (_, i) => ({ id: `r${i}`, widthHp: 104, heightU: 3, depthMm: 56 })),
    supplies: [],
    modules: Array.from({ length: modules }, (_, i) => module(i)),
    ribbons: Array.from({ length: modules / GROUP }, (_, group) => ribbonsOver(group)).flat(),
  };
}

export const deriveRack = (take: Take): WholeTake => deriveTake(KIT, take);

/** The take with one module moved along its row. */
export const withMoved = (take: Take, id: string, byHp: number): Take => ({
  ...take,
  modules: take.modules.map((one) => (one.id === id ? { ...one, atHp: one.atHp + byHp } : one)),
});

/** Two rows of unequal width, a board, a lead and a stray: a bit of everything. */
export function mixedTake(): Take {
  return {
    id: 'mixed',
    name: 'Mixed',
    rows: [
      { id: 'upper', name: 'Upper row', widthHp: 104, heightU: 3, depthMm: 56 },
      { id: 'lower', widthHp: 84, heightU: 3, depthMm: 50 },
    ],
    supplies: [
      {
        id: 's',
        name: 'Supply',
        ratings: { '+12': 1000, '-12': 1000 },
        boards: [
          {
            id: 'board',
            name: 'Board',
            row: 'lower',
            xMm: 300,
            widthMm: 60,
            headers: [
              { id: '1', bus: 'power', dxMm: 10, pin1: 'down' },
              { id: '2', bus: 'power', dxMm: 30, pin1: 'down' },
            ],
          },
        ],
      },
    ],
    modules: [
      { id: 'a', kind: 'cobble', row: 'upper', atHp: 0 },
      { id: 'b', kind: 'cobble', row: 'upper', atHp: 5.5 },
      { id: 'c', kind: 'cobble', row: 'upper', atHp: 10 },
      { id: 'd', kind: 'boulder', row: 'lower', atHp: 3, pinned: true },
    ],
    ribbons: [
      {
        id: 's1',
        kind: 'pair',
        seats: [
          { connector: 0, on: { module: 'c', header: 'h0' } },
          { connector: 1, on: { module: 'b', header: 'h0' } },
          { connector: 2, on: { module: 'a', header: 'h0' } },
        ],
      },
      {
        id: 'l1',
        kind: 'lead',
        seats: [
          { connector: 0, on: { board: 'board', header: '1' } },
          { connector: 1, on: { module: 'd', header: 'p' } },
        ],
      },
    ],
  };
}
