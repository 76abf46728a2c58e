import { ok } from '../../src/index.ts';
import type { Editor } from '../editor.ts';
import { type Action, always } from './action.ts';
import { openText } from './open-text.ts';

async function pickAndOpen(editor: Editor): Promise<void> {
  const files = await editor.platform.files();
  const picked = await files.pick();
  if (!picked.ok) await openText(editor, picked);
  else if (picked.value !== null) await openText(editor, ok(picked.value));
}

export const openFile: Action = {
  id: 'open-file',
  label: () => 'Open a file…',
  icon: 'open',
  shortcuts: [{ key: 'o', mod: true }],
  enabled: always,
  run: (editor) => void pickAndOpen(editor),
};
