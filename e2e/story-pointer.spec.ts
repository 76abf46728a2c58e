import type { Locator, Page } from 'playwright/test';
import { onRails, openApp, type Spot, spotOn, verdict } from './app-page.ts';
import { expect, test } from './fixtures.ts';
import { openForm, pick, stock, type } from './support/kind-form.ts';

const CLEAR = 'No conflict found in the data entered';
const HP_MM = 5.08;

const panel = (page: Page): Locator => page.getByRole('region', { name: 'My case' });
const part = (page: Page): Locator => page.getByRole('region', { name: 'This part' });
const note = (page: Page, words: string): Locator => page.getByRole('article').filter({ hasText: words });
const card = (page: Page): Locator => page.locator('.hint-card');

async function fromMenu(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name, exact: true }).click();
}

const shelf = (page: Page, name: string): Promise<void> =>
  stock(page).getByRole('button', { name, exact: true }).click();

/** Finishes the form that is open. */
async function putInStock(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Put in stock' }).click();
  await expect(page.getByRole('dialog')).toBeHidden();
}

/** What every module of this story is: measured, so deep, pin 1 at the lower end, and what it draws. */
async function giveFacts(page: Page, ma: readonly [string, string]): Promise<void> {
  await pick(page, 'Pin 1 is at', 'the lower');
  await type(page, 'Depth behind the panel', '30');
  await type(page, 'Current from +12 V, mA', ma[0]);
  await type(page, 'Current from −12 V, mA', ma[1]);
  await pick(page, 'These facts are', 'measured');
}

async function makeBus(page: Page, name: string, pins: readonly string[], most: string): Promise<void> {
  await type(page, 'Name of the bus', name);
  await type(page, 'Lines', `${pins.length}`);
  for (const [i, line] of pins.entries()) await type(page, `Pin ${i + 1}`, line);
  await type(page, 'Members a host takes', most);
  await page.getByRole('button', { name: 'Use this bus' }).click();
}

async function makeRibbon(page: Page, bus: string, deeds: () => Promise<void>): Promise<void> {
  await openForm(page, 'New kind of ribbon');
  await page.getByLabel('Bus', { exact: true }).selectOption({ label: bus });
  await deeds();
  await putInStock(page);
}

/** The rails of the upper row as the rear shows them: px per mm, and the front's left end at the right. */
interface Rails {
  readonly scale: number;
  readonly right: number;
  readonly bottom: number;
}

/** Px of a place of the upper row: mm from the front's left end and from the panels' lower edge. */
const at = ({ scale, right, bottom }: Rails, xMm: number, yMm: number): Spot => ({
  x: right - xMm * scale,
  y: bottom - yMm * scale,
});

/** Drags a kind from the stock so that its left edge, seen from the front, comes to a place. */
async function dragOver(page: Page, kind: RegExp, rails: Rails, atHp: number, widthHp: number) {
  await stock(page).getByRole('button', { name: kind }).hover();
  await page.mouse.down();
  const to = at(rails, (atHp + widthHp / 2) * HP_MM, 60);
  await page.mouse.move(to.x, to.y + 40);
  await page.mouse.move(to.x, to.y);
  await page.mouse.up();
}

/** Takes a ribbon from the stock and draws it from a place to a place. */
async function lay(page: Page, kind: RegExp, from: Spot, to: Spot): Promise<void> {
  await stock(page).getByRole('button', { name: kind }).click();
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move((from.x + to.x) / 2, (from.y + to.y) / 2);
  await page.mouse.move(to.x, to.y);
}

