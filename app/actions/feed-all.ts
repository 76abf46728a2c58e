import { shownAnalysis } from '../editor.ts';
import type { Action } from './action.ts';

/** Gives every group that draws something and has no power lead one; what it chooses is worked out when it is asked. */
export const feedAllThatNeed: Action = {
  id: 'feed-all',
  label: () => 'Feed all that need it',
  enabled: (editor) => shownAnalysis(editor).notes.some(({ check }) => check === 'unpowered'),
  run: async (editor) => (await import('../store/feed-all.ts')).feedAllIn(editor),
};
