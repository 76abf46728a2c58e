import { fail, ok, type Result } from '../../src/index.ts';
import { download } from './download.ts';
import { fileNameOf } from './file-name.ts';

/** Layouts are text of a few hundred kB at most; more is some other file. */
const MOST_BYTES = 32 * 1024 * 1024;

/** Layouts, and tables as spreadsheets save them. */
export type FileSort = 'layout' | 'table';

/** The way of layouts and tables out of the browser and into it. */
export interface Files {
  /** The text of a file that the user picks; `null` when nothing was picked. */
  pick(sort?: FileSort): Promise<Result<string | null, string>>;
  /** The text of a file that the user dropped. */
  read(file: File, sort?: FileSort): Promise<Result<string, string>>;
  /** Whether it was saved; false when the user thought better of it. */
  save(title: string, text: string, sort?: FileSort): Promise<Result<boolean, string>>;
}

/** The two file doors that not every browser has, as far as they are used here. */
interface PickerWindow {
  showOpenFilePicker?(options: object): Promise<{ getFile(): Promise<File> }[]>;
  showSaveFilePicker?(options: object): Promise<{
    createWritable(): Promise<{ write(text: string): Promise<void>; close(): Promise<void> }>;
  }>;
}

interface Type {
  readonly description: string;
  /** What one may be of and end in. */
  readonly reads: Readonly<Record<string, readonly string[]>>;
  readonly writes: Readonly<Record<string, readonly string[]>>;
}

const TYPES: Readonly<Record<FileSort, Type>> = {
  layout: {
    description: 'Layout',
    reads: { 'application/json': ['.json'] },
    writes: { 'application/json': ['.json'] },
  },
  table: {
    description: 'Table',
    reads: { 'text/csv': ['.csv', '.tsv', '.txt'] },
    writes: { 'text/csv': ['.csv'] },
  },
};

const acceptOf = (sort: FileSort): string => Object.entries(TYPES[sort].reads).flat(2).join();

const isAbort = (error: unknown): boolean => error instanceof DOMException && error.name === 'AbortError';

/** Spreadsheets save in the encoding of their system as well; a mark at the start, or bytes that are none, tell which. */
function decode(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

async function readText(file: File, sort: FileSort = 'layout'): Promise<Result<string, string>> {
  if (file.size > MOST_BYTES) return fail(`The file is too large to be a ${sort}.`);
  try {
    if (sort === 'layout') return ok(await file.text());
    return ok(decode(new Uint8Array(await file.arrayBuffer())));
  } catch {
    return fail('The file could not be read.');
  }
}

function askForFile(sort: FileSort): Promise<File | null> {
  return new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = acceptOf(sort);
    input.onchange = () => resolve(input.files?.[0] ?? null);
    input.oncancel = () => resolve(null);
    input.click();
  });
}

export function browserFiles(pickers: PickerWindow = window as PickerWindow): Files {
  return {
    read: readText,
    async pick(sort = 'layout') {
      const { description, reads } = TYPES[sort];
      try {
        const file = pickers.showOpenFilePicker
          ? await (
              await pickers.showOpenFilePicker({ types: [{ description, accept: reads }] })
            )[0]?.getFile()
          : await askForFile(sort);
        return file ? await readText(file, sort) : ok(null);
      } catch (error) {
        return isAbort(error) ? ok(null) : fail('The file could not be opened.');
      }
    },
    async save(title, text, sort = 'layout') {
      const name = fileNameOf(title, sort);
      const { description, writes } = TYPES[sort];
      try {
        if (!pickers.showSaveFilePicker) {
          download(name, text, Object.keys(writes)[0]);
          return ok(true);
        }
        const types = [{ description, accept: writes }];
        const handle = await pickers.showSaveFilePicker({ suggestedName: name, types });
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
