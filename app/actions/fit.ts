import { type Action, always } from './action.ts';

export const fit: Action = {
  id: 'fit',
  label: () => 'Fit the sheet',
  icon: 'fit',
  shortcuts: [{ key: 'f' }, { key: '0' }],
  whileDragging: true,
  enabled: always,
  run: ({ session }) => session.setState({ viewport: null }),
};
