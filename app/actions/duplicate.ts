import { type Editor, shownTake } from '../editor.ts';
import { selectionOf } from '../store/selection.ts';
import { type Action, perform } from './action.ts';
import { hasModules, idsOf, modulesSelected } from './selected.ts';

function duplicateSelected(editor: Editor): void {
  const before = new Set(idsOf(shownTake(editor).modules));
  perform(editor, {
    type: 'duplicate-modules',
    take: shownTake(editor).id,
    modules: idsOf(modulesSelected(editor)),
  });
  const copies = idsOf(shownTake(editor).modules).filter((id) => !before.has(id));
  if (copies.length > 0) editor.session.setState({ selection: selectionOf('module', copies) });
}

export const duplicate: Action = {
  id: 'duplicate',
  label: () => 'Duplicate',
  icon: 'duplicate',
  shortcuts: [{ key: 'd', mod: true }],
  enabled: hasModules,
  run: duplicateSelected,
};
