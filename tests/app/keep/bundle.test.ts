import { describe, expect, test } from 'vitest';
import { openText } from '../../../app/actions/open-text.ts';
import { bringBack, readBundle, writeBundle } from '../../../app/keep/bundle.ts';
import { firstRecord, type KeptLayout } from '../../../app/keep/kept-layout.ts';
import { emptyLayout } from '../../../src/layout/starter.ts';
import { Browser, settled } from './browser.ts';

const record = (id: string, title: string): KeptLayout => firstRecord({ ...emptyLayout(), id, title }, id, 5);

async function browserWith(...records: KeptLayout[]) {
  const browser = new Browser();
  const tab = await browser.open();
  for (const one of records) browser.shelf.items.set(one.id, one);
  return { browser, tab, titles: () => browser.all.map(({ title }) => title).sort() };
}

describe('all layouts in one file', () => {
  test('come back on a device that has none, under their own ids', async () => {
    const records = [record('a', 'A'), record('b', 'B')];
    const { browser, tab } = await browserWith();
    expect(await bringBack(tab.driver.editor, writeBundle(records))).toBe('2 layouts brought back.');
    expect(browser.all.map(({ id, text }) => ({ id, text }))).toEqual(
      records.map(({ id, text }) => ({ id, text })),
    );
  });

  test('overwrite nothing: the same is left out, another goes beside', async () => {
    const file = writeBundle([record('a', 'A'), record('b', 'B'), record('c', 'C')]);
    const { browser, tab, titles } = await browserWith(record('a', 'A'), record('b', 'B since'));
    expect(await bringBack(tab.driver.editor, file)).toBe(
      '1 layout brought back. 1 layout brought back beside the newer or older one of the same name. 1 layout here already.',
    );
    expect(titles()).toEqual(['A', 'B', 'B since', 'C']);
    expect(browser.kept('b')?.title).toBe('B since');
    expect(JSON.parse(browser.all.find(({ title }) => title === 'B')?.text ?? '')).toMatchObject({
      parent: 'b',
    });
  });

  test('what cannot be opened is told, and carried in the file as it is', async () => {
    const broken = { ...record('x', 'X'), text: 'nonsense' };
    const newer = { ...record('y', 'Y'), text: record('y', 'Y').text.replace('"version":1', '"version":7') };
    const file = writeBundle([broken, newer, record('a', 'A')]);
    expect(JSON.parse(file).unread).toEqual([{ title: 'X', text: 'nonsense' }]);
    const { tab, titles } = await browserWith();
    const said = await bringBack(tab.driver.editor, file);
    expect(said).toContain('1 layout brought back.');
    expect(said).toContain('made by a newer program');
    expect(titles()).toEqual(['A']);
  });

  test.each([
    ['{"format":"ribbonwright-layouts","version":2,"layouts":[]}', 'newer program'],
    ['{"format":"ribbonwright-layouts","version":1}', 'no list'],
    ['{"format":"ribbonwright-layouts","version":1,"layouts":[]}', 'holds no layouts'],
    ['{"format":"ribbonwright-layouts","version":1,"layouts":[null,7,"x",[]]}', 'Not opened'],
  ])('%s is refused in words', async (text, words) => {
    const { browser, tab } = await browserWith();
    expect(await bringBack(tab.driver.editor, text)).toContain(words);
    expect(browser.all).toEqual([]);
  });

  test.each(['', 'null', '[]', '{"format":"ribbonwright"}', '{"format":"other"}'])(
    '%j is no such file',
    async (text) => {
      expect(await readBundle(text)).toBeNull();
    },
  );

  test('a full shelf is told', async () => {
    const { browser, tab } = await browserWith();
    browser.shelf.fault = 'full';
    expect(await bringBack(tab.driver.editor, writeBundle([record('a', 'A')]))).toContain('did not keep');
  });

  test('are opened like any file, and what is on the screen stays', async () => {
    const { tab, titles } = await browserWith();
    const before = tab.layout;
    await openText(tab.driver.editor, { ok: true, value: writeBundle([record('a', 'A')]) });
    await settled();
    expect(tab.layout).toBe(before);
    expect(titles()).toEqual(['A']);
    expect(tab.driver.editor.session.getState().banner).toBe('1 layout brought back.');
  });
});
