import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright/test';
import { barriersOn } from './accessibility.ts';
import { openApp } from './app-page.ts';
import { expect, test } from './fixtures.ts';

const desk = (page: Page) => page.getByRole('dialog', { name: 'Stock' });
const said = (page: Page) => desk(page).getByRole('status');
const paste = (page: Page) => page.getByLabel(/^Kinds of module from a spreadsheet/);

async function openPage(page: Page, label: RegExp): Promise<void> {
  if (!(await desk(page).isVisible())) await page.keyboard.press('s');
  await desk(page).getByRole('navigation').getByRole('button', { name: label }).click();
}

async function fromMenu(page: Page, label: string): Promise<void> {
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: label, exact: true }).click();
}

const trayKinds = (page: Page) => page.getByRole('region', { name: 'Stock' }).locator('[data-kind]');

/* Six kinds as a spreadsheet with decimal commas puts them on the clipboard; one width is a word. */
const SIX = [
  [
    'Name',
    'Width (HP)',
    'Depth',
    'Current at +12 V (mA)',
    'Current at -12 V (mA)',
    'Header 1 bus',
    'Header 1 x',
    'Header 1 y',
    'Owned',
    'Shelf',
  ],
  ['Pebble', '5', '32,5', '35', '25', 'Power, 10-way', '12,7', '91', '6', 'A'],
  ['Dune', '10,5', '', '120', '?', 'Power, 16-way', '25', '64', '1', 'A'],
  ['Reef', 'five', '30', '40', '30', 'Power, 10-way', '12,7', '91', '2', 'B'],
  ['Spray', '7½', '28', '0,06 A', '40', '', '', '', '1', 'B'],
  ['Shoal', '8', '2,6 cm', '80', '30', 'Power, 16-way', '20', '64', '2', 'C'],
  ['Blank', '4', '5', 'none', 'none', '', '', '', '', 'C'],
]
  .map((row) => row.join('\t'))
  .join('\n');

test('six kinds out of a pasted table: the bad cell is told and mended, and all land in one step', async ({
  page,
}) => {
  await openApp(page);
  await fromMenu(page, 'New case with an empty stock');
  await page.locator('.by-list').focus();
  await openPage(page, /^From a table/);
  expect(await barriersOn(page)).toEqual([]);
  await paste(page).fill(SIX);
  await expect(desk(page)).toContainText('1 column left out: Shelf');
  await expect(desk(page)).toContainText(
    'Row 4, column B (Width (HP)): “five”, it is not a width: from 0.5 HP on, in halves.',
  );
  await expect(desk(page).getByRole('button', { name: /^Make/ })).toHaveCount(0);
  expect(await barriersOn(page)).toEqual([]);
  const mend = page.getByLabel('Row 4, column B: should say');
  await mend.fill('5');
  await mend.press('Enter');
  const row = (name: string) => desk(page).getByRole('row').filter({ hasText: name });
  await expect(row('Pebble')).toContainText('32.5 mm');
  await expect(row('Dune')).toContainText('10.5 HP');
  await expect(row('Spray')).toContainText('60 mA');
  await expect(row('Shoal')).toContainText('26 mm');
  await expect(row('Blank')).toContainText('none');
  expect(await barriersOn(page)).toEqual([]);
  await desk(page).getByRole('button', { name: 'Make 6 kinds' }).click();
  await expect(said(page)).toHaveText(
    '6 kinds made. In my stock, too. One undo takes it all back from this layout.',
  );
  await expect(said(page)).toBeFocused();

  // Read again, the same table has nothing new to say.
  await paste(page).fill(SIX.replace('five', '5'));
  await expect(desk(page).getByRole('button', { name: 'Nothing to do' })).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(desk(page)).toHaveCount(0);
  await expect(trayKinds(page)).toHaveCount(6);
  await page.locator('.by-list').focus();
  await page.keyboard.press('Control+z');
  await expect(trayKinds(page)).toHaveCount(0);

  // A new layout starts from what is kept.
  await fromMenu(page, 'New case from my stock');
  await expect(trayKinds(page)).toHaveCount(6);
  await page.locator('.by-list').focus();
  await openPage(page, /^My stock/);
  await expect(desk(page).getByRole('heading', { name: 'In my stock' })).toBeVisible();
  await expect(desk(page).getByRole('listitem').filter({ hasText: 'Pebble' })).toContainText(
    'in this layout',
  );
});

