import { type Editor, shownTake } from '../editor.ts';
import type { Action } from './action.ts';
import { runAndSelect } from './run-and-select.ts';
import { hasModules, idsOf, modulesSelected } from './selected.ts';

const duplicateSelected = (editor: Editor): void =>
  runAndSelect(
    editor,
    {
      type: 'duplicate-modules',
      take: shownTake(editor).id,
      modules: idsOf(modulesSelected(editor)),
    },
    'Duplicated.',
  );

export const duplicate: Action = {
  id: 'duplicate',
  label: () => 'Duplicate',
  icon: 'duplicate',
  shortcuts: [{ key: 'd', mod: true }],
  enabled: hasModules,
  run: duplicateSelected,
};
