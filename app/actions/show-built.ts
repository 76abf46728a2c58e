import { type Action, always } from './action.ts';

/** Opens what was done and found at the bench, or shuts it. */
export const showBuilt: Action = {
  id: 'show-built',
  label: () => 'As built',
  shortcuts: [{ key: 'a' }],
  enabled: always,
  run: ({ session }) => session.setState(({ fold }) => ({ fold: fold === 'built' ? null : 'built' })),
};
