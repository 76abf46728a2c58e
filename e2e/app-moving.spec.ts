import { drag, holdAndMove, onRails, openApp, pxPerHp, spotOn, verdict } from './app-page.ts';
import { expect, test } from './fixtures.ts';

const CLEAR = 'No conflict found in the data entered';

test.beforeEach(({ page }) => openApp(page));

test('a module is selected, dragged by whole HP, and undone in one step', async ({ page }) => {
  const { x, y } = await spotOn(page, /^Gull 1/);
  await page.mouse.click(x, y);
  await expect(page.getByLabel('Name', { exact: true })).toHaveValue('Gull 1');
  await drag(page, /^Gull 1/, (await pxPerHp(page)) * -1.4);
  await expect(onRails(page, /^Gull 1, 8 HP at 73/)).toHaveCount(1);
  await page.getByRole('button', { name: 'Undo move Gull 1' }).click();
  await expect(onRails(page, /^Gull 1, 8 HP at 72/)).toHaveCount(1);
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toHaveAttribute(
    'aria-disabled',
    'true',
  );
});

test('a note comes while the module moves, and goes when it moves back', async ({ page }) => {
  await expect(verdict(page)).toHaveText(CLEAR);
  await holdAndMove(page, /^Gull 1/, (await pxPerHp(page)) * -5);
  await expect(page.getByRole('article').filter({ hasText: 'Gull 1 and Foghorn share 3 HP' })).toBeVisible();
  await expect(verdict(page)).toHaveText('1 will not fit or work');
  const { x, y } = await spotOn(page, /^Gull 1/);
  await page.mouse.move(x, y);
  await expect(verdict(page)).toHaveText(CLEAR);
  await page.mouse.up();
  await expect(page.getByRole('article').filter({ hasText: 'share' })).toHaveCount(0);
});

test('Escape in the middle of a drag puts the module back', async ({ page }) => {
  await holdAndMove(page, /^Gull 1/, (await pxPerHp(page)) * -5);
  await page.keyboard.press('Escape');
  await expect(verdict(page)).toHaveText(CLEAR);
  await page.mouse.up();
  await expect(onRails(page, /^Gull 1, 8 HP at 72/)).toHaveCount(1);
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toHaveAttribute(
    'aria-disabled',
    'true',
  );
});

test('a remedy is one tap and one undo', async ({ page }) => {
  await page.getByRole('tab', { name: 'One long jetty' }).click();
  await expect(verdict(page)).toContainText('2 things would do damage');
  await page.getByRole('button', { name: 'Move Cobble 3 to 25 HP' }).click();
  await expect(verdict(page)).toContainText('1 thing would do damage');
  await page.keyboard.press('Control+z');
  await expect(verdict(page)).toContainText('2 things would do damage');
});

test('a fault that is put away weighs no more, and can be brought back; damage cannot be put away', async ({
  page,
}) => {
  await page.getByRole('tab', { name: 'One long jetty' }).click();
  await expect(verdict(page)).toContainText('4 will not fit or work');
  const fault = page.getByRole('article').filter({ hasText: 'Foghorn would stand on Board 2' });
  await fault.getByRole('button', { name: 'Put away' }).click();
  await expect(verdict(page)).toContainText('3 will not fit or work');
  await page.getByRole('button', { name: 'Put away (1)' }).click();
  await fault.getByRole('button', { name: /^Foghorn/ }).click();
  await fault.getByRole('button', { name: 'Bring back' }).click();
  await expect(verdict(page)).toContainText('4 will not fit or work');
  const damage = page.getByRole('article').filter({ hasText: 'lands one pin row off' });
  await expect(damage).toBeVisible();
  await expect(damage.getByRole('button', { name: 'Put away' })).toHaveCount(0);
});

test('place and row are typed too', async ({ page }) => {
  const { x, y } = await spotOn(page, /^Gull 1/);
  await page.mouse.click(x, y);
  await page.getByLabel(/^Place, HP/).fill('96');
  await page.getByLabel(/^Place, HP/).press('Enter');
  await expect(onRails(page, /^Gull 1, 8 HP at 96/)).toHaveCount(1);
  await page.getByLabel('Row', { exact: true }).selectOption('Lower row');
  await expect(
    page.getByRole('group', { name: 'Lower row' }).getByRole('option', { name: /^Gull 1/ }),
  ).toHaveCount(1);
});

test('by keys alone: walk, pick up, move, put down', async ({ page }) => {
  await page.locator('.by-list').focus();
  for (const key of ['ArrowRight', 'ArrowRight', 'Enter', 'ArrowLeft', 'ArrowLeft'])
    await page.keyboard.press(key);
  await expect(page.getByRole('status')).toHaveText('74 HP, Upper row.');
  await page.keyboard.press('Escape');
  await expect(page.getByRole('status')).toHaveText('Put back.');
  for (const key of ['Enter', 'ArrowLeft', 'Alt+ArrowLeft', 'Enter']) await page.keyboard.press(key);
  await expect(onRails(page, /^Gull 1, 8 HP at 73.5/)).toHaveCount(1);
});
