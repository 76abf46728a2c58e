import { type Action, always } from './action.ts';

/** Everything that can be done, and all places to go to, by typing some of its name. */
export const findCommand: Action = {
  id: 'find-command',
  label: () => 'Find a command',
  shortcuts: [{ key: 'k', mod: true }],
  enabled: always,
  run: ({ session }) => session.setState({ help: 'find' }),
};
