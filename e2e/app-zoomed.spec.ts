import { barriersOn } from './accessibility.ts';
import { onRails, openApp, spotOn } from './app-page.ts';
import { expect, test } from './fixtures.ts';

// A window of 1440 by 900 at 400 %, as WCAG 2.2, 1.4.10 asks for 320 CSS px.
test.use({ viewport: { width: 360, height: 225 } });

test('at four times the size the page scrolls, and the drawing can be seen and used', async ({ page }) => {
  await openApp(page);
  const stage = page.locator('.by-list');
  expect((await stage.boundingBox())?.height).toBeGreaterThan(150);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(360);
  expect(await barriersOn(page)).toEqual([]);
  await stage.focus();
  const top = (await stage.boundingBox())?.y ?? 0;
  await page.evaluate((to) => window.scrollTo(0, to), top - 20);
  const { x, y } = await spotOn(page, /^Harbour/);
  expect(y).toBeGreaterThan(0);
  expect(y).toBeLessThan(225);
  await page.mouse.click(x, y);
  await expect(onRails(page, /^Harbour/)).toHaveAttribute('aria-selected', 'true');
  await page.getByRole('button', { name: 'This part' }).click();
  await expect(page.getByLabel(/^Place, HP/)).toBeVisible();
  await page.getByLabel(/^Place, HP/).fill('90');
  await page.getByLabel(/^Place, HP/).press('Enter');
  await expect(onRails(page, /^Harbour, 10 HP at 90/)).toHaveCount(1);
});
