import { fail, ok, type Result } from '../../src/index.ts';
import { download } from './download.ts';
import { fileNameOf } from './file-name.ts';

/** Layouts are text of a few hundred kB at most; more is some other file. */
const MOST_BYTES = 32 * 1024 * 1024;

/** The way of layouts out of the browser and into it. */
export interface Files {
  /** The text of a file that the user picks; `null` when nothing was picked. */
  pick(): Promise<Result<string | null, string>>;
  /** The text of a file that the user dropped. */
  read(file: File): Promise<Result<string, string>>;
  /** Whether it was saved; false when the user thought better of it. */
  save(title: string, text: string): Promise<Result<boolean, string>>;
}

/** The two file doors that not every browser has, as far as they are used here. */
interface PickerWindow {
  showOpenFilePicker?(options: object): Promise<{ getFile(): Promise<File> }[]>;
  showSaveFilePicker?(options: object): Promise<{
    createWritable(): Promise<{ write(text: string): Promise<void>; close(): Promise<void> }>;
  }>;
}

const TYPES = [{ description: 'Layout', accept: { 'application/json': ['.json'] } }];

const isAbort = (error: unknown): boolean => error instanceof DOMException && error.name === 'AbortError';

async function readText(file: File): Promise<Result<string, string>> {
  if (file.size > MOST_BYTES) return fail('The file is too large to be a layout.');
  try {
    return ok(await file.text());
  } catch {
    return fail('The file could not be read.');
  }
}

function askForFile(): Promise<File | null> {
  return new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = '.json,application/json';
    input.onchange = () => resolve(input.files?.[0] ?? null);
    input.oncancel = () => resolve(null);
    input.click();
  });
}

export function browserFiles(pickers: PickerWindow = window as PickerWindow): Files {
  return {
    read: readText,
    async pick() {
      try {
        const file = pickers.showOpenFilePicker
          ? await (await pickers.showOpenFilePicker({ types: TYPES }))[0]?.getFile()
          : await askForFile();
        return file ? await readText(file) : ok(null);
      } catch (error) {
        return isAbort(error) ? ok(null) : fail('The file could not be opened.');
      }
    },
    async save(title, text) {
      const name = fileNameOf(title);
      try {
        if (!pickers.showSaveFilePicker) {
          download(name, text);
          return ok(true);
        }
        const handle = await pickers.showSaveFilePicker({ suggestedName: name, types: TYPES });
        const writable = await handle.createWritable();
        await writable.write(text);
        await writable.close();
        return ok(true);
      } catch (error) {
        return isAbort(error) ? ok(false) : fail('The file could not be saved.');
      }
    },
  };
}
