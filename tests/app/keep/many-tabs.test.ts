import fc from 'fast-check';
import { expect, test } from 'vitest';
import { browserTabLock } from '../../../app/platform/tab-lock.ts';
import { runs } from '../../support/runs.ts';
import { Browser, settled, type Tab } from './browser.ts';

const TABS = 3;
const tabIndex = fc.integer({ min: 0, max: TABS - 1 });

const deed = fc.oneof(
  { weight: 4, arbitrary: fc.record({ does: fc.constant('rename' as const), tab: tabIndex }) },
  { weight: 3, arbitrary: fc.record({ does: fc.constant('take over' as const), tab: tabIndex }) },
  fc.record({ does: fc.constant('undo' as const), tab: tabIndex }),
  fc.record({ does: fc.constantFrom('reload' as const, 'sleep' as const, 'wake' as const), tab: tabIndex }),
  fc.record({ does: fc.constant('full' as const), tab: tabIndex }),
);

const pause = fc.constantFrom(0, 1, 100, 2000);

/** The title that a user sees of what was kept beside, too. */
const bare = (title: string): string => title.replace(/( \(from another tab\))+$/, '');

function wake(tab: Tab): void {
  tab.asleep = false;
  tab.life.go('back');
}

async function passAll(tabs: readonly Tab[], ms: number): Promise<void> {
  for (const { driver } of tabs) driver.clock.pass(ms);
  await settled();
}

test.each([
  ['with locks', () => new Browser()],
  ['without locks', () => new Browser(browserTabLock(null))],
])(
  '%s: whatever tabs do to each other, the last thing done in any of them is kept, and one of them may write',
  async (_, makeBrowser) => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.tuple(deed, pause), { minLength: 1, maxLength: 12 }), async (deeds) => {
        const browser = makeBrowser();
        const tabs: Tab[] = [await browser.open()];
        tabs[0]?.rename('Start');
        await passAll(tabs, 200);
        while (tabs.length < TABS) tabs.push(await browser.open());
        /** The last title that a tab has taken and that was not taken back. */
        let newest: string | null = null;
        let count = 0;

        for (const [{ does, tab: i }, ms] of deeds) {
          const tab = tabs[i] as Tab;
          if (does === 'rename') {
            const title = `Title ${++count}`;
            if (tab.rename(title).ok) newest = title;
          } else if (does === 'take over') void tab.keeper?.takeOver();
          else if (does === 'undo') {
            tab.driver.editor.layouts.undo();
            newest = null;
          } else if (does === 'sleep') tab.asleep = true;
          else if (does === 'wake') wake(tab);
          else if (does === 'full') {
            browser.shelf.fault = 'full';
            await passAll(tabs, 100);
            browser.shelf.fault = null;
          } else {
            tab.life.go('leaving');
            await settled();
            tab.close();
            tabs[i] = await browser.open();
          }
          if (ms > 0) await passAll(tabs, ms);
        }
        for (const tab of tabs) wake(tab);
        for (let i = 0; i < 4; i++) await passAll(tabs, 20_000);

        const kept = browser.all.map(({ title }) => bare(title));
        if (newest !== null) expect(kept).toContain(newest);
        for (const id of new Set(tabs.map((tab) => tab.id))) {
          const sharing = tabs.filter((tab) => tab.id === id);
          expect(sharing.filter(({ is }) => is === 'saved')).toHaveLength(1);
          for (const { layout } of sharing) expect(layout.title).toBe(browser.kept(id)?.title);
        }
      }),
      runs(15),
    );
  },
);
