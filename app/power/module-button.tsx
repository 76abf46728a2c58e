import type { ReactNode } from 'react';
import { moduleBox } from '../../src/index.ts';
import { selectionKey } from '../canvas/model.ts';
import { type Editor, shownAnalysis } from '../editor.ts';
import { useEditor, useSession } from '../hooks.ts';
import { reveal } from '../store/focus-note.ts';
import { selectionOf } from '../store/selection.ts';
import { sheetNow } from '../store/view.ts';

/** Selects a module alone, and brings it into sight. */
function pick(editor: Editor, id: string): void {
  const module = shownAnalysis(editor).derived.places.moduleById.get(id);
  if (!module) return;
  editor.session.setState({ selection: selectionOf('module', [id]), cursor: id, focus: null });
  const { left, right, top, bottom } = moduleBox(sheetNow(editor), module);
  reveal(editor, { x: (left + right) / 2, y: (top + bottom) / 2 });
}

/** A module by its name, which selects it on the drawing. */
export function ModuleButton({ id, children }: { readonly id: string; readonly children: ReactNode }) {
  const editor = useEditor();
  const isSelected = useSession(({ selection }) => selection.has(selectionKey('module', id)));
  return (
    <button type="button" className="to-module" aria-pressed={isSelected} onClick={() => pick(editor, id)}>
      {children}
    </button>
  );
}
