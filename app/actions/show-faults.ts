import { type Action, always } from './action.ts';

/** Opens the panel in which something is broken to see what follows, or searched for; or shuts it. */
export const showFaults: Action = {
  id: 'show-faults',
  label: () => 'Find a fault',
  shortcuts: [{ key: 'd' }],
  enabled: always,
  run: ({ session }) => session.setState(({ fold }) => ({ fold: fold === 'faults' ? null : 'faults' })),
};
