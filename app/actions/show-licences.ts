import { type Action, always } from './action.ts';

/** Tells whose work is in the program, and under which terms. */
export const showLicences: Action = {
  id: 'show-licences',
  label: () => 'Licences',
  enabled: always,
  run: ({ session }) => session.setState({ showsLicences: true }),
};
