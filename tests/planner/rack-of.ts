import { kind, POWER16, powerHeader, ribbonKind, SHORE, shoreHeader } from '../../src/checks/example.ts';
import type { Kit, Module, Take } from '../../src/layout/layout.ts';

/**
 * A rack of so many modules, nine voices to a collector, twenty modules to a row, and twelve kinds of ribbon: stiff
 * and bending ones, and leads. Every voice has a power header of its own; every third stands half an HP off.
 */
export function rackOf(modules: number): { readonly kit: Kit; readonly take: Take } {
  const stiff = [2, 3, 4, 5, 6, 7].map((n) =>
    ribbonKind(
      `stiff-${n}`,
      Array.from({ length: n }, (_, i) => 25.4 * i),
      { owned: 2, price: n },
    ),
  );
  const bending = [3, 5, 7].map((n) =>
    ribbonKind(
      `bending-${n}`,
      Array.from({ length: n }, (_, i) => 36 * i),
      { bends: true, owned: 1, price: 2 * n },
    ),
  );
  const leads = [250, 400, 700].map((mm) =>
    ribbonKind(`lead-${mm}`, [0, mm], { bus: 'power', lay: 'loose', owned: 3, price: mm / 100 }),
  );
  const perRow = 20;
  const rows = Array.from({ length: Math.ceil(modules / perRow) }, (_, i) => ({
    id: `row-${i}`,
    widthHp: 112,
    heightU: 3,
    depthMm: 60,
  }));
  const placed = Array.from({ length: modules }, (_, i): Module => {
    const at = i % perRow;
    return {
      id: `m${i}`,
      kind: i % 10 === 4 ? 'collector' : 'voice',
      row: `row-${Math.floor(i / perRow)}`,
      atHp: 5 * at + (at >= 10 ? 4 : 0) + (i % 10 === 8 ? 0.5 : 0) + (i % 10 > 8 ? 1 : 0),
    };
  });
  const voice = kind('voice', {
    draws: { '+12': 40, '-12': 25 },
    headers: [shoreHeader(), powerHeader({ xMm: 12.7 })],
  });
  const collector = kind('collector', { draws: { '+12': 50 }, headers: [shoreHeader({ role: 'host' })] });
  return {
    kit: {
      voltages: [
        { id: '+12', volts: 12 },
        { id: '-12', volts: -12 },
      ],
      buses: [
        { ...SHORE, membersPerHost: 9 },
        { id: 'power', name: 'Power', pinout: POWER16.pinout.slice(0, 10) },
      ],
      modules: [voice, collector],
      ribbons: [...stiff, ...bending, ...leads],
    },
    take: {
      id: 'take',
      name: 'Take',
      rows,
      supplies: [
        {
          id: 'supply',
          name: 'Supply',
          ratings: { '+12': 9000, '-12': 9000 },
          boards: rows.map((row, i) => ({
            id: `board-${i}`,
            name: `Board ${i + 1}`,
            row: row.id,
            xMm: 200,
            headers: Array.from({ length: 12 }, (_, n) => ({
              id: `${n + 1}`,
              bus: 'power',
              dxMm: 14 * n,
              pin1: 'down',
            })),
          })),
        },
      ],
      modules: placed,
      ribbons: [],
    },
  };
}
