import { type Action, always } from './action.ts';

/** Opens the panel of rows, supplies and boards, or shuts it. */
export const showCase: Action = {
  id: 'show-case',
  label: () => 'My case',
  shortcuts: [{ key: 'c' }],
  enabled: always,
  run: ({ session }) => session.setState(({ fold }) => ({ fold: fold === 'case' ? null : 'case' })),
};
