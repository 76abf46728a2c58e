import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { browserJournal } from '../../../app/platform/journal.ts';
import { runs } from '../../support/runs.ts';
import { fakePreferences } from '../fakes.ts';
import { Browser, firstLayout, settled, Tab } from './browser.ts';

/** The process ends: nothing is written any more, nobody is told. */
function crash(browser: Browser, tab: Tab): void {
  browser.shelf.fault = 'broken';
  tab.close();
}

async function openAgain(browser: Browser, memory = fakePreferences()): Promise<Tab> {
  browser.shelf.fault = null;
  const tab = await browser.open(memory);
  await tab.pass();
  return tab;
}

describe('an edit that the shelf never got', () => {
  test('is there when the next page begins, and comes onto the shelf', async () => {
    const browser = new Browser();
    const tab = await browser.open();
    tab.rename('Mine');
    await tab.pass();
    browser.shelf.fault = 'broken';
    tab.rename('In the last moment');
    crash(browser, tab);
    const next = await openAgain(browser);
    expect(next.layout.title).toBe('In the last moment');
    expect(next.is).toBe('saved');
    expect(browser.kept(next.id)?.title).toBe('In the last moment');
    expect(browser.journal.entries.size).toBe(0);
    expect(browser.all).toHaveLength(1);
  });

  test('is there even if it was the first of all', async () => {
    const browser = new Browser();
    const tab = await browser.open();
    browser.shelf.fault = 'broken';
    tab.rename('First');
    crash(browser, tab);
    const next = await openAgain(browser);
    expect([next.id, next.layout.title, next.is]).toEqual([tab.id, 'First', 'saved']);
    expect(browser.all.map(({ title }) => title)).toEqual(['First']);
  });

  test('goes to the tab that takes its place', async () => {
    const browser = new Browser();
    const tab = await browser.open();
    tab.rename('Mine');
    await tab.pass();
    const other = await browser.open();
    expect(other.is).toBe('following');
    browser.shelf.fault = 'broken';
    tab.rename('In the last moment');
    tab.close();
    browser.shelf.fault = null;
    await other.pass();
    expect([other.layout.title, other.is]).toEqual(['In the last moment', 'saved']);
    expect(other.banners).toEqual([]);
  });

  test('is found in a layout that another page opens later', async () => {
    const browser = new Browser();
    const tab = await browser.open();
    tab.rename('Mine');
    await tab.pass();
    browser.shelf.fault = 'broken';
    tab.rename('In the last moment');
    crash(browser, tab);
    browser.shelf.fault = null;
    const other = new Tab(browser, { ...tab.layout, id: 'other', title: 'Other' });
    other.keep(null);
    await other.pass();
    await other.keeper?.open(tab.id);
    await other.pass();
    expect([other.layout.title, other.is]).toEqual(['In the last moment', 'saved']);
  });

  test('is kept beside what another tab has written since', async () => {
    const browser = new Browser();
    const tab = await browser.open();
    tab.rename('Mine');
    await tab.pass();
    browser.shelf.fault = 'broken';
    tab.rename('In the last moment');
    const [entry] = browser.journal.all();
    crash(browser, tab);
    const next = await openAgain(browser);
    next.rename('Gone on');
    await next.pass();
    next.close();
    if (entry) browser.journal.note(entry);
    const last = await openAgain(browser);
    expect(last.layout.title).toBe('Gone on');
    expect(browser.all.map(({ title }) => title).sort()).toEqual([
      'Gone on',
      'In the last moment (from another tab)',
    ]);
    expect(browser.journal.entries.size).toBe(0);
  });

  test('is forgotten when it is undone, saved, or its layout deleted', async () => {
    const browser = new Browser();
    const tab = await browser.open();
    tab.rename('Mine');
    expect(browser.journal.entries.size).toBe(1);
    await tab.pass();
    expect(browser.journal.entries.size).toBe(0);
    browser.shelf.fault = 'broken';
    tab.rename('Away again');
    tab.driver.editor.layouts.undo();
    expect(browser.journal.entries.size).toBe(0);
    tab.driver.editor.layouts.redo();
    expect(browser.journal.entries.size).toBe(1);
    tab.keeper?.forget(tab.id);
    expect(browser.journal.entries.size).toBe(0);
  });

  test.each([true, false])(
    'goes on from what a page wrote when it was left and came back; at rest before: %s',
    async (isAtRest) => {
      const browser = new Browser();
      const tab = new Tab(browser, firstLayout('first'));
      tab.keep(null);
      if (isAtRest) await settled();
      tab.rename('Left');
      tab.life.go('leaving');
      tab.rename('Back');
      expect(browser.journal.of('first')?.title).toBe('Back');
      await tab.pass();
      expect([tab.layout.title, tab.is, tab.banners]).toEqual(['Back', 'saved', []]);
      expect(browser.all.map(({ title }) => title)).toEqual(['Back']);
    },
  );

  test('is never lost, whatever comes in between', async () => {
    const deed = fc.constantFrom('edit', 'edit', 'pass', 'settle', 'fault', 'heal', 'crash', 'leave', 'undo');
    await fc.assert(
      fc.asyncProperty(fc.array(deed, { maxLength: 14 }), async (deeds) => {
        const browser = new Browser();
        let tab = await browser.open();
        let title = tab.layout.title;
        for (const [i, one] of [...deeds, 'crash' as const].entries()) {
          if (one === 'edit' && tab.rename(`Title ${i}`).ok) title = `Title ${i}`;
          if (one === 'undo') tab.driver.editor.layouts.undo();
          title = tab.layout.title;
          if (one === 'pass') await tab.pass();
          if (one === 'settle') await settled();
          if (one === 'fault') browser.shelf.fault = 'broken';
          if (one === 'heal') browser.shelf.fault = null;
          if (one === 'leave') tab.life.go('leaving');
          if (one === 'crash') {
            crash(browser, tab);
            await settled();
            tab = await openAgain(browser);
          }
          expect(tab.layout.title).toBe(title);
        }
        expect(browser.all.length).toBeLessThanOrEqual(1);
      }),
      runs(40),
    );
  });
});