test('what is newer in my stock is offered to a layout, taken in one step, and left where that is wanted', async ({
  page,
}) => {
  await openApp(page);
  await openPage(page, /^My stock/);
  await desk(page)
    .getByRole('button', { name: /^Keep all/ })
    .click();
  await expect(said(page)).toContainText('are in my stock.');
  expect(await barriersOn(page)).toEqual([]);

  // Changed in this layout, and put into my stock.
  await openPage(page, /^From a table/);
  await paste(page).fill('Name;Depth (mm)\nCobble;33,5');
  await desk(page).getByRole('button', { name: 'Change 1 kind' }).click();
  await openPage(page, /^My stock ?, 1/);
  const card = desk(page).locator('.offer');
  await expect(card).toContainText('depth: 33.5 mm here, 32 mm in my stock');
  expect(await barriersOn(page)).toEqual([]);
  await card.getByRole('button', { name: /^Put this layout’s into my stock/ }).click();
  await expect(said(page)).toHaveText('Cobble is in my stock.');
  await expect(said(page)).toBeFocused();
  await page.keyboard.press('Escape');

  // Another layout still has the older one.
  await fromMenu(page, 'Open the demo');
  await page.locator('.by-list').focus();
  await openPage(page, /^My stock ?, 1/);
  await expect(card).toContainText('Newer in my stock');
  await card.getByRole('button', { name: /^Leave it/ }).click();
  await expect(card).toHaveCount(0);
  await desk(page).getByRole('button', { name: 'Offer again what I left' }).click();
  await card.getByRole('button', { name: /^Take my stock’s/ }).click();
  await expect(said(page)).toHaveText('Cobble is as in my stock. One undo takes it back.');
  await expect(card).toHaveCount(0);
  await page.keyboard.press('Escape');
  await page.locator('.by-list').focus();
  await page.keyboard.press('Control+z');
  await openPage(page, /^My stock ?, 1/);
  await expect(card).toHaveCount(1);

  // It is there after a reload, and as a file.
  await page.reload();
  await page.locator('.by-list[data-held]').waitFor();
  await openPage(page, /^My stock/);
  await expect(desk(page).getByLabel('own of Cobble')).toHaveValue('6');
});

test('a table of my kinds goes out as a file that is read back as it was', async ({ page }) => {
  await page.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
  await openApp(page);
  await openPage(page, /^From a table/);
  await page
    .getByRole('combobox', { name: /^Numbers/ })
    .selectOption({ label: '12,5, cells apart by semicolons' });
  const download = page.waitForEvent('download');
  await desk(page).getByRole('button', { name: 'Save as a table…' }).click();
  const file = await download;
  expect(file.suggestedFilename()).toBe('Shoreline kit, kinds of module.csv');
  const text = await readFile(await file.path(), 'utf8');
  expect(text).toContain('Cobble;5;32');
  expect(text).toContain('12,7');
  await paste(page).fill(text);
  await expect(desk(page).getByRole('button', { name: 'Nothing to do' })).toBeVisible();
});

test('what a take is short of is counted, and exchanged with one tap and one undo', async ({ page }) => {
  await openApp(page);
  await openPage(page, /^My stock/);
  await desk(page)
    .getByRole('button', { name: /^Keep all/ })
    .click();
  const own = desk(page).getByLabel('own of Lead 16-way, 150 mm');
  await own.fill('2');
  await own.press('Enter');
  await desk(page)
    .locator('.offer')
    .getByRole('button', { name: /^Take my stock’s/ })
    .click();
  await openPage(page, /^Counts/);
  // Three of them lie in the demo’s first take, at 4 each.
  await expect(desk(page)).toContainText('1 piece short; buying costs 4.');
  const row = desk(page).getByRole('row').filter({ hasText: 'Lead 16-way, 150 mm' });
  await expect(row).toContainText('1 short');
  expect(await barriersOn(page)).toEqual([]);
  await desk(page).getByRole('button', { name: 'Use Lead 16-way, 250 mm for L4' }).click();
  await expect(said(page)).toHaveText('Done: Use Lead 16-way, 250 mm for L4. One undo takes it back.');
  await expect(said(page)).toBeFocused();
  await expect(row).toContainText('0 left');
  await page.keyboard.press('Escape');
  await page.locator('.by-list').focus();
  await page.keyboard.press('Control+z');
  await openPage(page, /^Counts/);
  await expect(row).toContainText('1 short');
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  test('all three pages fit, and can be worked by touch', async ({ page }) => {
    await openApp(page);
    await fromMenu(page, 'Stock S');
    const tab = (label: RegExp) => desk(page).getByRole('navigation').getByRole('button', { name: label });
    const isCutOff = () =>
      desk(page)
        .locator('.page')
        .evaluate((element) => element.scrollWidth > element.clientWidth);
    await tab(/^My stock/).tap();
    await desk(page).getByRole('button', { name: 'Keep Cobble in my stock' }).tap();
    await expect(said(page)).toHaveText('Cobble is in my stock.');
    expect(await isCutOff()).toBe(false);
    expect(await barriersOn(page)).toEqual([]);
    await tab(/^From a table/).tap();
    await paste(page).fill('Name;Width\nPebble;x');
    await expect(desk(page)).toContainText('Row 2, column B (Width)');
    expect(await isCutOff()).toBe(false);
    await page.getByLabel('Row 2, column B: should say').fill('5');
    await desk(page).getByText('It reads to').or(desk(page).getByText('1 cell cannot')).first().tap();
    await desk(page).getByRole('button', { name: 'Make 1 kind' }).tap();
    await expect(said(page)).toContainText('1 kind made.');
    await tab(/^Counts/).tap();
    await expect(desk(page)).toContainText('Three jetties needs nothing');
    expect(await isCutOff()).toBe(false);
    expect(await barriersOn(page)).toEqual([]);
  });
});