test('from nothing to two linked groups on one main unit, fed; a slip is told and mended, and undo leads all the way back', async ({
  page,
}) => {
  test.slow();
  await openApp(page);
  await fromMenu(page, 'New case with an empty stock');

  // The case, by a ready pattern.
  await panel(page).getByRole('button', { name: '2 × 104 HP' }).click();
  await expect(page.getByRole('button', { name: /^Case 2 × 104 HP/ })).toBeVisible();
  await panel(page).getByRole('button', { name: 'Done' }).click();
  await expect(panel(page)).toBeHidden();

  // A voice and its bus, which carries power; its power header is its own.
  await openForm(page, 'New kind of module');
  await pick(page, 'Sort', 'Voice');
  await type(page, 'Name', 'Pebble');
  await pick(page, 'Joins its host by', 'New');
  await makeBus(page, 'Reef', ['-12', '-12', 'GND', 'GND', 'GND', '+12', '+12', 'GND', 'mix', 'strike'], '6');
  await page.getByLabel('Power header').selectOption({ label: 'Power, 10-way' });
  await giveFacts(page, ['35', '25']);
  await putInStock(page);

  // A collector: hosts voices on the same bus, joins the main unit by another that carries none.
  await openForm(page, 'New kind of module');
  await pick(page, 'Sort', 'Collector');
  await type(page, 'Name', 'Lagoon');
  await page.getByLabel('Hosts members on').selectOption({ label: 'Reef' });
  await pick(page, 'Joins the main unit by', 'New');
  await makeBus(
    page,
    'Surge',
    ['GND', 'left', 'GND', 'right', 'GND', 'clock', 'GND', 'reset', 'tone', 'GND'],
    '3',
  );
  await page.getByLabel('Power header').selectOption({ label: 'none' });
  await giveFacts(page, ['50', '45']);
  await putInStock(page);

  // The main unit.
  await openForm(page, 'New kind of module');
  await pick(page, 'Sort', 'Main');
  await type(page, 'Name', 'Delta');
  await type(page, 'Width', '10');
  await page.getByLabel('Hosts members on').selectOption({ label: 'Surge' });
  await page.getByLabel('Power header').selectOption({ label: 'Power, 16-way' });
  await giveFacts(page, ['120', '60']);
  await putInStock(page);

  // Ribbons: of fixed pitch, bending, for the second bus with its extension; leads with either end.
  await shelf(page, 'Ribbons');
  await makeRibbon(page, 'Reef', async () => {});
  await makeRibbon(page, 'Reef', async () => {
    await page.getByRole('radio', { name: /^May bend/ }).check();
    await page.getByRole('radio', { name: 'at typed places' }).check();
    await type(page, 'Places', '0, 36, 72');
  });
  for (const plug of ['none, all are sockets', 'the last connector (an extension)']) {
    await makeRibbon(page, 'Surge', async () => {
      await page.getByRole('radio', { name: /^May bend/ }).check();
      await page.getByRole('radio', { name: 'at typed places' }).check();
      await type(page, 'Places', '0, 45, 90');
      await page.getByLabel('Plug', { exact: true }).selectOption({ label: plug });
    });
  }
  await shelf(page, 'Leads');
  for (const ways of ['', '10']) {
    await openForm(page, 'New kind of lead');
    await type(page, 'Length', '600');
    await type(page, 'Ways of the last connector', ways);
    await putInStock(page);
  }

  // Onto the rails: the main unit at the front's left end, then two groups beside it.
  await shelf(page, 'Modules');
  const ground = await page.locator('.by-list').boundingBox();
  if (!ground) throw new Error('no stage');
  await stock(page)
    .getByRole('button', { name: /^Delta/ })
    .hover();
  await page.mouse.down();
  await page.mouse.move(ground.x + ground.width * 0.6, ground.y + 100);
  await page.mouse.move(ground.x + ground.width - 400, ground.y + 120);
  await page.mouse.up();
  await part(page)
    .getByLabel(/^Place, HP/)
    .fill('0');
  await page.keyboard.press('Enter');
  const delta = await onRails(page, /^Delta, 10 HP at 0/).boundingBox();
  if (!delta) throw new Error('no Delta');
  const scale = delta.width / (10 * HP_MM - 0.3);
  const rails: Rails = {
    scale,
    right: delta.x + delta.width + 0.15 * scale,
    bottom: delta.y + delta.height,
  };
  for (const [kind, atHp] of [
    [/^Lagoon/, 10],
    [/^Pebble/, 15],
    [/^Pebble/, 20],
    [/^Lagoon/, 25],
    [/^Pebble/, 30],
    [/^Pebble/, 35],
  ] as const)
    await dragOver(page, kind, rails, atHp, 5);
  await expect(onRails(page, /^Pebble/)).toHaveCount(4);
  await expect(onRails(page, 'Lagoon 2, 5 HP at 25')).toHaveCount(1);

  // Two groups: one ribbon over each, the second arching.
  const middle = (atHp: number): number => (atHp + 2.5) * HP_MM;
  await shelf(page, 'Ribbons');
  await lay(page, /^Reef, 3 at 5 HP/, at(rails, middle(10), 38), at(rails, middle(20), 36));
  await expect(card(page)).toContainText('3 of 3 land');
  await page.mouse.up();
  await lay(page, /^Reef, 3 bending/, at(rails, middle(25), 38), at(rails, middle(35), 36));
  await expect(card(page)).toContainText('3 of 3 land');
  await page.mouse.up();

  // Both to the main unit: the first collector by the ribbon, the second by the extension in the ribbon's free socket.
  const surge = { main: at(rails, 25.4, 74), first: at(rails, middle(10), 74) };
  await lay(page, /^Surge, 3 bending/, surge.main, surge.first);
  await expect(card(page)).toContainText('2 of 3 land');
  await page.mouse.up();
  await expect(part(page)).toContainText('2 of 3 connectors seated');
  const free = at(rails, middle(10) + 45, 74);
  await lay(page, /^Surge extension, 3 bending/, free, at(rails, middle(25), 72));
  await page.mouse.up();
  await expect(part(page)).toContainText('2 of 3 connectors seated');
  await expect(note(page, 'not linked')).toHaveCount(0);

  // Fed in one go: one lead for each group and one for the main unit.
  const notes = page.getByRole('region', { name: 'Notes' });
  await notes.getByRole('button', { name: 'Feed all that need it' }).click();
  await expect(page.getByRole('alert')).toContainText('3 leads laid.');
  await expect(verdict(page)).toHaveText(CLEAR);

  // Seen from the front the same case is free of notes, and turned round again.
  await page.keyboard.press('t');
  await expect(page.getByText('FRONT', { exact: true })).toBeVisible();
  await expect(verdict(page)).toHaveText(CLEAR);
  const front = await spotOn(page, 'Pebble, 5 HP at 15');
  expect(front.x).toBeLessThan((await spotOn(page, 'Pebble 2, 5 HP at 20')).x);
  await page.keyboard.press('t');
  await expect(page.getByText('REAR', { exact: true })).toBeVisible();

  // Half an HP off: told while the hand still moves, mended with one tap.
  const pebble = await spotOn(page, /^Pebble 2/);
  await page.keyboard.down('Alt');
  await page.mouse.move(pebble.x, pebble.y);
  await page.mouse.down();
  await page.mouse.move(pebble.x - 0.25 * HP_MM * scale - 4, pebble.y);
  await page.mouse.move(pebble.x - 0.5 * HP_MM * scale, pebble.y);
  await expect(note(page, 'lands one pin row off Pebble 2')).toBeVisible();
  await expect(verdict(page)).toContainText('1 thing would do damage');
  await page.mouse.up();
  await page.keyboard.up('Alt');
  await expect(onRails(page, 'Pebble 2, 5 HP at 20.5')).toHaveCount(1);
  await note(page, 'lands one pin row off Pebble 2')
    .getByRole('button', { name: /^Move Pebble 2 to 20 HP/ })
    .click();
  await expect(verdict(page)).toHaveText(CLEAR);
  await expect(onRails(page, 'Pebble 2, 5 HP at 20')).toHaveCount(1);

  // All the way back to what was there first.
  const undo = page.getByRole('button', { name: /^Undo/ });
  let steps = 0;
  for (; (await undo.getAttribute('aria-disabled')) !== 'true' && steps < 100; steps++)
    await page.keyboard.press('Control+z');
  expect(steps).toBeGreaterThan(20);
  await expect(page.getByLabel('Title of the layout')).toHaveValue('Shoreline kit');
  await expect(onRails(page, /^Harbour, 10 HP at 0/)).toHaveCount(1);
  await expect(verdict(page)).toHaveText(CLEAR);
});
