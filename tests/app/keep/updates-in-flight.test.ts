import fc from 'fast-check';
import { expect, test } from 'vitest';
import { followUpdates } from '../../../app/keep/follow-updates.ts';
import type { UpdateEar } from '../../../app/platform/service-worker.ts';
import { ok } from '../../../src/layout/result.ts';
import { runs } from '../../support/runs.ts';
import { Browser, settled, type Tab } from './browser.ts';

/** A tab that follows updates as the page does, and how often it was loaded anew. */
function following(tab: Tab): { readonly ear: UpdateEar; readonly loads: () => number } {
  const { keep } = tab.driver.editor;
  let ear: UpdateEar | undefined;
  let loads = 0;
  if (!tab.keeper) throw new Error('nothing is kept');
  followUpdates({
    offline: {
      start: async (listener) => {
        ear = listener;
        return ok(undefined);
      },
    },
    keep,
    keeper: tab.keeper,
    clock: tab.driver.clock,
    tell: (banner) => tab.banners.push(banner),
    reload: () => loads++,
  });
  if (!ear) throw new Error('nobody listens');
  return { ear, loads: () => loads };
}

const step = fc.record({
  does: fc.constantFrom('edit', 'edit', 'edit', 'pass', 'full', 'room'),
  ms: fc.constantFrom(0, 10, 90, 500),
});

test('a new version that comes while two tabs are edited costs no edit: it is loaded when all is saved, or not at all', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(step, { maxLength: 8 }),
      fc.array(step, { maxLength: 8 }),
      fc.boolean(),
      async (before, after, isAsked) => {
        const browser = new Browser();
        const tab = await browser.open();
        tab.rename('Start');
        await tab.pass();
        const other = await browser.open();
        await other.pass();
        const [mine, theirs] = [following(tab), following(other)];
        let count = 0;
        const walk = async (steps: typeof before): Promise<void> => {
          for (const { does, ms } of steps) {
            if (mine.loads() > 0) return;
            if (does === 'edit') tab.rename(`Title ${++count}`);
            else if (does === 'full') browser.shelf.fault = 'full';
            else if (does === 'room') browser.shelf.fault = null;
            if (ms > 0) await tab.pass(ms);
          }
        };
        await walk(before);
        const switched = (): void => {
          mine.ear.switched();
          theirs.ear.switched();
        };
        // Asked for here, or in the other tab.
        if (isAsked) {
          mine.ear.ready({ switch: switched });
          tab.driver.editor.keep.getState().update?.();
        } else switched();
        await walk(after);
        await settled();
        const { layout } = tab;
        if (mine.loads() === 0) {
          // It stays, with the edits in it, until there is room.
          expect(tab.layout.title).toBe(count > 0 ? `Title ${count}` : 'Start');
          browser.shelf.fault = null;
          await tab.pass(20_000);
        }
        browser.shelf.fault = null;
        tab.close();
        other.close();
        browser.journal.entries.clear();
        const next = await browser.open();
        expect(next.layout).toEqual(layout);
        next.close();
      },
    ),
    runs(20),
  );
});
