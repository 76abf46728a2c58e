import type { Locator, Page } from 'playwright/test';
import { barriersOn } from './accessibility.ts';
import { onRails, openApp, verdict } from './app-page.ts';
import { expect, test } from './fixtures.ts';

test.beforeEach(({ page }) => openApp(page));

const panel = (page: Page): Locator => page.getByRole('region', { name: 'My case' });

async function openEmptyCase(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'New empty case' }).click();
  await expect(panel(page)).toBeVisible();
}

/** Types into a field and leaves it with Enter. */
async function type(field: Locator, text: string): Promise<void> {
  await field.fill(text);
  await field.press('Enter');
}

/** Drags what lies under a spot of the drawing along the rails. */
async function dragFrom(page: Page, x: number, y: number, dx: number): Promise<void> {
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + dx / 2, y);
  await page.mouse.move(x + dx, y);
  await page.mouse.up();
}

test('from an empty case to two rows with a supply and two boards, by typing', async ({ page }) => {
  await openEmptyCase(page);
  const mine = panel(page);
  await expect(mine.getByRole('heading', { name: 'Start from a ready pattern' })).toBeVisible();
  await type(mine.getByLabel('Depth of the case behind its panels, mm'), '5.5 cm');
  await mine.getByRole('button', { name: '2 × 84 HP' }).click();
  await expect(mine.getByLabel('Depth of Row 2, mm')).toHaveValue('55');
  for (const row of ['Row 1', 'Row 2']) await type(mine.getByLabel(`Width of ${row}, HP`), '104');
  await expect(page.getByRole('button', { name: /^Case 2 × 104 HP/ })).toBeVisible();

  await type(mine.getByLabel('Name of Row 1'), 'Top');
  await mine.getByRole('button', { name: 'Move Top down' }).click();
  await expect(mine.getByRole('group', { name: /^(Top|Row 2)$/ }).first()).toHaveAccessibleName('Row 2');

  await type(mine.getByLabel('+12 V of Supply, mA'), '2 A');
  await expect(mine.getByLabel('+12 V of Supply, mA')).toHaveValue('2000');
  await mine.getByRole('button', { name: 'Add a board to Supply' }).click();
  const second = mine.getByRole('group', { name: 'Board 2' });
  await expect(second.getByLabel('Row of Board 2')).toHaveValue('row-2');
  await type(second.getByLabel('Lead of Board 2 to its supply, mm'), '450');
  await expect(second.getByLabel('Wire of the lead of Board 2, AWG')).toHaveValue('18');
  await second.getByText('8 headers').click();
  await second.getByLabel('Number of headers of Board 2').fill('5');
  await second.getByRole('button', { name: 'Lay out in a line' }).click();
  await expect(second.getByText('5 headers')).toBeVisible();
  await second.getByLabel('Long side of header 2 of Board 2').selectOption('across');
  await expect(second.getByLabel(/^Pin 1 of header 2 of Board 2/)).toHaveValue('left');

  await type(mine.getByLabel('Width of Top, HP'), 'wide');
  await expect(page.getByRole('alert')).toContainText('Width must be a number of HP.');
  await expect(mine.getByLabel('Width of Top, HP')).toHaveValue('104');
  expect(await barriersOn(page)).toEqual([]);

  await page.keyboard.press('Escape');
  await expect(panel(page)).toBeHidden();
});

test('a row’s end and a board are dragged on the drawing, and what is dragged can be typed', async ({
  page,
}) => {
  await openEmptyCase(page);
  await panel(page).getByRole('button', { name: 'Done' }).click();
  await page.keyboard.press('t');
  await expect(page.getByText('FRONT', { exact: true })).toBeVisible();
  const stage = await page.locator('.stage').boundingBox();
  if (!stage) throw new Error('no stage');

  // At the front the sheet is fitted between 12 px and the margin of 362 px; 84 HP and 8 mm at either end fill it.
  const pxPerMm = (stage.width - 12 - 362) / (84 * 5.08 + 16);
  const end = stage.x + 12 + (8 + 84 * 5.08) * pxPerMm + 4;
  const height = stage.y + 24 + (8 + 13 + 60) * pxPerMm;
  await dragFrom(page, end, height, -20 * 5.08 * pxPerMm);
  const part = page.getByRole('region', { name: 'This part' });
  await expect(part.getByLabel('Width of Row 1, HP')).toHaveValue('64');
  await page.keyboard.press('Control+z');
  await expect(part.getByLabel('Width of Row 1, HP')).toHaveValue('84');

  await page.keyboard.press('t');
  await expect(page.getByText('REAR', { exact: true })).toBeVisible();
  // The board's left end lies 290 mm from the front's left: at the rear it is counted from the right.
  const right = stage.x + 12 + (8 + 84 * 5.08) * pxPerMm;
  await dragFrom(page, right - (290 + 110) * pxPerMm, height - 4, 50 * pxPerMm);
  await expect(part.getByLabel('From left of Board, seen from the front, mm')).toHaveValue('240');
  await page.locator('.by-list').focus();
  await page.keyboard.press('ArrowRight');
  await expect(part.getByLabel('From left of Board, seen from the front, mm')).toHaveValue('239');
  await part.getByRole('button', { name: 'Duplicate Board' }).click();
  await page.getByRole('button', { name: /^Case 1 × 84 HP/ }).click();
  await expect(panel(page).getByRole('group', { name: 'Board 2' })).toBeVisible();
});

test('removing a row tells what it would orphan; Keep keeps it, one undo brings it back', async ({
  page,
}) => {
  await page.keyboard.press('c');
  const remove = panel(page).getByRole('button', { name: 'Remove Lower row' });
  await remove.click();
  const question = page.getByRole('dialog', { name: 'Remove Lower row?' });
  await expect(question).toContainText('5 modules go with it');
  await expect(question).toContainText('1 board goes with it: Board 2');
  expect(await barriersOn(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(question).toBeHidden();
  await expect(panel(page), 'Escape meant the question alone').toBeVisible();
  await expect(onRails(page, /^Kelp/)).toHaveCount(1);

  await remove.click();
  await question.getByRole('button', { name: 'Remove' }).click();
  await expect(onRails(page, /^Kelp/)).toHaveCount(0);
  await expect(page.getByRole('button', { name: /^Case 1 × 104 HP/ })).toBeVisible();
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(onRails(page, /^Kelp/)).toHaveCount(1);
  await expect(verdict(page)).toHaveText('No conflict found in the data entered');
});

test('the panel gets out of the way of what is taken from the stock', async ({ page }) => {
  await openEmptyCase(page);
  await page.getByRole('button', { name: '3U + 1U + 3U, 104 HP' }).click();
  await expect(panel(page)).toContainText('no one standard for 1U panels');
  await page.getByRole('region', { name: 'Stock' }).getByRole('button', { name: /^Gull/ }).click();
  await expect(panel(page)).toBeHidden();
  const { width = 0, height = 0, x = 0, y = 0 } = (await page.locator('.stage').boundingBox()) ?? {};
  await page.mouse.click(x + width / 3, y + height / 6);
  await expect(onRails(page, /^Gull/)).toHaveCount(1);
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  test('the case folds out at the bottom, and nothing is wider than the screen', async ({ page }) => {
    await page.getByRole('button', { name: 'Case', exact: true }).tap();
    await expect(panel(page)).toBeVisible();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    await type(panel(page).getByLabel('Width of Lower row, HP'), '84');
    await expect(panel(page).getByLabel('Width of Lower row, HP')).toHaveValue('84');
    expect(await barriersOn(page)).toEqual([]);
  });
});
