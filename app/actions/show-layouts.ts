import { type Action, always } from './action.ts';

/** Lays out all that is kept on this device. */
export const showLayouts: Action = {
  id: 'show-layouts',
  label: () => 'My layouts',
  icon: 'layouts',
  shortcuts: [{ key: 'm' }],
  enabled: always,
  run: ({ session }) => session.setState({ showsLayouts: true }),
};
