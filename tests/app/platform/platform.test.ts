import { describe, expect, test } from 'vitest';
import { fileNameOf } from '../../../app/platform/file-name.ts';
import { browserPreferences } from '../../../app/platform/preferences.ts';

// Names kept for devices, whatever follows the dot, and 255 bytes for a name: from memory.
describe('file names', () => {
  test.each([
    ['Shoreline kit', 'Shoreline kit'],
    ['../../etc/passwd', 'etc passwd'],
    ['a:b*c?"<>|\\d', 'a b c d'],
    ['  .hidden. ', 'hidden'],
    ['', 'layout'],
    ['\u202Egnp.exe', 'gnp.exe'],
    ['con', 'con_'],
    ['Con.kit', 'Con_.kit'],
    ['COM\u00b9 . a', 'COM\u00b9_ . a'],
    ['console', 'console'],
    ['a\u2066b\u200bc\u0000d\u2028e', 'a b c d e'],
    ['e\u0301tude', '\u00e9tude'],
    ['x'.repeat(300), 'x'.repeat(80)],
    // 200 bytes.
    ['\ud83e\udd41'.repeat(200), '\ud83e\udd41'.repeat(50)],
  ])('%j', (title, name) => {
    expect(fileNameOf(title)).toBe(`${name}.ribbonwright.json`);
  });
});

describe('preferences', () => {
  const memory = (): Storage => {
    const map = new Map<string, string>();
    return {
      getItem: (key) => map.get(key) ?? null,
      setItem: (key, value) => void map.set(key, value),
    } as Storage;
  };

  test('give back what was written, nothing where nothing was', () => {
    const storage = memory();
    const preferences = browserPreferences(() => storage);
    expect(preferences.read('theme')).toEqual({ ok: true, value: undefined });
    preferences.write('theme', 'dim');
    expect(preferences.read('theme')).toEqual({ ok: true, value: 'dim' });
  });

  test('never throw: storage forbidden, full, or full of something else', () => {
    const forbidden = browserPreferences(() => {
      throw new Error('forbidden');
    });
    expect(forbidden.read('theme').ok).toBe(false);
    expect(forbidden.write('theme', 'dim').ok).toBe(false);
    const storage = memory();
    storage.setItem('ribbonwright.theme', '{nonsense');
    expect(browserPreferences(() => storage).read('theme').ok).toBe(false);
  });
});
