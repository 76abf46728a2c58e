import { barriersOn } from './accessibility.ts';
import { openApp } from './app-page.ts';
import { expect, test } from './fixtures.ts';

test('the help, find a command and keys of my own', async ({ page }) => {
  await openApp(page);
  const help = page.locator('dialog.help');

  await page.keyboard.press('?');
  await help.getByRole('searchbox').fill('reversed');
  await help.locator('nav section').last().getByRole('button').first().click();
  const pictures = help.getByRole('img');
  await expect(pictures).toHaveCount(2);
  for (const picture of await pictures.all())
    await expect.poll(() => picture.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBeGreaterThan(0);
  expect(await barriersOn(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(help).toHaveCount(0);

  await page.keyboard.press('Control+k');
  const field = page.getByRole('combobox', { name: 'Find a command' });
  await field.fill('keys');
  expect(await barriersOn(page)).toEqual([]);
  await page.keyboard.press('Enter');
  await expect(help.getByRole('heading', { name: 'Keys', exact: true })).toBeVisible();
  expect(await barriersOn(page)).toEqual([]);

  await help
    .getByRole('button', { name: /^Change the key of Turn/ })
    .first()
    .click();
  await page.keyboard.press('Control+z');
  await expect(help.getByRole('status')).toContainText('already does this: Undo');
  await page.keyboard.press('q');
  await expect(help.getByRole('status')).toContainText('Q.');
  await page.keyboard.press('Escape');
  await page.reload();
  await expect(page.locator('.turn kbd')).toHaveText('Q');
});
