import { BOARD_OF_EIGHT, demoLayout } from './demo.ts';
import type { Layout } from './layout.ts';

/** An empty case with one row, a supply and its board; the demo's kit lies in the stock until there is one's own. */
export const emptyLayout = (): Layout => ({
  format: 'ribbonwright',
  version: 1,
  title: 'My case',
  kit: demoLayout().kit,
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
