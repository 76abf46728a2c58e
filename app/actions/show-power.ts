import { type Action, always } from './action.ts';

/** Opens the panel of what supplies give and modules get, or shuts it. */
export const showPower: Action = {
  id: 'show-power',
  label: () => 'Power',
  shortcuts: [{ key: 'v' }],
  enabled: always,
  run: ({ session }) => session.setState(({ fold }) => ({ fold: fold === 'power' ? null : 'power' })),
};
