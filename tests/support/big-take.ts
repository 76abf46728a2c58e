import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout, Module, Ribbon, Row, Supply } from '../../src/layout/layout.ts';

/** Modules in one group: a Jetty, four Cobbles and a Boulder on one stiff ribbon, fed by one lead. */
const GROUP = 6;
const GROUP_HP = 42;
const GROUPS_PER_ROW = 4;

/**
 * The demo's first take many times over: so many modules (rounded up to whole groups) in rows of four
 * groups, each group linked by a ribbon and fed by a lead of its own.
 */
export function bigLayout(modules: number): Layout {
  const demo = demoLayout();
  const groups = Math.ceil(modules / GROUP);
  const rowCount = Math.ceil(groups / GROUPS_PER_ROW);
  const rows: Row[] = Array.from({ length: rowCount }, (_, i) => ({
    id: `row-${i}`,
    widthHp: 168,
    heightU: 3,
    depthMm: 56,
  }));
  const supplies: Supply[] = [
    {
      id: 'supply',
      name: 'Supply',
      ratings: { '+12': 1e6, '-12': 1e6 },
      boards: rows.map(({ id }) => ({
        id: `board-${id}`,
        name: `Board ${id}`,
        row: id,
        xMm: 400,
        headers: Array.from({ length: GROUPS_PER_ROW }, (_, i) => ({
          id: `${i}`,
          bus: 'power-16',
          dxMm: 14 * i,
          pin1: 'down',
        })),
      })),
    },
  ];
  const placed: Module[] = [];
  const ribbons: Ribbon[] = [];
  for (let g = 0; g < groups; g++) {
    const row = `row-${Math.floor(g / GROUPS_PER_ROW)}`;
    const left = (g % GROUPS_PER_ROW) * GROUP_HP;
    const id = (name: string): string => `${name}-${g}`;
    const put = (name: string, kind: string, atHp: number): void => {
      placed.push({ id: id(name), kind, row, atHp: left + atHp });
    };
    put('j', 'jetty', 0);
    for (let i = 1; i < 5; i++) put(`c${i}`, 'cobble', 5 * i);
    put('b', 'boulder', 25);
    const onShore = (connector: number, name: string) => ({
      connector,
      on: { module: id(name), header: 'shore' },
    });
    ribbons.push({
      id: id('s'),
      kind: 'shore-7',
      seats: [onShore(0, 'b'), ...[4, 3, 2, 1].map((i) => onShore(6 - i, `c${i}`)), onShore(6, 'j')],
    });
    ribbons.push({
      id: id('l'),
      kind: 'lead-10-600',
      seats: [
        { connector: 0, on: { board: `board-${row}`, header: `${g % GROUPS_PER_ROW}` } },
        { connector: 1, on: { module: id('b'), header: 'power' } },
      ],
    });
  }
  return {
    ...demo,
    title: `${placed.length} modules`,
    takes: [{ id: 'big', name: 'Big', rows, supplies, modules: placed, ribbons }],
  };
}