describe('the journal of a browser', () => {
  const entry = { id: 'a', title: 'Mine', text: '{}', epoch: 1, changed: 5 };

  test('keeps one entry for each layout', () => {
    const kept = fakeStorage();
    const journal = browserJournal(() => kept);
    journal.note(entry);
    journal.note({ ...entry, id: 'b', epoch: 2 });
    journal.note({ ...entry, title: 'Newer' });
    kept.setItem('ribbonwright.look', '"dark"');
    expect(journal.all().map(({ id, title }) => [id, title])).toEqual([
      ['a', 'Newer'],
      ['b', 'Mine'],
    ]);
    journal.clear('a');
    expect(journal.of('a')).toBeUndefined();
    expect(journal.of('b')).toMatchObject({ epoch: 2 });
  });

  test('has nothing where the browser forbids it, is full, or holds something else', () => {
    const forbidden = browserJournal(() => {
      throw new DOMException('no', 'SecurityError');
    });
    forbidden.note(entry);
    forbidden.clear('a');
    expect([forbidden.of('a'), forbidden.all()]).toEqual([undefined, []]);
    const kept = fakeStorage();
    const journal = browserJournal(() => kept);
    for (const text of ['{', 'null', '{"id":"a"}', '[]']) {
      kept.setItem('ribbonwright.unsaved.a', text);
      expect(journal.all(), text).toEqual([]);
    }
    kept.setItem = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
    journal.note(entry);
  });

  test('does not keep an older entry in the place of one that is too long', () => {
    const journal = browserJournal(() => fakeStore);
    const fakeStore = fakeStorage();
    journal.note(entry);
    journal.note({ ...entry, text: 'x'.repeat(2_000_000) });
    expect(journal.of('a')).toBeUndefined();
  });
});

/** Its keys are its own properties, as a browser's are. */
function fakeStorage(): Storage {
  const methods = {
    getItem(this: Record<string, string>, key: string) {
      return this[key] ?? null;
    },
    setItem(this: Record<string, string>, key: string, value: string) {
      this[key] = value;
    },
    removeItem(this: Record<string, string>, key: string) {
      delete this[key];
    },
  };
  return Object.create(methods) as Storage;
}
