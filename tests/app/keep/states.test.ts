import { describe, expect, test } from 'vitest';
import { bringBackState } from '../../../app/keep/bring-back-state.ts';
import { PAUSE_MS, STRETCH_MS } from '../../../app/keep/keep-states.ts';
import { MOST_LETTERS, MOST_STATES, withState } from '../../../app/keep/kept-states.ts';
import { Browser, type Tab } from './browser.ts';

const titlesOf = async (tab: Tab, id = tab.id): Promise<string[]> => {
  const found = await tab.states?.of(id);
  return found?.ok ? found.value.map(({ text }) => JSON.parse(text).title) : [];
};

/** A tab with a layout that is kept. */
async function started(browser = new Browser()): Promise<Tab> {
  const tab = await browser.open();
  tab.rename('One');
  await tab.pass();
  return tab;
}

describe('earlier states', () => {
  test('are what stood before each stretch of work, not before each edit; the demo itself is none', async () => {
    const browser = new Browser();
    const tab = await started(browser);
    for (const title of ['Two', 'Three']) tab.rename(title);
    await tab.pass();
    expect(await titlesOf(tab)).toEqual([]);
    browser.now += PAUSE_MS;
    tab.rename('Four');
    tab.rename('Five');
    await tab.pass();
    expect(await titlesOf(tab)).toEqual(['Three']);
    // Without a pause as well, after so long.
    for (let i = 0; i < 10; i++) {
      browser.now += STRETCH_MS / 10;
      tab.rename(`Title ${i}`);
    }
    await tab.pass();
    expect(await titlesOf(tab)).toEqual(['Three', 'Title 8']);
  });

  test('a clock that is put back begins another stretch, and no order is lost', async () => {
    const browser = new Browser();
    const tab = await started(browser);
    browser.now -= 500_000;
    tab.rename('Two');
    await tab.pass();
    browser.now += 10 * STRETCH_MS;
    tab.rename('Three');
    await tab.pass();
    expect(await titlesOf(tab)).toEqual(['One', 'Two']);
  });

  test('an edit that changes much begins another stretch', async () => {
    const browser = new Browser();
    const tab = await started(browser);
    const take = tab.layout.takes[0];
    if (!take) throw new Error('no take');
    tab.driver.editor.layouts.run({
      type: 'remove-modules',
      take: take.id,
      modules: take.modules.map(({ id }) => id),
    });
    await tab.pass();
    expect(await titlesOf(tab)).toEqual(['One']);
  });

  test('the next page and a tab that takes over go on with the list', async () => {
    const browser = new Browser();
    const tab = await started(browser);
    tab.close();
    const next = await browser.open();
    next.rename('Two');
    await next.pass();
    expect(await titlesOf(next)).toEqual(['One']);
    const other = await browser.open();
    await other.pass();
    const taken = other.keeper?.takeOver();
    await other.pass(2000);
    await taken;
    await other.pass();
    expect(other.rename('Three').ok).toBe(true);
    await other.pass();
    expect(await titlesOf(other)).toEqual(['One', 'Two']);
  });

  test('bringing one back is one step, which can be undone, and what it takes the place of is a state', async () => {
    const browser = new Browser();
    const tab = await started(browser);
    browser.now += PAUSE_MS;
    tab.rename('Two');
    await tab.pass();
    const found = await tab.states?.of(tab.id);
    const state = found?.ok ? found.value[0] : undefined;
    if (!state) throw new Error('no state');
    browser.now += PAUSE_MS;
    const { editor } = tab.driver;
    expect(await bringBackState(editor, tab.id, state)).toMatchObject({ ok: true });
    expect(tab.layout.title).toBe('One');
    await tab.pass();
    expect(browser.kept(tab.id)?.title).toBe('One');
    expect(await titlesOf(tab)).toEqual(['One', 'Two']);
    editor.layouts.undo();
    expect(tab.layout.title).toBe('Two');
  });

  test('a tab that may not change the layout brings nothing back', async () => {
    const browser = new Browser();
    const tab = await started(browser);
    const other = await browser.open();
    await other.pass();
    const done = await bringBackState(other.driver.editor, other.id, {
      at: 0,
      text: JSON.stringify(tab.layout),
    });
    expect(done.ok).toBe(false);
  });

  test('make room when the browser has none, and hinder nothing when they cannot be kept', async () => {
    const browser = new Browser();
    const tab = await started(browser);
    for (let i = 0; i < 9; i++) {
      browser.now += PAUSE_MS;
      tab.rename(`Title ${i}`);
      await tab.pass();
    }
    const kept = await titlesOf(tab);
    expect(kept).toHaveLength(9);
    browser.shelf.fault = 'full';
    tab.rename('More');
    await tab.pass();
    expect(await titlesOf(tab)).toEqual(kept.slice(5));
    browser.shelf.fault = null;
    browser.states.fault = 'broken';
    browser.now += PAUSE_MS;
    tab.rename('Most');
    await tab.pass(20_000);
    expect(browser.kept(tab.id)?.title).toBe('Most');
  });

  test('of layouts that are gone go a week later', async () => {
    const browser = new Browser();
    const tab = await started(browser);
    browser.now += PAUSE_MS;
    tab.rename('Two');
    await tab.pass();
    browser.states.items.set('gone', { id: 'gone', states: [{ at: browser.now, text: '{}' }] });
    await tab.pass(60_000);
    expect([...browser.states.items.keys()]).toEqual([tab.id, 'gone']);
    tab.close();
    browser.now += 8 * 86_400_000;
    const next = await browser.open();
    await next.pass(60_000);
    expect([...browser.states.items.keys()]).toEqual([tab.id]);
  });

  test('are 20 at most, of so many letters at most; what is no list of states is not written over', () => {
    let record: unknown;
    for (let i = 0; i < 30; i++) record = withState(record, 'a', { at: i, text: `${i}` }) ?? record;
    const texts = (found: unknown) =>
      (found as { states: { text: string }[] }).states.map(({ text }) => text);
    expect(texts(record)).toEqual(Array.from({ length: MOST_STATES }, (_, i) => `${i + 10}`));
    expect(withState(record, 'a', { at: 9, text: '29' })).toBeNull();
    const large = 'x'.repeat(MOST_LETTERS - 2);
    expect(texts(withState(record, 'a', { at: 9, text: large }))).toEqual(['29', large]);
    expect(withState(record, 'a', { at: 9, text: `${large}xxx` })).toBeNull();
    expect(withState({ id: 'a', pages: [] }, 'a', { at: 1, text: 'b' })).toBeNull();
  });
});
