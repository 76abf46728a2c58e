import { type Editor, shownTake } from '../editor.ts';
import { type Action, perform } from './action.ts';
import { copySelected } from './copy.ts';
import { hasModules, idsOf, modulesSelected } from './selected.ts';

/** Copies what is selected and takes it off the rails; `null` where that is no module. */
export function cutSelected(editor: Editor): string | null {
  const text = copySelected(editor);
  if (text === null) return null;
  const modules = idsOf(modulesSelected(editor));
  perform(editor, { type: 'remove-modules', take: shownTake(editor).id, modules });
  return text;
}

export const cut: Action = {
  id: 'cut',
  label: () => 'Cut out with ribbons',
  shortcuts: [{ key: 'x', mod: true }],
  byClipboard: true,
  enabled: hasModules,
  run: (editor) => {
    const text = cutSelected(editor);
    if (text !== null) void editor.platform.clipboard().then((clipboard) => clipboard.put(text));
  },
};
