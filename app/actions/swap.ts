import { type Editor, shownTake } from '../editor.ts';
import { type Action, perform } from './action.ts';
import { modulesSelected } from './selected.ts';

function swapSelected(editor: Editor): void {
  const [a, b] = modulesSelected(editor);
  if (a && b) perform(editor, { type: 'swap-modules', take: shownTake(editor).id, modules: [a.id, b.id] });
}

export const swap: Action = {
  id: 'swap',
  label: () => 'Swap places',
  icon: 'swap',
  shortcuts: [{ key: 'x' }],
  enabled: (editor) => modulesSelected(editor).length === 2,
  run: swapSelected,
};
