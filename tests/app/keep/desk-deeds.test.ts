import { describe, expect, test } from 'vitest';
import { takeLayout } from '../../../app/actions/take-layout.ts';
import {
  deleteOne,
  duplicateOne,
  listKept,
  putBack,
  renameOne,
  saveAll,
  saveOne,
} from '../../../app/keep/desk-deeds.ts';
import type { KeptLayout } from '../../../app/keep/kept-layout.ts';
import { agoWords, keepingWords } from '../../../app/keep/words.ts';
import { emptyLayout } from '../../../src/layout/starter.ts';
import { Browser, type Tab } from './browser.ts';

async function twoLayouts() {
  const browser = new Browser();
  const tab = await browser.open();
  tab.rename('First');
  await tab.pass();
  takeLayout(tab.driver.editor, { ...emptyLayout(), title: 'Second' }, 'new');
  await tab.pass();
  const { keeper } = tab;
  if (!keeper) throw new Error('no keeper');
  const list = async (): Promise<readonly KeptLayout[]> => {
    const listed = await listKept(keeper);
    return listed.ok ? listed.value : [];
  };
  const one = async (title: string): Promise<KeptLayout> => {
    const found = (await list()).find((kept) => kept.title === title);
    if (!found) throw new Error(`no ${title}`);
    return found;
  };
  return { browser, tab, editor: tab.driver.editor, keeper, list, one };
}

const titles = (kept: readonly KeptLayout[]): string[] => kept.map(({ title }) => title);

describe('my layouts', () => {
  test('stand in the order in which they were worked on', async () => {
    const { list } = await twoLayouts();
    expect(titles(await list())).toEqual(['Second', 'First']);
  });

  test('are renamed: the one shown as an edit, another where it is kept', async () => {
    const { tab, editor, keeper, list, one } = await twoLayouts();
    await renameOne(editor, keeper, await one('Second'), 'Shown');
    expect(tab.layout.title).toBe('Shown');
    expect((await renameOne(editor, keeper, await one('First'), 'Resting')).ok).toBe(true);
    expect(titles(await list()).sort()).toEqual(['Resting', 'Shown']);
    expect((await renameOne(editor, keeper, await one('Resting'), '  ')).ok).toBe(false);
  });

  test('one that another tab has on the screen is neither renamed nor deleted here', async () => {
    const { browser, editor, keeper, one } = await twoLayouts();
    const first = await one('First');
    const other: Tab = await browser.open();
    await other.keeper?.open(first.id);
    await other.pass();
    expect(await renameOne(editor, keeper, first, 'No')).toEqual({
      ok: false,
      error: 'It is open in another tab',
    });
    expect(await deleteOne(editor, keeper, first)).toEqual({ ok: false, error: 'It is open in another tab' });
    expect(browser.kept(first.id)?.title).toBe('First');
  });

  test('a copy stands on its own and remembers where it comes from', async () => {
    const { editor, keeper, one } = await twoLayouts();
    const first = await one('First');
    await duplicateOne(editor, keeper, first);
    const copy = await one('First, a copy');
    expect(copy.id).not.toBe(first.id);
    expect(JSON.parse(copy.text)).toMatchObject({ id: copy.id, parent: first.id });
  });

  test('deleted and put back is as it was; deleting the one shown shows the one before', async () => {
    const { browser, tab, editor, keeper, list, one } = await twoLayouts();
    const second = await one('Second');
    expect((await deleteOne(editor, keeper, second)).ok).toBe(true);
    await tab.pass(1000);
    expect(tab.layout.title).toBe('First');
    expect(titles(await list())).toEqual(['First']);
    await putBack(keeper, second);
    expect(browser.kept(second.id)).toEqual(second);
    await deleteOne(editor, keeper, await one('First'));
    await tab.pass(1000);
    expect(tab.layout.title).toBe('Second');
    await deleteOne(editor, keeper, await one('Second'));
    await tab.pass(1000);
    expect(tab.layout.title).toBe('Shoreline kit');
    expect(await list()).toEqual([]);
  });

  test('go into files: one as it is, all in one', async () => {
    const { tab, editor, keeper, one } = await twoLayouts();
    const first = await one('First');
    await saveOne(editor, first);
    await saveOne(editor, { ...first, title: 'Broken', text: 'nonsense' });
    await saveAll(editor, keeper);
    const { saved } = tab.driver.files;
    expect(JSON.parse(saved.get('First') ?? '')).toMatchObject({ title: 'First' });
    expect(saved.get('Broken')).toBe('nonsense');
    expect(JSON.parse(saved.get('All my layouts') ?? '').layouts).toHaveLength(2);
  });
});

describe('words', () => {
  const now = Date.UTC(2026, 4, 20);
  test.each([
    [0, 'just now'],
    [-5000, 'just now'],
    [61_000, '1 minute ago'],
    [59 * 60_000, '59 minutes ago'],
    [3_600_000, '1 hour ago'],
    [25 * 3_600_000, 'yesterday'],
    [5 * 86_400_000, '5 days ago'],
    [40 * 86_400_000, '10 April 2026'],
  ])('%d ms ago is %j', (ms, words) => {
    expect(agoWords(now - ms, now)).toBe(words);
  });

  test('say what is wrong with keeping', () => {
    expect(keepingWords({ is: 'failed', fault: 'full' })).toBe('Not saved: storage is full');
  });
});
