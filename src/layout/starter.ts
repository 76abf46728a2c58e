import { BOARD_OF_EIGHT, demoLayout } from './demo.ts';
import type { Kit, Layout } from './layout.ts';
import { POWER_BUSES } from './power-buses.ts';

/** A stock without any kind in it: the usual voltages and the two usual power headers (common practice, no source). */
export const emptyKit = (): Kit => ({
  voltages: [
    { id: '+12', volts: 12 },
    { id: '-12', volts: -12 },
    { id: '+5', volts: 5 },
  ],
  buses: POWER_BUSES,
  modules: [],
  ribbons: [],
});

/**
 * An empty case with one row, a supply and its board. The demo's kit lies in the stock until there is one's own,
 * unless another is given; it has the usual power headers, which the board needs.
 */
export const emptyLayout = (kit: Kit = demoLayout().kit): Layout => ({
  format: 'ribbonwright',
  version: 1,
  title: 'My case',
  kit,
  takes: [
    {
      id: 'first',
      name: 'First take',
      rows: [{ id: 'row-1', name: 'Row 1', widthHp: 84, heightU: 3, depthMm: 60 }],
      supplies: [
        {
          id: 'supply',
          name: 'Supply',
          ratings: { '+12': 1600, '-12': 800, '+5': 500 },
          boards: [{ ...BOARD_OF_EIGHT, id: 'board', name: 'Board', row: 'row-1', xMm: 290 }],
        },
      ],
      modules: [],
      ribbons: [],
    },
  ],
});
