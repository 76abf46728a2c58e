import { fail } from '../../src/index.ts';
import { openText } from '../actions/open-text.ts';
import type { Editor } from '../editor.ts';
import { listen } from './listen.ts';

const bringsFiles = ({ dataTransfer }: DragEvent): boolean => dataTransfer?.types.includes('Files') === true;

async function openDropped(editor: Editor, file: File): Promise<void> {
  const files = await editor.platform.files();
  await openText(editor, await files.read(file));
}

/** Where the program is installed, the system may hand it files; as far as they are used here. */
interface LaunchWindow {
  readonly launchQueue?: {
    setConsumer(take: (launch: { readonly files: readonly { getFile(): Promise<File> }[] }) => void): void;
  };
}

async function openLaunched(editor: Editor, handle: { getFile(): Promise<File> }): Promise<void> {
  const files = await editor.platform.files();
  const file = await handle.getFile().catch(() => null);
  await openText(editor, file ? await files.read(file) : fail('The file could not be opened.'));
}

/** Opens a file that is dropped anywhere on the window, or that the system opens with the installed program. */
export const listenToFiles = (editor: Editor): (() => void) => {
  (window as LaunchWindow).launchQueue?.setConsumer(({ files: [handle] }) => {
    if (handle) void openLaunched(editor, handle);
  });
  return listen(window, {
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
};
