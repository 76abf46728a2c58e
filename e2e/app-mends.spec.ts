import { openApp, verdict } from './app-page.ts';
import { expect, test } from './fixtures.ts';

const CLEAR = 'No conflict found in the data entered';

test('the tempting regrouping is mended by tapping remedies until nothing is wrong, each tap one undo', async ({
  page,
}) => {
  await openApp(page);
  await page.getByRole('tab', { name: 'One long jetty' }).click();
  await expect(verdict(page)).toContainText('would do damage');
  const before = (await verdict(page).textContent()) ?? '';
  const severe = page.locator('article.damage, article.fault');
  let taps = 0;
  while ((await severe.count()) > 0 && taps < 12) {
    const remedy = severe.locator('.mend').first();
    const label = (await remedy.textContent()) ?? '';
    await remedy.click();
    // Its note goes, and with it its remedy.
    await expect(severe.getByRole('button', { name: label, exact: true })).toHaveCount(0);
    taps++;
  }
  await expect(verdict(page)).toHaveText(CLEAR);
  expect(taps).toBeGreaterThan(3);
  for (let tap = 0; tap < taps; tap++) await page.keyboard.press('Control+z');
  await expect(verdict(page)).toHaveText(before.trim());
});

test('a touched note offers every remedy with its reason', async ({ page }) => {
  await openApp(page);
  await page.getByRole('tab', { name: 'One long jetty' }).click();
  const note = page.getByRole('article').filter({ hasText: 'fed 2 times' });
  await expect(note.locator('.mend')).toHaveCount(1);
  await note.getByRole('heading').getByRole('button').click();
  await expect(note.locator('.mend')).toHaveCount(2);
  await expect(note).toContainText('L3 stays: Boulder 2 draws most of those that are fed.');
});

test('modules that are not linked are offered a ribbon from the stock, in one tap and one undo', async ({
  page,
}) => {
  await openApp(page);
  await page.locator('.by-list').focus();
  // The third ribbon of the demo's first take joins two Cobbles to their Jetty.
  for (let i = 0; i < 3; i++) await page.keyboard.press('b');
  await expect(page.getByLabel('Label of the ribbon')).toHaveValue('S3');
  await page.keyboard.press('Delete');
  const note = page.getByRole('article').filter({ hasText: '2 modules not linked to a host' });
  await page.getByRole('button', { name: /^Worth knowing/ }).click();
  await note.getByRole('heading').getByRole('button').click();
  const remedy = note
    .getByRole('button', { name: /^Link Cobble 5 and Cobble 6 to Jetty C by Shore, / })
    .first();
  await remedy.click();
  await expect(note).toHaveCount(0);
  await page.keyboard.press('Control+z');
  await expect(page.getByText('2 modules not linked to a host')).toHaveCount(1);
});

test('Feed all that need it lays one lead for each group and says what it chose', async ({ page }) => {
  await openApp(page);
  await page.getByRole('button', { name: 'Menu' }).click();
  await expect(page.getByRole('button', { name: 'Feed all that need it' })).toHaveAttribute(
    'aria-disabled',
    'true',
  );
  await page.keyboard.press('Escape');
  await page.getByRole('tab', { name: 'One long jetty' }).click();
  const feed = page.getByRole('article').filter({ hasText: 'have no power lead' });
  await expect(feed).toHaveCount(1);
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'Feed all that need it' }).click();
  await expect(page.getByRole('alert')).toContainText('1 lead laid.');
  await expect(page.getByRole('alert')).toContainText('Boulder 1 takes it for all 5');
  await expect(feed).toHaveCount(0);
});
