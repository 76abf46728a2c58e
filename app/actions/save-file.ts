import type { Editor } from '../editor.ts';
import { type Action, always } from './action.ts';

async function writeAndSave({ layouts, platform, session }: Editor): Promise<void> {
  const layout = layouts.layout();
  const [{ writeLayout }, files] = await Promise.all([import('../../src/document.ts'), platform.files()]);
  const saved = await files.save(layout.title, writeLayout(layout));
  if (!saved.ok) session.setState({ banner: saved.error });
}

export const saveFile: Action = {
  id: 'save-file',
  label: () => 'Save as a file…',
  icon: 'save',
  shortcuts: [{ key: 's', mod: true }],
  enabled: always,
  run: (editor) => void writeAndSave(editor),
};
