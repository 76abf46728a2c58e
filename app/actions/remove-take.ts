import { shownTake } from '../editor.ts';
import { type Action, perform } from './action.ts';
import { showTake } from './show-take.ts';

export const removeTake: Action = {
  id: 'remove-take',
  label: (editor) => `Remove the take ${shownTake(editor).name}`,
  icon: 'remove',
  enabled: ({ layouts }) => layouts.layout().takes.length > 1,
  run: (editor) => {
    const { takes } = editor.layouts.layout();
    const gone = shownTake(editor);
    const neighbour = takes[takes.indexOf(gone) - 1] ?? takes[1];
    perform(editor, { type: 'remove-take', take: gone.id });
    if (neighbour) showTake(editor, neighbour.id);
  },
};
