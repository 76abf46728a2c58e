import type { Page } from 'playwright/test';
import { barriersOn } from './accessibility.ts';
import { openApp } from './app-page.ts';
import { expect, test } from './fixtures.ts';

const part = (page: Page) => page.getByRole('region', { name: 'This part' });
const named = (page: Page, label: string) =>
  expect(page.getByLabel('Label of the ribbon')).toHaveValue(label);

/** The second one of the demo's first take. */
async function chooseS2(page: Page): Promise<void> {
  await page.locator('.by-list').focus();
  await page.keyboard.press('b');
  await page.keyboard.press('b');
}

test('a ribbon is brought to the front and sent to the back by key; each is one undo', async ({ page }) => {
  await openApp(page);
  await chooseS2(page);
  await named(page, 'S2');
  await page.keyboard.press('o');
  await expect(page.getByRole('button', { name: 'Undo bring S2 to the front' })).toBeVisible();
  expect(await barriersOn(page)).toEqual([]);
  await page.keyboard.press('Shift+O');
  await expect(page.getByRole('button', { name: 'Undo send S2 to the back' })).toBeVisible();
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toHaveAttribute(
    'aria-disabled',
    'true',
  );
  await part(page).getByRole('button', { name: 'Send to back' }).click();
  await named(page, 'S2');
  await expect(page.getByRole('button', { name: 'Undo send S2 to the back' })).toBeVisible();
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  test('the same is found in the list and beside the part', async ({ page }) => {
    await openApp(page);
    await chooseS2(page);
    await page.getByRole('button', { name: 'This part' }).tap();
    await page.getByRole('button', { name: 'Bring to front' }).tap();
    await expect(page.getByRole('button', { name: 'Undo bring S2 to the front' })).toBeVisible();
    await page.locator('.fold-tabs').getByRole('button', { name: 'By list' }).tap();
    await page.getByRole('treeitem', { name: /^S2/ }).first().click();
    await page.keyboard.press('Enter');
    await expect(page.getByRole('menuitem', { name: /^Send to back/ })).toBeVisible();
  });
});
