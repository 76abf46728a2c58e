import type { Page } from 'playwright/test';
import { barriersOn } from './accessibility.ts';
import { onRails, openApp, verdict } from './app-page.ts';
import { expect, test } from './fixtures.ts';
import { openForm, pick, stock, type } from './support/kind-form.ts';

const note = (page: Page, words: string) => page.getByRole('article').filter({ hasText: words });

async function startWithEmptyStock(page: Page): Promise<void> {
  await openApp(page);
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'New case with an empty stock' }).click();
  await expect(stock(page).getByRole('listitem')).toHaveText(['No modules in stock yet.']);
}

/** Puts a kind in hand and lays it where the pointer is sent. */
async function put(page: Page, kind: RegExp, x: number, y: number): Promise<void> {
  await stock(page).getByRole('button', { name: kind }).click();
  await page.mouse.click(x, y);
}

test('from an empty stock: a bus, two modules, a ribbon and a lead by keyboard, placed and judged', async ({
  page,
}) => {
  await startWithEmptyStock(page);

  // A voice, and the bus that joins it.
  await openForm(page, 'New kind of module');
  await expect(page.getByLabel('Name', { exact: true })).toBeFocused();
  await pick(page, 'Sort', 'Voice');
  await type(page, 'Name', 'Pebble');
  await pick(page, 'Joins its host by', 'New');
  await type(page, 'Name of the bus', 'Reef');
  await type(page, 'Lines', '4');
  for (const [i, line] of ['+12', 'GND', 'GND', 'mix'].entries()) await type(page, `Pin ${i + 1}`, line);
  await type(page, 'Members a host takes', '3');
  expect(await barriersOn(page)).toEqual([]);
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('Joins its host by')).toBeFocused();
  await expect(page.getByLabel('Joins its host by').locator('option:checked')).toHaveText('Reef');
  await pick(page, 'Pin 1 is at', 'the lower');
  await type(page, 'Current from +12 V, mA', '40');
  expect(await barriersOn(page)).toEqual([]);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog')).toBeHidden();
  await expect(stock(page).getByRole('button', { name: 'New kind of module' })).toBeFocused();
  await expect(stock(page).getByRole('button', { name: /^Pebble 5 HP/ })).toBeVisible();

  // Its host, with power of its own; the same bus has the same height.
  await page.keyboard.press('Enter');
  await pick(page, 'Sort', 'Main');
  await type(page, 'Name', 'Lagoon');
  await pick(page, 'Hosts members on', 'Reef');
  await pick(page, 'Power header', 'Power, 16');
  await pick(page, 'Pin 1 is at', 'the lower');
  await expect(page.getByRole('dialog')).toContainText(
    '12.7 mm from the left edge seen from the front, 38 mm up',
  );
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Put in stock' }).focus();
  await page.keyboard.press('Enter');
  await expect(stock(page).getByRole('button', { name: /^Lagoon 5 HP/ })).toBeVisible();

  // A flat ribbon under its suggested name, and a lead.
  await stock(page).getByRole('button', { name: 'Ribbons', exact: true }).click();
  await openForm(page, 'New kind of ribbon');
  await type(page, 'How many', '2');
  await expect(page.getByLabel('Name', { exact: true })).toHaveValue('Reef, 2 at 5 HP');
  await page.keyboard.press('Enter');
  await stock(page).getByRole('button', { name: 'Leads', exact: true }).click();
  await openForm(page, 'New kind of lead');
  await type(page, 'Length', '600');
  await page.keyboard.press('Enter');
  await expect(stock(page).getByRole('button', { name: /^Lead 16-way, 600 mm/ })).toBeVisible();

  // On the rails: unlinked and without power, and it is told so.
  await stock(page).getByRole('button', { name: 'Modules', exact: true }).click();
  const ground = await page.locator('.by-list').boundingBox();
  if (!ground) throw new Error('no stage');
  await put(page, /^Lagoon/, ground.x + ground.width * 0.4, ground.y + 120);
  const lagoon = await onRails(page, /^Lagoon/).boundingBox();
  if (!lagoon) throw new Error('no Lagoon');
  await put(page, /^Pebble/, lagoon.x - lagoon.width / 2, lagoon.y + 60);
  await expect(onRails(page, /^Pebble/)).toHaveCount(1);
  await expect(note(page, 'no power lead').first()).toBeVisible();

  // The ribbon meets both headers, the lead the power header: what is left is what is not known.
  const pxPerMm = lagoon.height / 128.4;
  const middle = lagoon.x + lagoon.width / 2;
  await stock(page).getByRole('button', { name: 'Ribbons', exact: true }).click();
  await put(page, /^Reef, 2 at/, middle, lagoon.y + lagoon.height - 38 * pxPerMm);
  await expect(page.getByRole('region', { name: 'This part' })).toContainText('2 of 2 connectors seated');
  await stock(page).getByRole('button', { name: 'Leads', exact: true }).click();
  await put(page, /^Lead 16-way/, middle, lagoon.y + lagoon.height - 91 * pxPerMm);
  await expect(note(page, 'no power lead')).toHaveCount(0);
  await expect(note(page, '−12 V does not reach Pebble')).toBeVisible();

  // True: nothing on its bus carries −12 V. It draws none; said so of the kind, the note goes.
  await stock(page).getByRole('button', { name: 'Modules', exact: true }).click();
  await stock(page).getByRole('button', { name: 'Change or remove Pebble' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('menuitem', { name: 'Change' })).toBeFocused();
  await page.keyboard.press('Enter');
  await page.getByRole('radio', { name: 'none drawn from −12 V' }).focus();
  await page.keyboard.press('Space');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog')).toBeHidden();
  await expect(note(page, '−12 V does not reach Pebble')).toHaveCount(0);
  await expect(verdict(page)).toContainText('Incomplete');
});

