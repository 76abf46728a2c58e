import { shownTake } from '../editor.ts';
import { type Action, always, perform } from './action.ts';
import { showTake } from './show-take.ts';

export const addTake: Action = {
  id: 'add-take',
  label: () => 'Add a take like this one',
  icon: 'plus',
  enabled: always,
  run: (editor) => {
    perform(editor, { type: 'add-take', from: shownTake(editor).id });
    const added = editor.layouts.layout().takes.at(-1);
    if (added) showTake(editor, added.id);
  },
};
