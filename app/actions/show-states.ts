import { type Action, always } from './action.ts';

/** Lays out what the layout was before, to bring one of it back. */
export const showStates: Action = {
  id: 'show-states',
  label: () => 'Earlier states',
  enabled: always,
  run({ layouts, session }) {
    const { id = '', title } = layouts.layout();
    session.setState({ statesOf: { id, title } });
  },
};
