import { takeInCase } from '../../src/index.ts';
import { shownTake } from '../editor.ts';
import { type Action, always, perform } from './action.ts';

/** Says that the take shown is what stands in the case, or that none is. */
export const markInCase: Action = {
  id: 'mark-in-case',
  label: (editor) =>
    takeInCase(editor.layouts.layout())?.id === shownTake(editor).id
      ? 'No longer in the case'
      : 'Mark this take as in the case',
  enabled: always,
  run: (editor) => {
    const { id } = shownTake(editor);
    const isIn = takeInCase(editor.layouts.layout())?.id === id;
    perform(editor, { type: 'mark-in-case', inCase: isIn ? null : id });
  },
};
