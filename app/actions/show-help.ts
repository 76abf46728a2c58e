import { type Action, always } from './action.ts';

/** Opens the help at its contents. */
export const showHelp: Action = {
  id: 'show-help',
  label: () => 'Help',
  shortcuts: [{ key: '?' }, { key: 'F1' }],
  enabled: always,
  run: ({ session }) => session.setState({ help: 'contents' }),
};

/** All keys, to be read and changed. */
export const showKeys: Action = {
  id: 'show-keys',
  label: () => 'Keys',
  enabled: always,
  run: ({ session }) => session.setState({ help: 'keys' }),
};
