import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bringBackState } from '../../app/keep/bring-back-state.ts';
import { PAUSE_MS } from '../../app/keep/keep-states.ts';
import type { Layout } from '../../src/layout/layout.ts';
import { openLayout } from '../../src/layout/open.ts';
import { writeLayout } from '../../src/layout/write.ts';
import { linkOf, openLink } from '../../src/share/link.ts';
import { Browser, settled, type Tab } from '../app/keep/browser.ts';
import { anyDraw, editFrom } from '../edit/any-edit.ts';
import { whyNotOpened } from '../support/opened.ts';
import { runs } from '../support/runs.ts';

const deed = fc.oneof(
  { weight: 8, arbitrary: fc.record({ does: fc.constant('edit' as const), draw: anyDraw }) },
  {
    weight: 6,
    arbitrary: fc.record({
      does: fc.constantFrom(
        'undo' as const,
        'redo' as const,
        'save and open' as const,
        'link' as const,
        'another take' as const,
        'another tab' as const,
        'load anew' as const,
        'pause' as const,
        'earlier state' as const,
      ),
      draw: anyDraw,
    }),
  },
);

/** As JSON says it, which knows no zero below nothing. */
const plain = (layout: Layout): unknown => JSON.parse(JSON.stringify(layout));

const editor = (tab: Tab) => tab.driver.editor;

/** The tab that may write, after the other one was asked for the layout. */
async function takeOver(tab: Tab): Promise<void> {
  const taken = tab.keeper?.takeOver();
  await tab.pass(2000);
  await taken;
  await tab.pass();
}

async function earlierState(tab: Tab, [which = 0]: readonly number[]): Promise<void> {
  const found = await tab.states?.of(tab.id);
  const states = found?.ok ? found.value : [];
  const state = states[which % Math.max(1, states.length)];
  if (!state) return;
  expect(await bringBackState(editor(tab), tab.id, state)).toEqual({ ok: true, value: undefined });
  expect(plain(tab.layout)).toEqual(JSON.parse(state.text));
}

/*
 * Whatever is done to a layout in whatever order, in two tabs: it can be opened, what is kept is what is shown, a file
 * and a link of it say the same, and a page loaded anew begins with it.
 */
test('edits, undo, files, links, takes, tabs and earlier states in any order lose nothing', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(deed, { minLength: 1, maxLength: 30 }), async (deeds) => {
      const browser = new Browser();
      let tab = await browser.open();
      tab.rename('Start');
      await tab.pass();
      let other = await browser.open();
      await other.pass();
      for (const { does, draw } of deeds) {
        const { layouts, session } = editor(tab);
        if (does === 'edit') layouts.run(editFrom(tab.layout, draw));
        else if (does === 'undo') layouts.undo();
        else if (does === 'redo') layouts.redo();
        else if (does === 'another take') {
          const { takes } = tab.layout;
          session.setState({ take: takes[(draw[0] ?? 0) % takes.length]?.id ?? '' });
        } else if (does === 'save and open') {
          const opened = openLayout(writeLayout(tab.layout));
          expect(opened.ok && plain(opened.value)).toEqual(plain(tab.layout));
        } else if (does === 'link') {
          const link = linkOf(tab.layout);
          const opened = link.ok ? openLink(link.value) : undefined;
          if (opened) expect(opened.ok && plain(opened.value)).toEqual(plain(tab.layout));
        } else if (does === 'another tab') {
          // With the last edit perhaps not on the shelf yet.
          const { layout } = tab;
          const going = takeOver(other);
          await tab.pass();
          await going;
          [tab, other] = [other, tab];
          expect(plain(tab.layout)).toEqual(plain(layout));
        } else if (does === 'load anew') {
          const { layout } = tab;
          tab.life.go('leaving');
          await settled();
          tab.close();
          await other.pass();
          tab = await browser.open();
          await tab.pass();
          if (tab.is === 'following') await takeOver(tab);
          expect(plain(tab.layout)).toEqual(plain(layout));
        } else if (does === 'pause') {
          browser.now += PAUSE_MS;
          await tab.pass();
        } else await earlierState(tab, draw);
        expect(whyNotOpened(tab.layout)).toBeUndefined();
      }
      await tab.pass();
      await other.pass();
      expect(JSON.parse(browser.kept(tab.id)?.text ?? 'null')).toEqual(plain(tab.layout));
      expect(plain(other.layout)).toEqual(plain(tab.layout));
      expect(browser.all.filter(({ title }) => title.includes('from another tab'))).toEqual([]);
      tab.close();
      other.close();
    }),
    runs(25),
  );
});
