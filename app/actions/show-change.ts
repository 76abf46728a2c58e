import { takeInCase } from '../../src/index.ts';
import { shownTake } from '../editor.ts';
import type { Action } from './action.ts';

/** Opens the way from what is in the case to the take shown, or shuts it. */
export const showChange: Action = {
  id: 'show-change',
  label: () => 'From what is in the case to this take',
  shortcuts: [{ key: 'a', shift: true }],
  enabled: (editor) => {
    const inCase = takeInCase(editor.layouts.layout());
    return inCase !== undefined && inCase.id !== shownTake(editor).id;
  },
  run: ({ session }) => session.setState(({ fold }) => ({ fold: fold === 'change' ? null : 'change' })),
};
