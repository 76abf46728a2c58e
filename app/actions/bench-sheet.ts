import { type Action, always } from './action.ts';

/** Opens what is to be printed and taped into the lid. */
export const benchSheet: Action = {
  id: 'bench-sheet',
  label: () => 'Bench sheet…',
  icon: 'print',
  shortcuts: [{ key: 'e' }],
  enabled: always,
  run: ({ session }) => session.setState({ showsSheet: true }),
};
