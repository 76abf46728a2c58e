import type { Header, Layout, Ribbon, Seat } from '../../src/layout/layout.ts';
import { bigLayout } from '../../tests/support/big-take.ts';

const HUB_Y = [24, 44, 64];

const headers: Header[] = [
  ...HUB_Y.map(
    (yMm, i): Header => ({
      id: `shore-${i}`,
      bus: 'shore',
      role: 'member',
      xMm: 12.7,
      yMm,
      pin1: 'down',
    }),
  ),
  { id: 'power', bus: 'power-10', role: 'member', xMm: 12.7, yMm: 92, pin1: 'down' },
];

const on = (module: string, header: string, connector: number): Seat => ({
  connector,
  on: { module, header },
});

/** Three flat ribbons from the hub to its neighbour, and a lead to the board of their row. */
const ribbons: Ribbon[] = [
  ...HUB_Y.map((_, i) => ({
    id: `hub-${i}`,
    kind: 'shore-2',
    label: `H${i}`,
    seats: [on('hub', `shore-${i}`, 1), on('other', `shore-${i}`, 0)],
  })),
  {
    id: 'hub-lead',
    kind: 'lead-10-600',
    label: 'HL',
    seats: [{ connector: 0, on: { board: 'board-hub', header: '1' } }, on('hub', 'power', 1)],
  },
];

/**
 * So many modules, and above them a row with the one that is dragged: a module with four ribbons, its
 * neighbour, and free rail beside it.
 */
export function hubLayout(modules: number): Layout {
  const big = bigLayout(modules);
  const [take] = big.takes;
  const [supply] = take?.supplies ?? [];
  if (!take || !supply) throw new Error('no take');
  const board = {
    id: 'board-hub',
    name: 'Board hub',
    row: 'hub-row',
    xMm: 500,
    headers: [{ id: '1', bus: 'power-16', pin1: 'down' as const }],
  };
  const kind = { id: 'hub', name: 'Hub', widthHp: 5, depthMm: 30, draws: { '+12': 40 }, headers };
  return {
    ...big,
    kit: { ...big.kit, modules: [...big.kit.modules, kind] },
    takes: [
      {
        ...take,
        rows: [{ id: 'hub-row', widthHp: 168, heightU: 3, depthMm: 56 }, ...take.rows],
        supplies: [{ ...supply, boards: [...supply.boards, board] }],
        modules: [
          ...take.modules,
          { id: 'hub', kind: 'hub', row: 'hub-row', atHp: 40, label: 'Hub' },
          { id: 'other', kind: 'hub', row: 'hub-row', atHp: 45, label: 'Other' },
        ],
        ribbons: [...take.ribbons, ...ribbons],
      },
    ],
  };
}
