import { describe, expect, test } from 'vitest';
import { takeLayout, takeReady } from '../../../app/actions/take-layout.ts';
import type { StorageFault } from '../../../app/platform/storage.ts';
import { browserTabLock } from '../../../app/platform/tab-lock.ts';
import { demoLayout } from '../../../src/layout/demo.ts';
import { emptyLayout } from '../../../src/layout/starter.ts';
import { fakePreferences } from '../fakes.ts';
import { Browser, settled } from './browser.ts';

describe('keeping one layout', () => {
  test('the demo is not kept before something is changed in it', async () => {
    const browser = new Browser();
    const tab = await browser.open();
    await tab.pass();
    tab.life.go('hidden');
    tab.life.go('leaving');
    await settled();
    expect(tab.is).toBe('untouched');
    expect(browser.all).toEqual([]);
  });

  test('an edit is saved a little later, and the next page begins with it', async () => {
    const browser = new Browser();
    const tab = await browser.open();
    tab.rename('Mine');
    expect(tab.is).toBe('saving');
    expect(browser.all).toEqual([]);
    await tab.pass();
    expect(tab.is).toBe('saved');
    expect(browser.kept(tab.id)).toMatchObject({ title: 'Mine', epoch: 1, revision: 1 });
    tab.close();
    const next = await browser.open();
    expect(next.layout).toEqual(tab.layout);
    expect(next.is).toBe('saved');
  });

  test('edits that come fast are written together, yet never put off for ever', async () => {
    const browser = new Browser();
    const tab = await browser.open();
    for (let i = 0; i < 20; i++) {
      tab.rename(`Title ${i}`);
      await tab.pass(20);
    }
    await tab.pass();
    expect(browser.shelf.writes).toBeGreaterThan(1);
    expect(browser.shelf.writes).toBeLessThan(12);
    expect(browser.kept(tab.id)?.title).toBe('Title 19');
  });

  test('undo and redo are saved as well', async () => {
    const browser = new Browser();
    const tab = await browser.open();
    const before = tab.layout;
    tab.rename('Mine');
    await tab.pass();
    tab.driver.editor.layouts.undo();
    await tab.pass();
    expect(JSON.parse(browser.kept(tab.id)?.text ?? '')).toEqual(before);
    expect(tab.is).toBe('saved');
  });

  test.each(['hidden', 'leaving'] as const)(
    'what is not saved yet is saved at once when the page is %s',
    async (going) => {
      const browser = new Browser();
      const tab = await browser.open();
      tab.rename('In haste');
      tab.life.go(going);
      await settled();
      expect(browser.kept(tab.id)?.title).toBe('In haste');
      tab.rename('In more haste');
      tab.life.go(going);
      await settled();
      expect(browser.kept(tab.id)?.title).toBe('In more haste');
    },
  );

  test('a page that goes before the shelf has answered overwrites nothing', async () => {
    const browser = new Browser();
    const tab = await browser.open();
    tab.rename('Mine');
    await tab.pass();
    tab.close();
    const text = browser.kept(tab.id)?.text;
    const memory = fakePreferences();
    const opening = browser.open(memory);
    expect(browser.kept(tab.id)?.text).toBe(text);
    const next = await opening;
    next.life.go('leaving');
    expect(browser.kept(tab.id)?.text).toBe(text);
  });

  test('the browser is asked once to keep it for good, after the first saving', async () => {
    const browser = new Browser();
    const tab = await browser.open();
    expect(browser.shelf.persistAsked).toBe(0);
    tab.rename('A');
    await tab.pass();
    tab.rename('B');
    await tab.pass();
    expect(browser.shelf.persistAsked).toBe(1);
  });
});

