import { openText } from '../actions/open-text.ts';
import type { Editor } from '../editor.ts';
import { listen } from './listen.ts';

const bringsFiles = ({ dataTransfer }: DragEvent): boolean => dataTransfer?.types.includes('Files') === true;

async function openDropped(editor: Editor, file: File): Promise<void> {
  const files = await editor.platform.files();
  await openText(editor, await files.read(file));
}

/** Opens a file that is dropped anywhere on the window. */
export const listenToFiles = (editor: Editor): (() => void) =>
  listen(window, {
    dragover(event) {
      if (bringsFiles(event)) event.preventDefault();
    },
    drop(event) {
      if (!bringsFiles(event)) return;
      event.preventDefault();
      const file = event.dataTransfer?.files[0];
      if (file) void openDropped(editor, file);
    },
  });
