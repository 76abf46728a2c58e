import { type Action, always } from './action.ts';

/** Opens all that there is to the stock: kinds, buses, limits, counts. */
export const showStock: Action = {
  id: 'show-stock',
  label: () => 'Stock',
  shortcuts: [{ key: 's' }],
  enabled: always,
  run: ({ session }) => session.setState({ stockDesk: 'modules' }),
};