describe('what cannot be saved', () => {
  test.each<StorageFault>(['full', 'blocked', 'newer', 'broken'])(
    '%s: it stays, it is told once, and saved when that is over',
    async (fault) => {
      const browser = new Browser();
      const tab = await browser.open();
      browser.shelf.fault = fault;
      tab.rename('Mine');
      await tab.pass();
      expect(tab.driver.editor.keep.getState().keeping).toEqual({ is: 'failed', fault });
      expect(tab.layout.title).toBe('Mine');
      tab.rename('Mine too');
      await tab.pass();
      expect(tab.banners).toHaveLength(1);
      expect(tab.banners[0]).toContain('save it as a file');
      expect(await tab.keeper?.flush()).toBe(false);
      browser.shelf.fault = null;
      await tab.pass(15_000);
      expect(tab.is).toBe('saved');
      expect(browser.kept(tab.id)?.title).toBe('Mine too');
    },
  );

  test.each([
    ['made by a newer program', { version: 99 }],
    ['no JSON', null],
    ['wrong inside', { takes: 'none' }],
  ])('a record that is %s stays as it is, and the demo is shown', async (_, patch) => {
    const browser = new Browser();
    const tab = await browser.open();
    tab.rename('Mine');
    await tab.pass();
    tab.close();
    const record = browser.kept(tab.id);
    const text = patch ? JSON.stringify({ ...tab.layout, ...patch }) : 'nonsense';
    const bad = { ...record, text };
    browser.shelf.items.set(tab.id, bad);
    const next = await browser.open();
    expect(next.id).not.toBe(tab.id);
    next.rename('Another');
    await next.pass();
    expect(browser.shelf.items.get(tab.id)).toEqual(bad);
    expect(browser.all).toHaveLength(2);
    expect((await next.keeper?.open(tab.id))?.ok).toBe(false);
  });

  test('what is no record at all is passed over, and not written over', async () => {
    const browser = new Browser();
    browser.shelf.items.set('strange', { id: 'strange', from: 'elsewhere' });
    const tab = await browser.open();
    tab.rename('Mine');
    await tab.pass();
    expect(browser.shelf.items.get('strange')).toEqual({ id: 'strange', from: 'elsewhere' });
    expect(browser.all.map(({ title }) => title)).toEqual(['Mine']);
  });
});

describe('several layouts', () => {
  test('what comes from a file is one of its own, kept at once; the one before is kept as it was left', async () => {
    const browser = new Browser();
    const tab = await browser.open();
    const first = tab.id;
    tab.rename('First');
    takeLayout(tab.driver.editor, { ...emptyLayout(), id: first, title: 'Second' }, 'open Second');
    await tab.pass();
    expect(tab.id).not.toBe(first);
    expect(tab.layout.parent).toBe(first);
    expect(browser.kept(first)?.title).toBe('First');
    expect(browser.kept(tab.id)?.title).toBe('Second');
    tab.driver.editor.layouts.undo();
    await tab.pass();
    expect(tab.id).toBe(first);
    tab.rename('First again');
    await tab.pass();
    expect(browser.kept(first)).toMatchObject({ title: 'First again' });
    expect(browser.all).toHaveLength(2);
  });

  test('looking at the demo leaves no trace', async () => {
    const browser = new Browser();
    const tab = await browser.open();
    tab.rename('Mine');
    await tab.pass();
    takeReady(tab.driver.editor, demoLayout(), 'open the demo');
    await tab.pass();
    expect(tab.is).toBe('untouched');
    expect(browser.all).toHaveLength(1);
    tab.close();
    expect((await browser.open()).layout.title).toBe('Mine');
  });

  test('one that is opened from the shelf is on the screen the next time', async () => {
    const browser = new Browser();
    const tab = await browser.open();
    const first = tab.id;
    tab.rename('First');
    takeLayout(tab.driver.editor, emptyLayout(), 'new');
    await tab.pass(1000);
    expect(await tab.keeper?.open(first)).toEqual({ ok: true, value: undefined });
    await tab.pass(1000);
    expect(tab.layout.title).toBe('First');
    tab.close();
    expect((await browser.open()).id).toBe(first);
  });

  test('a page loaded again keeps its own layout, though another was worked on later', async () => {
    const browser = new Browser();
    const memory = fakePreferences();
    const one = await browser.open(memory);
    one.rename('One');
    await one.pass();
    const two = await browser.open();
    takeLayout(two.driver.editor, emptyLayout(), 'new');
    two.rename('Two');
    await two.pass(5000);
    two.close();
    expect((await browser.open()).layout.title).toBe('Two');
    one.close();
    const again = await browser.open(memory);
    expect(again.layout.title).toBe('One');
  });

  test('one that was deleted is not kept again for nothing', async () => {
    const browser = new Browser();
    const tab = await browser.open();
    tab.rename('Mine');
    await tab.pass();
    await browser.shelf.remove(tab.id);
    tab.keeper?.forget(tab.id);
    await tab.keeper?.flush();
    tab.life.go('leaving');
    expect(browser.all).toEqual([]);
    tab.rename('Mine after all');
    await tab.pass();
    expect(browser.kept(tab.id)?.title).toBe('Mine after all');
  });
});

