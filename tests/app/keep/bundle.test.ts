import { describe, expect, test } from 'vitest';
import { openText } from '../../../app/actions/open-text.ts';
import { bringBack, readBundle, writeBundle } from '../../../app/keep/bundle.ts';
import { firstRecord, type KeptLayout } from '../../../app/keep/kept-layout.ts';
import { packPhotographs } from '../../../app/keep/packed-photographs.ts';
import { emptyLayout } from '../../../src/layout/starter.ts';
import { fakePhotographs } from '../fakes.ts';
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

describe('photographs of rears in the file of all layouts', () => {
  const laid = { mirrored: false, a: 0.2, b: 0, dx: 1, dy: 2 };
  const photograph = (id: string) => ({
    id,
    image: new Blob(['picture'], { type: 'image/webp' }),
    widthPx: 100,
    heightPx: 200,
    laid,
    opacity: 0.6,
  });

  async function fileOfAll(): Promise<string> {
    const shelf = fakePhotographs();
    for (const id of ['a jetty', 'a two words', 'gone jetty']) shelf.shelf.items.set(id, photograph(id));
    return writeBundle([record('a', 'A')], await packPhotographs(shelf, new Set(['a'])));
  }

  test('come along, lie as they lay, and go with a layout that is put beside', async () => {
    const file = await fileOfAll();
    expect(JSON.parse(file).photographs.map(({ kind }: { kind: string }) => kind)).toEqual([
      'jetty',
      'two words',
    ]);
    const { tab, browser } = await browserWith(record('a', 'A since'));
    expect(await bringBack(tab.driver.editor, file)).toContain('2 photographs came along.');
    const copy = browser.all.find(({ title }) => title === 'A');
    const { items } = tab.driver.photographs.shelf;
    expect([...items.keys()]).toEqual([`${copy?.id} jetty`, `${copy?.id} two words`]);
    expect(items.get(`${copy?.id} jetty`)).toMatchObject({ laid, opacity: 0.6, widthPx: 100 });
  });

  test('one that is here stays as it is', async () => {
    const { tab } = await browserWith(record('a', 'A'));
    const mine = { ...photograph('a jetty'), opacity: 0.3 };
    tab.driver.photographs.shelf.items.set('a jetty', mine);
    expect(await bringBack(tab.driver.editor, await fileOfAll())).toBe(
      '1 layout here already. 1 photograph came along.',
    );
    expect(tab.driver.photographs.shelf.items.get('a jetty')).toMatchObject({ opacity: 0.3 });
  });

  test.each([
    ['no picture', { image: '%%%' }],
    ['of another size than it says', { widthPx: 99 }],
    ['laid nowhere', { laid: { ...laid, a: 0 } }],
    ['of a layout that is not in the file', { layout: 'x' }],
    ['nothing at all', null],
  ])('%s: it is told, and the layouts come back', async (_, wrong) => {
    const file = JSON.parse(await fileOfAll());
    const [first, second] = file.photographs;
    file.photographs = [wrong && { ...first, ...wrong }, second];
    const { tab } = await browserWith();
    expect(await bringBack(tab.driver.editor, JSON.stringify(file))).toBe(
      '1 layout brought back. 1 photograph came along. 1 photograph could not be brought back.',
    );
  });
});
