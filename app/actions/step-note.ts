import { type Editor, shownAnalysis } from '../editor.ts';
import { focusNote } from '../store/focus-note.ts';
import type { Action } from './action.ts';

const openNotes = (editor: Editor) => shownAnalysis(editor).notes.filter(({ accepted }) => !accepted);

function stepNote(editor: Editor, step: number): void {
  const notes = openNotes(editor);
  const at = notes.findIndex(({ key }) => key === editor.session.getState().focus);
  const start = at < 0 && step < 0 ? 0 : at;
  const next = notes[(start + step + notes.length) % notes.length];
  if (next) focusNote(editor, next);
}

const hasNotes = (editor: Editor): boolean => openNotes(editor).length > 0;

export const nextNote: Action = {
  id: 'next-note',
  label: () => 'Next note',
  shortcuts: [{ key: 'n' }],
  enabled: hasNotes,
  run: (editor) => stepNote(editor, 1),
};

export const previousNote: Action = {
  id: 'previous-note',
  label: () => 'Previous note',
  shortcuts: [{ key: 'n', shift: true }],
  enabled: hasNotes,
  run: (editor) => stepNote(editor, -1),
};
