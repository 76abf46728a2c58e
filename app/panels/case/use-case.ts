import type { Edit } from '../../../src/index.ts';
import { perform } from '../../actions/action.ts';
import type { SelectionKey } from '../../canvas/model.ts';
import { useEditor } from '../../hooks.ts';

/** What the fields of the case do to it. */
export function useCase() {
  const editor = useEditor();
  return {
    editor,
    perform: (edit: Edit) => perform(editor, edit),
    /** Outlines on the drawing what is being typed at. */
    pick: (key: SelectionKey) => {
      const { selection } = editor.session.getState();
      if (selection.size !== 1 || !selection.has(key))
        editor.session.setState({ selection: new Set([key]), focus: null });
    },
  };
}
