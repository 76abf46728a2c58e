import { onRails, openApp, spotOn } from './app-page.ts';
import { expect, test } from './fixtures.ts';

test.beforeEach(({ page }) => openApp(page));

const card = (page: Parameters<typeof openApp>[0]) => page.getByRole('button', { name: /^Cobble 5 HP/ });

test('dragged from the tray onto the rails', async ({ page }) => {
  const { y } = await spotOn(page, /^Kelp/);
  const { x } = await spotOn(page, /^Harbour/);
  await card(page).hover();
  await page.mouse.down();
  await page.mouse.move(x - 40, y - 40);
  await page.mouse.move(x, y);
  await page.mouse.up();
  await expect(onRails(page, /^Cobble 7, 5 HP/)).toHaveCount(1);
  await expect(card(page)).toContainText('7 of 6');
  await page.keyboard.press('Delete');
  await expect(onRails(page, /^Cobble 7/)).toHaveCount(0);
});

test('with a tap in the tray and a tap on the rails', async ({ page }) => {
  const { y } = await spotOn(page, /^Kelp/);
  const { x } = await spotOn(page, /^Harbour/);
  await card(page).click();
  await expect(card(page)).toHaveAttribute('aria-pressed', 'true');
  await page.mouse.click(x, y);
  await expect(onRails(page, /^Cobble 7, 5 HP/)).toHaveCount(1);
  await expect(card(page)).toHaveAttribute('aria-pressed', 'false');
});

test('let go over the tray, or with Escape, nothing is placed', async ({ page }) => {
  await card(page).click();
  const { x, y } = await spotOn(page, /^Harbour/);
  await page.mouse.move(x, y + 60);
  await page.keyboard.press('Escape');
  await page.mouse.click(x, y);
  await card(page).hover();
  await page.mouse.down();
  await page.mouse.move(x, y);
  await card(page).hover();
  await page.mouse.up();
  await expect(onRails(page, /^Cobble 7/)).toHaveCount(0);
  await expect(card(page)).toHaveAttribute('aria-pressed', 'false');
});

test('the tray finds kinds by name, modules, ribbons and leads', async ({ page }) => {
  const stock = page.getByRole('region', { name: 'Stock' });
  await stock.getByRole('searchbox').fill('gu');
  await expect(stock.getByRole('listitem')).toHaveText([/^Gull/]);
  await stock.getByRole('searchbox').fill('');
  await stock.getByRole('button', { name: 'Leads' }).click();
  await expect(stock.getByRole('listitem').first()).toContainText('Lead 16-way, 150 mm');
  await stock.getByRole('button', { name: 'Ribbons' }).click();
  await expect(stock.getByRole('button', { name: /^Shore, 5 at 5 HP/ })).toContainText(
    '5 connectors · 1 of 1',
  );
});

test('a ribbon in hand is laid at the rear', async ({ page }) => {
  await page.keyboard.press('t');
  await expect(page.getByText('FRONT', { exact: true })).toBeVisible();
  const stock = page.getByRole('region', { name: 'Stock' });
  await stock.getByRole('button', { name: 'Ribbons' }).click();
  await stock.getByRole('button', { name: /^Shore, 2 at 5 HP/ }).click();
  await expect(page.getByText('REAR', { exact: true })).toBeVisible();
});
