import type { Page } from 'playwright/test';
import { barriersOn } from './accessibility.ts';
import { onRails, openApp, spotOn, verdict } from './app-page.ts';
import { expect, test } from './fixtures.ts';
import { stock } from './support/kind-form.ts';
import { editor, headerOn, kindRow, pinsOf, pxPerMm } from './support/module-editor.ts';

const desk = (page: Page) => page.getByRole('dialog', { name: 'Stock' });
const note = (page: Page, words: string) => page.getByRole('article').filter({ hasText: words });

const openPage = (page: Page, name: string) =>
  desk(page).getByRole('navigation').getByRole('button', { name, exact: true }).click();

/** Six kinds as a spreadsheet has them on the clipboard; what joins them at the rear no table can draw. */
const SIX = [
  ['Name', 'Width (HP)', 'Depth', 'Current at +12 V (mA)', 'Current at -12 V (mA)', 'Owned'],
  ['Skerry', '10', '30', '60', '40', '1'],
  ['Pebble', '5', '28', '35', '25', '6'],
  ['Dune', '12', '25', '80', '60', '1'],
  ['Spray', '8', '28', '60', '40', '1'],
  ['Shoal', '8', '26', '80', '30', '2'],
  ['Blank', '4', '5', 'none', 'none', ''],
]
  .map((row) => row.join('\t'))
  .join('\n');

/** Adds a header to the kind that is open, of this bus and role, and drags it up by so many mm. */
async function drawHeader(page: Page, bus: string, role: string, upMm: number): Promise<void> {
  await page.getByRole('button', { name: 'Header', exact: true }).click();
  await page.getByLabel('Bus', { exact: true }).selectOption(bus);
  await page.getByLabel('Role').selectOption(role);
  const at = await pinsOf(page, bus);
  const px = await pxPerMm(page);
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  await page.mouse.move(at.x, at.y - upMm * px, { steps: 4 });
  await page.mouse.up();
  await expect(headerOn(page, bus)).toHaveCount(1);
}

async function put(page: Page, kind: RegExp, x: number, y: number): Promise<void> {
  await stock(page).getByRole('button', { name: kind }).click();
  await page.mouse.click(x, y);
}

test('a newcomer: a table of six kinds, headers of two drawn, a ribbon made to measure, a group, and a true note', async ({
  page,
}) => {
  await openApp(page);
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'New case with an empty stock' }).click();
  await page.locator('.by-list').focus();
  await page.keyboard.press('s');

  await openPage(page, 'From a table');
  await page.getByLabel(/^Kinds of module from a spreadsheet/).fill(SIX);
  await desk(page).getByRole('button', { name: 'Make 6 kinds' }).click();
  await expect(desk(page).getByRole('status')).toContainText('6 kinds made.');

  // The bus that joins two of them: four pins, one of which carries what they share.
  await openPage(page, 'Buses and voltages');
  await desk(page).getByRole('button', { name: 'New bus' }).click();
  await page.keyboard.type('Reef');
  for (let pair = 0; pair < 3; pair++) await desk(page).getByRole('button', { name: 'Last pair' }).click();
  await desk(page).getByLabel('Pin 1', { exact: true }).focus();
  for (const line of ['GND', 'GND', 'mix', 'GND']) {
    await page.keyboard.type(line);
    await page.keyboard.press('Enter');
  }
  await desk(page).getByRole('button', { name: 'Put in stock' }).click();

  await openPage(page, 'Modules');
  for (const [kind, role] of [
    ['Skerry', 'host'],
    ['Pebble', 'member'],
  ] as const) {
    await kindRow(page, kind).click();
    await drawHeader(page, 'Reef', role, 20);
    await drawHeader(page, 'Power, 10-way', 'member', -20);
    await editor(page).getByRole('button', { name: 'Change', exact: true }).click();
    await expect(editor(page)).toBeHidden();
    await expect(kindRow(page, kind)).toContainText('2 headers');
  }
  await page.keyboard.press('Escape');

  // On the rails from the right, as they are seen from the rear.
  const ground = await page.locator('.by-list').boundingBox();
  if (!ground) throw new Error('no stage');
  await put(page, /^Skerry/, ground.x + ground.width * 0.5, ground.y + 120);
  const host = await onRails(page, /^Skerry/).boundingBox();
  if (!host) throw new Error('no Skerry');
  const px = host.width / 10;
  for (const n of [1, 2]) await put(page, /^Pebble/, host.x - (n * 5 - 2.5) * px, host.y + 60);
  await expect(onRails(page, /^Pebble/)).toHaveCount(2);

  // One ribbon for the three, cut so that each connector meets its header.
  for (const [i, name] of [/^Skerry/, /^Pebble, /, /^Pebble 2/].entries()) {
    const { x, y } = await spotOn(page, name);
    if (i > 0) await page.keyboard.down('Shift');
    await page.mouse.click(x, y);
    if (i > 0) await page.keyboard.up('Shift');
  }
  await page.keyboard.press('u');
  await expect(desk(page).getByRole('heading', { name: 'Made to measure' })).toBeVisible();
  await expect(desk(page).getByRole('checkbox', { checked: true })).toHaveCount(3);
  expect(await barriersOn(page)).toEqual([]);
  await desk(page).getByRole('button', { name: 'Put in stock and lay it' }).click();
  await expect(desk(page)).toBeHidden();

  // They are one group, and nothing in it is out of place.
  const part = page.getByRole('region', { name: 'This part' });
  const pebble = await spotOn(page, /^Pebble, /);
  await page.mouse.click(pebble.x, pebble.y);
  await part.getByRole('button', { name: 'Select what is joined' }).click();
  await expect(part.getByRole('heading')).toHaveText(/selected/);
  await expect(onRails(page, /^Skerry/)).toHaveAttribute('aria-selected', 'true');
  await expect(note(page, 'misses')).toHaveCount(0);
  await expect(note(page, 'not linked')).toHaveCount(0);

  // True: the ribbon carries no voltage, so each of the three is told apart, with what the table says it draws.
  await expect(verdict(page)).toHaveText('3 will not fit or work');
  await expect(note(page, 'Pebble has no power lead')).toContainText(
    'It draws 35 mA on +12 V and 25 mA on \u221212 V. One lead feeds it.',
  );
});
