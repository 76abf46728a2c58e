import { barriersOn } from './accessibility.ts';
import { expect, test } from './fixtures.ts';

test('the built app opens with its name as heading', async ({ page }) => {
  await page.goto('./');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Ribbonwright');
});

test('the first screen shuts nobody out', async ({ page }) => {
  await page.goto('./');
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  expect(await barriersOn(page)).toEqual([]);
});