describe('several tabs', () => {
  async function twoTabs() {
    const browser = new Browser();
    const writer = await browser.open();
    writer.rename('Ours');
    await writer.pass();
    const follower = await browser.open();
    return { browser, writer, follower };
  }

  test('one writes; the other shows it as it changes, and refuses edits in words', async () => {
    const { writer, follower } = await twoTabs();
    expect(writer.is).toBe('saved');
    expect(follower.is).toBe('following');
    expect(follower.rename('No')).toEqual({ ok: false, error: 'Another tab is changing this layout' });
    writer.rename('Ours, changed');
    await writer.pass();
    expect(follower.layout.title).toBe('Ours, changed');
    expect(follower.driver.steps).toBe(0);
  });

  test('when the writer is closed, the other one goes on', async () => {
    const { browser, writer, follower } = await twoTabs();
    writer.close();
    await settled();
    expect(follower.is).toBe('saved');
    follower.rename('Mine now');
    await follower.pass();
    expect(browser.kept(follower.id)).toMatchObject({ title: 'Mine now' });
  });

  test('taken over in the middle of an edit, nothing is lost', async () => {
    const { browser, writer, follower } = await twoTabs();
    writer.rename('Just typed');
    await follower.keeper?.takeOver();
    await settled();
    expect(writer.is).toBe('following');
    expect(follower.is).toBe('saved');
    expect(follower.layout.title).toBe('Just typed');
    expect(writer.rename('No').ok).toBe(false);
    follower.rename('From the second tab');
    await follower.pass();
    expect(writer.layout.title).toBe('From the second tab');
    expect(browser.all).toHaveLength(1);
    await writer.keeper?.takeOver();
    await settled();
    writer.rename('And back');
    await writer.pass();
    expect(follower.layout.title).toBe('And back');
    expect(follower.is).toBe('following');
  });

  test('a tab that sleeps is taken over without its answer; awake again it follows', async () => {
    const { browser, writer, follower } = await twoTabs();
    writer.asleep = true;
    const taken = follower.keeper?.takeOver();
    await settled();
    expect(follower.is).toBe('following');
    await follower.pass(1500);
    await taken;
    await settled();
    writer.asleep = false;
    expect(follower.is).toBe('saved');
    follower.rename('Taken');
    await follower.pass();
    expect(writer.is).toBe('following');
    expect(writer.layout.title).toBe('Taken');
    expect(browser.all).toHaveLength(1);
  });

  test('without locks a tab that does not know yet that it was taken over can take the layout back', async () => {
    const browser = new Browser(browserTabLock(null));
    const other = await browser.open();
    other.rename('Mine');
    await other.pass();
    const sleeper = await browser.open();
    await sleeper.pass();
    sleeper.asleep = true;
    void other.keeper?.takeOver();
    await other.pass(2000);
    void sleeper.keeper?.takeOver();
    await settled();
    await other.pass(2000);
    await sleeper.pass(2000);
    sleeper.asleep = false;
    sleeper.life.go('back');
    await settled();
    expect([other.is, sleeper.is]).toEqual(['following', 'saved']);
  });

  test('a writer whose epoch has passed writes nothing over, and keeps its own beside', async () => {
    const { browser, writer } = await twoTabs();
    const theirs = {
      ...browser.kept(writer.id),
      epoch: 7,
      title: 'Theirs',
      text: JSON.stringify({ ...writer.layout, title: 'Theirs' }),
    };
    browser.shelf.items.set(writer.id, theirs);
    writer.rename('Mine');
    await writer.pass();
    expect(browser.kept(writer.id)?.title).toBe('Theirs');
    expect(writer.layout.title).toBe('Theirs');
    expect(browser.all.map(({ title }) => title).sort()).toEqual(['Mine (from another tab)', 'Theirs']);
  });

  test('what another tab changed before the lock was free is shown, not written over', async () => {
    const { browser, writer, follower } = await twoTabs();
    const memory = fakePreferences();
    const third = await browser.open(memory);
    writer.rename('Late');
    await writer.keeper?.flush();
    writer.close();
    await settled();
    expect([follower.layout.title, third.layout.title]).toEqual(['Late', 'Late']);
    expect([follower.is, third.is].sort()).toEqual(['following', 'saved']);
  });

  test('a follower may open another layout and write that', async () => {
    const { browser, writer, follower } = await twoTabs();
    takeLayout(follower.driver.editor, emptyLayout(), 'new');
    follower.rename('Its own');
    await follower.pass();
    expect(follower.is).toBe('saved');
    writer.rename('Ours still');
    await writer.pass();
    expect(browser.all.map(({ title }) => title).sort()).toEqual(['Its own', 'Ours still']);
    follower.driver.editor.layouts.undo();
    follower.driver.editor.layouts.undo();
    await settled();
    expect(follower.is).toBe('following');
    expect(follower.layout.title).toBe('Ours still');
  });
});
