import type { Locator, Page } from 'playwright/test';
import { devices } from 'playwright/test';
import { barriersOn } from './accessibility.ts';
import { onRails, openApp, type Spot, verdict } from './app-page.ts';
import { expect, test } from './fixtures.ts';

/** Where the demo's kinds have their shore header: mm from the panel's left edge (front) and bottom edge. */
const SHORE = { narrow: 12.7, boulder: 38.1, y: 38 };

const CLEAR = 'No conflict found in the data entered';

/** Where the shore header of a module lies in the rear view. */
async function shoreOf(page: Page, module: RegExp, xMm = SHORE.narrow): Promise<Spot> {
  const box = await onRails(page, module).boundingBox();
  if (!box) throw new Error(`${module} is not on the rails`);
  // A 3U panel is 128.4 mm high (n × 44.45 − 4.95, subrack practice).
  const pxPerMm = box.height / 128.4;
  return { x: box.x + box.width - xMm * pxPerMm, y: box.y + box.height - SHORE.y * pxPerMm };
}

const part = (page: Page): Locator => page.getByRole('region', { name: 'This part' });
const seat = (page: Page, connector: number): Locator =>
  part(page).getByLabel(`Connector ${connector} sits on`, { exact: true });
const note = (page: Page, words: string): Locator => page.getByRole('article').filter({ hasText: words });
const undo = (page: Page): Locator => page.getByRole('button', { name: /^Undo/ });

/** What a select shows. */
const shown = (select: Locator): Promise<string> =>
  select.evaluate((element) => (element as HTMLSelectElement).selectedOptions[0]?.text ?? '');

async function dragTo(page: Page, from: Spot, to: Spot): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move((from.x + to.x) / 2, (from.y + to.y) / 2);
  await page.mouse.move(to.x, to.y);
}

/** Selects S1 by its band, half way between two of its connectors. */
async function selectS1(page: Page): Promise<void> {
  const [a, b] = [await shoreOf(page, /^Cobble 1,/), await shoreOf(page, /^Cobble 2,/)];
  await page.mouse.click((a.x + b.x) / 2, a.y);
  await expect(part(page)).toContainText('Shore, 5 at 5 HP');
}

test.describe('with a mouse', () => {
  test.beforeEach(({ page }) => openApp(page));

  test('a connector is dragged off, its module is left without power, and undone all is well', async ({
    page,
  }) => {
    await selectS1(page);
    const from = await shoreOf(page, /^Cobble 1,/);
    await dragTo(page, from, { x: from.x + 40, y: from.y + 90 });
    await expect(verdict(page)).toHaveText('1 will not fit or work');
    await page.mouse.up();
    await expect(note(page, 'Cobble 1 has no power lead')).toBeVisible();
    expect(await shown(seat(page, 4))).toBe('free');
    await undo(page).click();
    await expect(verdict(page)).toHaveText(CLEAR);
    expect(await shown(seat(page, 4))).toBe('Cobble 1, shore');
  });

  test('while it is dragged Escape puts it back', async ({ page }) => {
    await selectS1(page);
    const from = await shoreOf(page, /^Cobble 1,/);
    await dragTo(page, from, { x: from.x + 40, y: from.y + 90 });
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await expect(verdict(page)).toHaveText(CLEAR);
    await expect(undo(page)).toHaveAttribute('aria-disabled', 'true');
  });

  test('the band slides the whole ribbon', async ({ page }) => {
    await selectS1(page);
    const [a, b] = [await shoreOf(page, /^Cobble 1,/), await shoreOf(page, /^Cobble 2,/)];
    const band = { x: (a.x + b.x) / 2, y: a.y };
    await dragTo(page, band, { x: band.x + b.x - a.x, y: band.y });
    await page.mouse.up();
    await expect(part(page)).toContainText('2 of 5 connectors seated');
    expect(await shown(seat(page, 4))).toBe('Cobble 2, shore');
    await expect(page.getByRole('button', { name: 'Undo slide S1' })).toBeVisible();
    await undo(page).click();
    await expect(part(page)).toContainText('4 of 5 connectors seated');
  });

  test('a half-twist turns connectors away, and out again they land', async ({ page }) => {
    await selectS1(page);
    const toggle = part(page).getByRole('button', { name: 'Half-twist between connectors 4 and 5' });
    await toggle.click();
    await expect(toggle).toHaveAttribute('aria-pressed', 'true');
    await expect(note(page, 'S1, connector 5 opens away from Jetty A')).toBeVisible();
    await expect(part(page)).toContainText('opens away');
    await undo(page).click();
    await expect(toggle).toHaveAttribute('aria-pressed', 'false');
    await expect(verdict(page)).toHaveText(CLEAR);
  });

  test('in the margin: seated elsewhere, labelled, locked, turned, removed', async ({ page }) => {
    await selectS1(page);
    await part(page).getByRole('button', { name: 'Lift connector 4' }).click();
    expect(await shown(seat(page, 4))).toBe('free');
    await seat(page, 4).selectOption({ label: 'Cobble 1, shore' });
    await expect(verdict(page)).toHaveText(CLEAR);

    const label = part(page).getByLabel('Label of the ribbon');
    await label.fill('Left hand');
    await label.press('Enter');
    await expect(page.getByRole('button', { name: 'Undo label S1' })).toBeVisible();

    await part(page).getByRole('button', { name: 'Lock', exact: true }).click();
    await expect(seat(page, 4)).toBeDisabled();
    await part(page).getByRole('button', { name: 'Turn ribbon by 180°' }).click();
    await expect(page.getByText('Left hand is locked.')).toBeVisible();
    await part(page).getByRole('button', { name: 'Unlock' }).click();
    await part(page).getByRole('button', { name: 'Turn ribbon by 180°' }).click();
    await expect(part(page)).toContainText('stripe up');
    expect(await barriersOn(page)).toEqual([]);
    await part(page).getByRole('button', { name: 'Remove' }).click();
    await expect(part(page)).toHaveCount(0);
  });

  test('a lead says how much of it its way needs', async ({ page }) => {
    for (let i = 0; i < 7; i++) await page.keyboard.press('b');
    await expect(part(page)).toContainText(/needs [\d.]+ mm of 400 mm/);
    await expect(part(page).getByRole('button', { name: /Half-twist/ })).toHaveCount(0);
  });
});

