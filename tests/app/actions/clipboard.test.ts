import { describe, expect, test, vi } from 'vitest';
import { actions } from '../../../app/actions/index.ts';
import { pasteText } from '../../../app/actions/paste.ts';
import { showTake } from '../../../app/actions/show-take.ts';
import { listenToClipboard } from '../../../app/stage/listen-to-clipboard.ts';
import { startAnnouncer } from '../../../app/store/announcer.ts';
import { emptyLayout } from '../../../src/index.ts';
import { openDocument } from '../../../src/layout/open.ts';
import { Driver } from '../driver.ts';

const selecting = (...ids: string[]): Driver => {
  const driver = new Driver();
  for (const id of ids) driver.with({ mod: true }).click(driver.on(id));
  return driver.with({ mod: false });
};

const run = (driver: Driver, id: string): void =>
  actions.find((action) => action.id === id)?.run(driver.editor);

/** Lets what was promised come, and code that is loaded late, however long that takes. */
async function settled(): Promise<void> {
  for (let i = 0; i < 3; i++) {
    await vi.dynamicImportSettled();
    await new Promise((done) => setTimeout(done, 10));
  }
}

const banner = ({ editor }: Driver): string | null => editor.session.getState().banner;

/** With an ear for the browser's events, as the stage has it. */
async function listening(driver: Driver): Promise<EventTarget & { getBoundingClientRect(): object }> {
  const stage = Object.assign(new EventTarget(), { getBoundingClientRect: () => ({ left: 0, top: 0 }) });
  listenToClipboard(driver.editor, stage as unknown as HTMLElement);
  await settled();
  return stage;
}

describe('by the keys of the browser', () => {
  test('a group is copied, and pasted into the other take with its ribbon, selected', async () => {
    const driver = selecting('jetty-a', 'cobble-1', 'cobble-2', 'boulder-1');
    await listening(driver);
    driver.clipboard.press('copy');
    expect(driver.editor.session.getState().spoken).toBe('Copied 4 modules and 1 ribbon.');
    showTake(driver.editor, 'one-long-jetty');
    const before = driver.take;
    driver.clipboard.press('paste');
    await settled();
    expect(driver.take.modules).toHaveLength(before.modules.length + 4);
    expect(driver.take.ribbons.at(-1)?.label).toBe('S4');
    expect(driver.selection).toHaveLength(5);
    expect(driver.steps).toBe(1);
    driver.editor.layouts.undo();
    expect(driver.take).toBe(before);
  });

  test('what is cut out comes back as it was', async () => {
    const driver = selecting('jetty-c', 'cobble-5', 'cobble-6');
    await listening(driver);
    const { modules } = driver.take;
    driver.clipboard.press('cut');
    expect(driver.take.modules).toHaveLength(modules.length - 3);
    driver.clipboard.press('paste');
    await settled();
    expect(driver.place('cobble-5')).toEqual(['lower', 35]);
    expect(driver.take.ribbons.find(({ label }) => label === 'S3')?.seats).toHaveLength(3);
    expect(driver.steps).toBe(2);
  });

  test('it goes near the pointer while that is over the rails', async () => {
    const driver = selecting('gull-1');
    const stage = await listening(driver);
    driver.clipboard.press('copy');
    const { x, y } = driver.on('kelp');
    const at = { clientX: x - driver.hp(30), clientY: y + 30, pointerType: 'mouse' };
    stage.dispatchEvent(Object.assign(new Event('pointermove'), at));
    driver.clipboard.press('paste');
    await settled();
    expect(driver.place('gull-3')).toEqual(['lower', 79]);
    stage.dispatchEvent(new Event('pointerleave'));
    driver.clipboard.press('paste');
    await settled();
    expect(driver.place('gull-4')[0]).toBe('upper');
  });

  test('nothing is copied where no module is selected, or while one is dragged', async () => {
    const driver = new Driver();
    await listening(driver);
    driver.clipboard.press('copy');
    expect(driver.clipboard.text).toBeNull();
    driver.down(driver.on('gull-1')).move(driver.hp(3));
    driver.clipboard.press('cut');
    expect(driver.clipboard.text).toBeNull();
    driver.up();
    expect(driver.module('gull-1')).toBeDefined();
  });
});

test('buttons copy, cut and paste too, by what this page copied last', async () => {
  const driver = selecting('gull-1');
  run(driver, 'copy');
  await settled();
  run(driver, 'paste');
  await settled();
  expect(driver.module('gull-3')).toBeDefined();
  run(driver, 'cut');
  await settled();
  expect(driver.take.modules.some(({ id }) => id === 'gull-3')).toBe(false);
  run(driver, 'paste');
  await settled();
  expect(driver.module('gull-3')).toBeDefined();
});

test('into a layout with another kit the kinds come along, and the file can be opened again', async () => {
  const driver = selecting('jetty-a', 'cobble-1', 'cobble-2', 'boulder-1');
  run(driver, 'copy');
  driver.editor.layouts.replace(emptyLayout(), 'start anew');
  run(driver, 'paste');
  await settled();
  expect(driver.take.modules).toHaveLength(4);
  expect(openDocument(driver.editor.layouts.layout()).ok).toBe(true);
});

describe('anything else on the clipboard', () => {
  test.each(['', 'bread, milk', '{"format":"ribbonwright"}', '[[[['])('%j changes nothing', async (text) => {
    const driver = new Driver();
    const before = driver.editor.layouts.layout();
    await pasteText(driver.editor, text, null);
    expect(driver.editor.layouts.layout()).toBe(before);
    expect(banner(driver)).toBe('There is no group of modules on the clipboard.');
  });

  test('a clip that is not in order says why', async () => {
    const driver = selecting('gull-1');
    run(driver, 'copy');
    await settled();
    const broken = (driver.clipboard.text ?? '').replace('"widthHp":8', '"widthHp":-8');
    await pasteText(driver.editor, broken, null);
    expect(banner(driver)).toMatch(/^Not pasted: .*widthHp/);
    expect(driver.steps).toBe(0);
  });
});

test('what goes back to the stock with a module is said', () => {
  const driver = selecting('gull-1');
  const stop = startAnnouncer(driver.editor);
  run(driver, 'remove');
  stop();
  expect(driver.take.ribbons.some(({ id }) => id === 'l4')).toBe(false);
  expect(driver.editor.session.getState().spoken).toContain('Back in the stock: L4.');
});
