import type { Action } from './action.ts';

/** Shows what the layout has that the one that it was made from has not, to take over some of it there. */
export const compareWithKin: Action = {
  id: 'compare-with-kin',
  label: () => 'Compare with what it was made from',
  enabled: ({ layouts }) => layouts.layout().parent !== undefined,
  run: ({ layouts, session }) => session.setState({ offered: { layout: layouts.layout(), by: 'here' } }),
};
