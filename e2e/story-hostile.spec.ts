import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright/test';
import { onRails, openApp, type Spot, spotOn } from './app-page.ts';
import { expect, test } from './fixtures.ts';
import { isLongSweep } from './support/long-sweep.ts';
import { withPlainPicker } from './support/open-layout.ts';

const HP_MM = 5.08;

/** A spot of a module at the rear: mm from its panel's left edge, seen from the front, and up from its lower edge. */
async function onModule(page: Page, name: string, xMm: number, yMm: number): Promise<Spot> {
  const box = await onRails(page, new RegExp(`^${name},`)).boundingBox();
  if (!box) throw new Error(`${name} is not on the rails`);
  const scale = box.height / 128.4;
  return { x: box.x + box.width - xMm * scale, y: box.y + box.height - yMm * scale };
}

/** Presses at a spot and moves on in steps. */
async function press(page: Page, from: Spot, dx: number, dy = 0): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  for (const share of [0.3, 0.7, 1]) await page.mouse.move(from.x + dx * share, from.y + dy * share);
}

/** The layout as it would be saved. */
async function saved(page: Page): Promise<string> {
  const download = page.waitForEvent('download');
  await page.keyboard.press('Control+s');
  return readFile(await (await download).path(), 'utf8');
}

/** Every gesture, up to its middle: something hangs at the hand. */
const GESTURES: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  'dragging a module': async (page) => press(page, await spotOn(page, /^Gull 1/), -90, 30),
  'laying a ribbon': async (page) => {
    const from = await onModule(page, 'Jetty A', 12.7, 38);
    const to = await onModule(page, 'Boulder 1', 38.1, 38);
    await press(page, from, to.x - from.x);
    await expect(page.locator('.hint-card')).toContainText('land');
  },
  'pulling a connector': async (page) => {
    const at = await onModule(page, 'Cobble 5', 12.7, 38);
    await page.mouse.click(at.x + 14, at.y);
    await expect(page.getByRole('region', { name: 'This part' })).toContainText('connectors seated');
    await press(page, at, 60, 60);
  },
  'sliding a band': async (page) => {
    const at = await onModule(page, 'Cobble 5', 12.7, 38);
    await page.mouse.click(at.x + 14, at.y);
    await press(page, { x: at.x + 14, y: at.y }, 40);
  },
  'dragging a board': async (page) => {
    // Board 2 begins 9 HP beside Gull 2; its first header stands further in.
    const gull = await onModule(page, 'Gull 2', 8 * HP_MM, 64);
    const scale = ((await onRails(page, /^Gull 2/).boundingBox())?.height ?? 0) / 128.4;
    const at = { x: gull.x - 9.6 * HP_MM * scale, y: gull.y };
    await page.mouse.click(at.x, at.y);
    await press(page, at, 40);
  },
  'resizing a row': async (page) => {
    const foghorn = await onModule(page, 'Foghorn', 14 * HP_MM, 64);
    const scale = ((await onRails(page, /^Foghorn/).boundingBox())?.height ?? 0) / 128.4;
    await press(page, { x: foghorn.x - (8 * HP_MM + 2) * scale, y: foghorn.y }, 60);
  },
  'a kind in hand': async (page) => {
    await page.getByRole('button', { name: /^Cobble 5 HP/ }).click();
    const { x, y } = await onModule(page, 'Harbour', 25, 50);
    await page.mouse.move(x, y);
    await page.mouse.move(x - 20, y);
  },
};

const blur = (page: Page) => page.evaluate(() => window.dispatchEvent(new Event('blur')));

/** What comes between; whatever does not end the gesture must leave it to Escape. */
const MOMENTS: Readonly<Record<string, (page: Page) => Promise<unknown>>> = {
  Escape: async () => {},
  'the window loses the keys': blur,
  'the pointer is taken away': (page) =>
    page
      .locator('.by-list')
      .evaluate((stage) =>
        stage.dispatchEvent(new PointerEvent('pointercancel', { pointerId: 1, bubbles: true })),
      ),
  'the case is to be turned': (page) => page.keyboard.press('t'),
  'undo and redo are pressed': async (page) => {
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+Shift+z');
  },
  'another take is asked for': (page) => page.keyboard.press(']'),
  'what is selected is to be removed': (page) => page.keyboard.press('Delete'),
  'everything is to be selected, cut and pasted': async (page) => {
    for (const keys of ['Control+a', 'Control+x', 'Control+v']) await page.keyboard.press(keys);
  },
  'the window is resized': async (page) => {
    await page.setViewportSize({ width: 900, height: 640 });
    await page.mouse.move(300, 300);
    await page.setViewportSize({ width: 1280, height: 720 });
  },
};

test.beforeEach(async ({ page }) => {
  await withPlainPicker(page);
  await openApp(page);
  // A free row of headers to lay a ribbon on: S1 goes back to the stock.
  const { x, y } = await onModule(page, 'Cobble 1', 12.7, 38);
  await page.mouse.click(x + 14, y);
  await page.keyboard.press('Delete');
  await expect(page.getByRole('button', { name: 'Undo remove S1' })).toBeVisible();
});

/** In the gate each gesture meets every third moment, so that each moment meets two gestures; in the long sweep all meet all. */
const meets = (gesture: number, moment: number): boolean => isLongSweep || (gesture + moment) % 3 === 0;

for (const [g, [gesture, begin]] of Object.entries(GESTURES).entries()) {
  test(`${gesture}: whatever comes between, nothing is left half done; let go, it is one step`, async ({
    page,
  }) => {
    const before = await saved(page);
    for (const [m, [moment, happen]] of Object.entries(MOMENTS).entries()) {
      if (!meets(g, m)) continue;
      await test.step(moment, async () => {
        await begin(page);
        await happen(page);
        await page.keyboard.press('Escape');
        await page.mouse.move(500, 300);
        await page.mouse.up();
        await expect(page.locator('.hint-card')).toBeHidden();
        await expect(page.locator('.stage.placing')).toHaveCount(0);
        await expect(page.getByText('REAR', { exact: true })).toBeVisible();
        await expect(page.getByRole('tab', { selected: true })).toHaveText('Three jetties');
        await expect(page.getByRole('button', { name: 'Undo remove S1' })).toBeVisible();
        expect(await saved(page), moment).toBe(before);
        for (const _ of 'abc') await page.keyboard.press('Escape');
      });
    }
    await test.step('let go', async () => {
      await begin(page);
      if (gesture === 'a kind in hand') await page.mouse.down();
      await page.mouse.up();
      await expect(page.getByRole('button', { name: /^Undo/ })).not.toHaveAccessibleName('Undo remove S1');
      expect(await saved(page)).not.toBe(before);
      await page.keyboard.press('Control+z');
      await expect(page.getByRole('button', { name: 'Undo remove S1' })).toBeVisible();
      expect(await saved(page)).toBe(before);
    });
  });
}
