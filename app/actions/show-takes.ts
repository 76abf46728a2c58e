import { type Action, always } from './action.ts';

/** Opens what there is to do with takes: their order, what differs, and what the program proposes; or shuts it. */
export const showTakes: Action = {
  id: 'show-takes',
  label: () => 'Compare and propose takes',
  shortcuts: [{ key: 'g' }],
  enabled: always,
  run: ({ session }) => session.setState(({ fold }) => ({ fold: fold === 'takes' ? null : 'takes' })),
};
