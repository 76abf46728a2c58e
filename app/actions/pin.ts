import { type Editor, shownTake } from '../editor.ts';
import { type Action, perform } from './action.ts';
import { hasModules, idsOf, modulesSelected } from './selected.ts';

const allPinned = (editor: Editor): boolean => modulesSelected(editor).every(({ pinned }) => pinned);

export const pin: Action = {
  id: 'pin',
  label: (editor) => (hasModules(editor) && allPinned(editor) ? 'Unpin' : 'Pin in place'),
  icon: 'pin',
  shortcuts: [{ key: 'p' }],
  enabled: hasModules,
  run: (editor) =>
    perform(editor, {
      type: 'pin-modules',
      take: shownTake(editor).id,
      modules: idsOf(modulesSelected(editor)),
      pinned: !allPinned(editor),
    }),
};