test('by keys alone: a ribbon found, a connector carried off, lifted, twisted, the ribbon slid, all undone', async ({
  page,
}) => {
  await openApp(page);
  await page.locator('.by-list').focus();
  await page.keyboard.press('b');
  await expect(page.locator('.desk')).toContainText('S1, Shore, 5 at 5 HP, 4 of 5 connectors seated.');
  for (const key of ['ArrowLeft', 'ArrowLeft', 'Delete']) await page.keyboard.press(key);
  await expect(note(page, 'Cobble 1 has no power lead')).toBeVisible();
  for (const key of ['Enter', 'ArrowRight', 'ArrowLeft', 'Enter']) await page.keyboard.press(key);
  await expect(verdict(page)).toHaveText(CLEAR);
  await page.keyboard.press('w');
  await expect(note(page, 'S1, connector 5 opens away from Jetty A')).toBeVisible();
  await page.keyboard.press('w');
  await page.keyboard.press('Escape');
  for (const key of ['Enter', 'ArrowRight', 'Enter']) await page.keyboard.press(key);
  await expect(part(page)).not.toContainText('4 of 5');
  for (let i = 0; i < 5; i++) await page.keyboard.press('Control+z');
  await expect(verdict(page)).toHaveText(CLEAR);
  await expect(undo(page)).toHaveAttribute('aria-disabled', 'true');
  await page.keyboard.press('F2');
  await expect(part(page).getByLabel('Label of the ribbon')).toBeFocused();
  await page.keyboard.type('Left');
  await page.keyboard.press('Enter');
  await expect(part(page).getByLabel('Label of the ribbon')).toHaveValue('Left');
});

test.describe('with a finger', () => {
  const { defaultBrowserType: _, ...phone } = devices['Pixel 7'];
  test.use({ ...phone, viewport: { width: 390, height: 844 } });

  test('a connector is lifted in the fold and seated again by a tap on it and a tap on the header', async ({
    page,
  }) => {
    await openApp(page);
    const [a, b] = [await shoreOf(page, /^Cobble 1,/), await shoreOf(page, /^Cobble 2,/)];
    await page.touchscreen.tap((a.x + b.x) / 2, a.y);
    await page.getByRole('button', { name: 'This part' }).tap();
    await page.getByRole('button', { name: 'Lift connector 4' }).tap();
    await expect(verdict(page)).toHaveText('1 will not fit or work');
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    expect(await barriersOn(page)).toEqual([]);
    const small = await part(page).evaluate((element) =>
      [...element.querySelectorAll('button, select, input')]
        .map((one) => ({ one, box: one.getBoundingClientRect() }))
        .filter(({ box }) => box.height < 43 || box.width < 43)
        .map(({ one }) => one.getAttribute('aria-label') ?? one.textContent),
    );
    expect(small).toEqual([]);
    await page.getByRole('button', { name: 'This part' }).tap();

    // Connector 4 lies free over the header of Cobble 1: the first tap chooses it, the second one seats it.
    const header = await shoreOf(page, /^Cobble 1,/);
    await page.touchscreen.tap(header.x, header.y);
    await page.touchscreen.tap(header.x, header.y);
    await expect(verdict(page)).toHaveText(CLEAR);
  });
});