test('impossible values are told at their field, and nothing half made comes into the stock', async ({
  page,
}) => {
  await startWithEmptyStock(page);
  await openForm(page, 'New kind of module');
  await type(page, 'Width', '5.2');
  await type(page, 'Depth behind the panel', 'deep');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog').getByLabel('Width')).toBeFocused();
  await expect(page.getByRole('dialog').getByLabel('Width')).toHaveAccessibleDescription(
    /from 0.5 to 1000 HP, in halves/,
  );
  await expect(page.getByRole('dialog').getByLabel('Depth behind the panel')).toHaveAttribute(
    'aria-invalid',
    'true',
  );
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toBeHidden();
  await expect(stock(page).getByRole('button', { name: 'New kind of module' })).toBeFocused();
  await expect(stock(page).getByRole('listitem')).toHaveText(['No modules in stock yet.']);

  await stock(page).getByRole('button', { name: 'Ribbons', exact: true }).click();
  await openForm(page, 'New kind of ribbon');
  await page.getByRole('radio', { name: 'at typed places' }).check();
  await type(page, 'Places', '0, 40, 36');
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('Places', { exact: true })).toHaveAccessibleDescription(/rise from 0/);
  await expect(page.getByLabel('Bus', { exact: true })).toHaveAccessibleDescription(/Choose a bus/);
});

test('a kind is changed, copied and removed from its tile; one in use says where it is used', async ({
  page,
}) => {
  await openApp(page);
  const more = stock(page).getByRole('button', { name: 'Change or remove Cobble' });
  await more.focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('menuitem', { name: 'Change' })).toBeFocused();
  await expect(page.getByRole('menuitem', { name: /^Remove/ })).toContainText('6 modules in Three jetties');
  expect(await barriersOn(page)).toEqual([]);
  await page.keyboard.press('Enter');
  await type(page, 'Width', '6');
  await page.keyboard.press('Enter');
  await expect(more).toBeFocused();
  await expect(onRails(page, /^Cobble \d, 6 HP/)).toHaveCount(6);
  await expect(verdict(page)).not.toHaveText('No conflict found in the data entered');
  await page.keyboard.press('Control+z');
  await expect(onRails(page, /^Cobble \d, 5 HP/)).toHaveCount(6);
  await expect(verdict(page)).toHaveText('No conflict found in the data entered');

  await more.focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('menuitem', { name: 'Change' })).toBeFocused();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  const copy = stock(page).getByRole('button', { name: 'Change or remove Cobble, copy' });
  await copy.focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('menuitem', { name: 'Change' })).toBeFocused();
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('Enter');
  await expect(copy).toHaveCount(0);
  await expect(stock(page).getByRole('button', { name: 'New kind of module' })).toBeFocused();
});
