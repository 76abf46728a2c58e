import type { Page } from 'playwright/test';
import { barriersOn } from './accessibility.ts';
import { openApp } from './app-page.ts';
import { expect, test } from './fixtures.ts';

const title = (page: Page) => page.getByLabel('Title of the layout', { exact: true });

/** Names the layout, and waits until the shelf has it. */
async function rename(page: Page, name: string): Promise<void> {
  await title(page).fill(name);
  await title(page).press('Enter');
  await expect(page.locator('.kept-line')).toContainText('Saved');
}

test('what the layout was in an earlier session is looked at and brought back as one step', async ({
  page,
}) => {
  await openApp(page);
  await rename(page, 'First evening');
  for (const name of ['Second evening', 'Third evening']) {
    await openApp(page);
    await rename(page, name);
  }
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'Earlier states' }).click();
  const desk = page.getByRole('dialog', { name: 'Earlier states of “Third evening”' });
  await expect(desk.getByRole('listitem')).toHaveCount(2);
  await expect(desk.getByRole('listitem').first()).toContainText('Then: It is called Third evening.');
  expect(await barriersOn(page)).toEqual([]);
  await desk
    .getByRole('button', { name: /^Bring it back as of/ })
    .last()
    .click();
  await expect(title(page)).toHaveValue('First evening');
  await page.keyboard.press('Control+z');
  await expect(title(page)).toHaveValue('Third evening');

  await page.keyboard.press('m');
  await page.getByRole('button', { name: 'Earlier states of Third evening' }).click();
  // The one before it was brought back has come.
  await expect(desk.getByRole('listitem')).toHaveCount(3);
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog', { name: 'My layouts' })).toBeVisible();
});

test('a store that is taken away under the page is opened anew; one of a newer program is left alone, and the edit is not lost', async ({
  page,
}) => {
  await openApp(page);
  await rename(page, 'Before');
  await page.evaluate(
    () =>
      new Promise<void>((resolve) => {
        indexedDB.deleteDatabase('ribbonwright').onsuccess = () => resolve();
      }),
  );
  await rename(page, 'After');
  await openApp(page);
  await expect(title(page)).toHaveValue('After');

  await page.evaluate(
    () =>
      new Promise<void>((resolve) => {
        const request = indexedDB.open('ribbonwright', 99);
        request.onsuccess = () => {
          request.result.close();
          resolve();
        };
      }),
  );
  await title(page).fill('Too late');
  await title(page).press('Enter');
  await expect(page.locator('.kept-line')).toContainText('Not saved: a newer version was here');
  const unsaved = await page.evaluate(() =>
    Object.entries(localStorage).filter(([key]) => key.includes('unsaved')),
  );
  expect(JSON.stringify(unsaved)).toContain('Too late');
});
