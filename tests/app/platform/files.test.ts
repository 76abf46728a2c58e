import { describe, expect, test } from 'vitest';
import { browserFiles } from '../../../app/platform/files.ts';

const abort = () => Promise.reject(new DOMException('', 'AbortError'));
const breakDown = () => Promise.reject(new Error('disk'));

const picking = (file: File) =>
  browserFiles({ showOpenFilePicker: async () => [{ getFile: async () => file }] });

describe('opening with the browser’s own dialog', () => {
  test('gives the text of the file', async () => {
    expect(await picking(new File(['{}'], 'a.json')).pick()).toEqual({ ok: true, value: '{}' });
  });

  test('second thoughts are no failure, a broken disk is', async () => {
    expect(await browserFiles({ showOpenFilePicker: abort }).pick()).toEqual({ ok: true, value: null });
    expect(await browserFiles({ showOpenFilePicker: breakDown }).pick()).toEqual({
      ok: false,
      error: 'The file could not be opened.',
    });
  });

  test('a file that is far too large is not read', async () => {
    const huge = { size: 33 * 1024 * 1024, text: breakDown } as unknown as File;
    expect(await picking(huge).pick()).toEqual({ ok: false, error: 'The file is too large to be a layout.' });
  });
});

describe('saving with the browser’s own dialog', () => {
  test('writes the text under a harmless name', async () => {
    const written: string[] = [];
    let offered: unknown;
    const files = browserFiles({
      showSaveFilePicker: async (options) => {
        offered = options;
        const writable = { write: async (text: string) => void written.push(text), close: async () => {} };
        return { createWritable: async () => writable };
      },
    });
    expect(await files.save('my/case', 'text')).toEqual({ ok: true, value: true });
    expect(written).toEqual(['text']);
    expect(offered).toMatchObject({ suggestedName: 'my case.ribbonwright.json' });
  });

  test('second thoughts are no failure, a broken disk is', async () => {
    expect(await browserFiles({ showSaveFilePicker: abort }).save('a', '')).toEqual({
      ok: true,
      value: false,
    });
    expect((await browserFiles({ showSaveFilePicker: breakDown }).save('a', '')).ok).toBe(false);
  });
});
