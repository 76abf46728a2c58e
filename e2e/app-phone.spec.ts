import { devices } from 'playwright/test';
import { barriersOn } from './accessibility.ts';
import { onRails, openApp, spotOn, verdict } from './app-page.ts';
import { expect, test } from './fixtures.ts';

const { defaultBrowserType: _, ...phone } = devices['Pixel 7'];

test.use({ ...phone, viewport: { width: 390, height: 844 } });

test.beforeEach(({ page }) => openApp(page));

test('tray, notes and part fold to the bottom, and nothing is wider than the screen', async ({ page }) => {
  await page.getByRole('tab', { name: 'One long jetty' }).tap();
  await expect(verdict(page)).toContainText('2 things would do damage');
  for (const name of [/^Stock/, /^Notes/, /^This part/]) {
    await page.getByRole('button', { name }).tap();
    expect(await barriersOn(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
  }
});

test('a module is tapped, moved by typing, and taken back', async ({ page }) => {
  const { x, y } = await spotOn(page, /^Jetty A/);
  await page.touchscreen.tap(x, y);
  await page.getByRole('button', { name: 'This part' }).tap();
  await page.getByLabel(/^Place, HP/).fill('96');
  await page.getByLabel(/^Place, HP/).press('Enter');
  await expect(onRails(page, /^Jetty A, 5 HP at 96/)).toHaveCount(1);
  await page.getByRole('button', { name: /^Undo/ }).tap();
  await expect(onRails(page, /^Jetty A, 5 HP at 10/)).toHaveCount(1);
});

test('tap in the stock and tap on the rails', async ({ page }) => {
  const { x, y } = await spotOn(page, /^Cobble 5/);
  await page.getByRole('button', { name: 'Stock' }).tap();
  await page.getByRole('button', { name: /^Gull 8 HP/ }).tap();
  await page.touchscreen.tap(x + 150, y);
  await expect(onRails(page, /^Gull 3, 8 HP/)).toHaveCount(1);
});

test('what can be tapped is large enough for a finger', async ({ page }) => {
  await page.getByRole('tab', { name: 'One long jetty' }).tap();
  await page.getByRole('button', { name: 'Notes' }).tap();
  const small = await page.evaluate(() =>
    [...document.querySelectorAll('button, input, select')]
      .map((element) => ({ element, box: element.getBoundingClientRect() }))
      .filter(
        ({ element, box }) => box.width > 0 && !element.closest('h2') && (box.height < 40 || box.width < 40),
      )
      .map(({ element }) => element.textContent || element.getAttribute('aria-label')),
  );
  expect(small).toEqual([]);
});
