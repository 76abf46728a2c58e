import { barriersOn } from './accessibility.ts';
import { onRails, openApp, spotOn } from './app-page.ts';
import { expect, test } from './fixtures.ts';

test('the help, find a command and keys of my own', async ({ page }) => {
  await openApp(page);
  const help = page.locator('dialog.help');

  await page.keyboard.press('?');
  await help.getByRole('searchbox').fill('reversed');
  await help.locator('nav section').last().getByRole('button').first().click();
  const pictures = help.getByRole('img');
  await expect(pictures).toHaveCount(4);
  for (const picture of await pictures.all())
    await expect.poll(() => picture.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBeGreaterThan(0);
  expect(await barriersOn(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(help).toHaveCount(0);

  await page.keyboard.press('Control+k');
  const field = page.getByRole('combobox', { name: 'Find a command' });
  await field.fill('swap');
  await expect(page.getByRole('option', { name: /Swap places/ })).toContainText('Select two modules first');
  await field.fill('keys');
  expect(await barriersOn(page)).toEqual([]);
  await page.keyboard.press('Enter');
  await expect(help.getByRole('heading', { name: 'Keys', exact: true })).toBeVisible();
  expect(await barriersOn(page)).toEqual([]);

  await help.getByRole('button', { name: 'Change the key of Turn to the front' }).click();
  await page.keyboard.press('Control+z');
  await expect(help.getByRole('status')).toContainText('already does this: Undo');
  await page.keyboard.press('q');
  await expect(help.getByRole('status')).toContainText('Turn to the front: Q.');
  await help.getByRole('button', { name: 'Change the key of Turn the stripe' }).click();
  await page.keyboard.press('q');
  await expect(help.getByRole('status')).toContainText('Turn the stripe to the other side: Q.');
  await help.getByRole('button', { name: 'Change the key of Remove' }).first().click();
  await page.keyboard.press('Control+Delete');
  await page.keyboard.press('Escape');
  await page.reload();
  await expect(page.locator('.turn kbd')).toHaveText('Q');
  await page.locator('.by-list[data-held]').waitFor();
  const { x, y } = await spotOn(page, /^Harbour/);
  await page.mouse.click(x, y);
  await page.keyboard.press('Delete');
  await expect(onRails(page, /^Harbour/)).toHaveCount(1);
  await page.keyboard.press('Control+Delete');
  await expect(onRails(page, /^Harbour/)).toHaveCount(0);
});

test('Why? opens the page of the check, Back leads out of it to the note, and a link is offered as ever', async ({
  page,
}) => {
  await openApp(page);
  const help = page.locator('dialog.help');
  const heading = help.locator('h2');
  const why = page.locator('.note').getByRole('button', { name: 'Why?' }).first();
  await page.getByText('One long jetty').first().click();
  await why.click();
  await expect(heading).toHaveText('Connector that can sit beside its pins');
  await expect(help.locator('.help-body')).toBeFocused();
  await help.getByRole('button', { name: 'Contents' }).click();
  await help.getByRole('button', { name: 'From a box of modules' }).click();
  const first = help.getByRole('img').first();
  await expect.poll(() => first.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBe(680);
  expect(await barriersOn(page)).toEqual([]);
  await page.goBack();
  await expect(heading).toHaveText('Help');
  await help.getByRole('button', { name: 'Back' }).click();
  await expect(heading).toHaveText('Connector that can sit beside its pins');
  await page.goBack();
  await expect(help).toHaveCount(0);
  await expect(why).toBeFocused();

  await page.goForward();
  await expect(heading).toHaveText('Connector that can sit beside its pins');
  await page.keyboard.press('Escape');
  await expect(help).toHaveCount(0);
  await expect(why).toBeFocused();
  expect(await page.evaluate(() => history.state)).toBeNull();

  await page.evaluate(() => {
    location.hash = '#rw1.broken';
  });
  await expect(page.locator('.banner')).toContainText('link');
});
