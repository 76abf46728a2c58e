import { devices, type Locator, type Page } from 'playwright/test';
import { bigLayout } from '../tests/support/big-take.ts';
import { barriersOn } from './accessibility.ts';
import { holdAndMove, onRails, openApp } from './app-page.ts';
import { expect, test } from './fixtures.ts';
import { openLayoutFile, withPlainPicker } from './support/open-layout.ts';

const panel = (page: Page): Locator => page.getByRole('region', { name: 'Power' });
const legend = (page: Page): Locator => page.getByRole('region', { name: 'Heat map' });

/** Remembers every text that is written on a canvas from now on. */
async function rememberTexts(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const { fillText } = CanvasRenderingContext2D.prototype;
    Object.assign(window, { written: [] });
    CanvasRenderingContext2D.prototype.fillText = function (text, ...at) {
      (window as unknown as { written: string[] }).written.push(text);
      return fillText.call(this, text, ...at);
    };
  });
}

const forget = (page: Page): Promise<void> =>
  page.evaluate(() => {
    (window as unknown as { written: string[] }).written = [];
  });

const texts = (page: Page): Promise<string[]> =>
  page.evaluate(() => (window as unknown as { written: string[] }).written);

const isWritten = (page: Page, text: string | RegExp) =>
  expect
    .poll(() => texts(page))
    .toContainEqual(typeof text === 'string' ? text : expect.stringMatching(text));

/** A current in a ribbon, with the way that it flows. */
const CURRENT = /[▸◂]/;

test('the loads open the panel, which tells what is drawn, what is left, and selects who draws most', async ({
  page,
}) => {
  await openApp(page);
  await page.getByRole('button', { name: /930\/1600/ }).click();
  const power = panel(page);
  await expect(power).toBeFocused();
  const supply = power.getByRole('region', { name: 'Supply' });
  await expect(supply).toContainText('930 of 1600 mA');
  await expect(supply).toContainText('670 mA left; 350 until less than 20 % is left free.');
  await supply.getByRole('button', { name: /^Harbour 13 %/ }).click();
  await expect(onRails(page, /^Harbour/)).toHaveAttribute('aria-selected', 'true');
  await expect(power.getByRole('region', { name: 'Boards' })).toContainText('5 of 8 headers used, 3 free');
  await expect(power.getByRole('region', { name: 'Watts' })).toContainText('18.4 W');
  await expect(power.getByRole('status')).toContainText('With the 9th: Supply is overloaded on −12 V.');
  await power.getByLabel('Of which kind').selectOption('Harbour');
  await expect(power.getByRole('status')).toContainText('3 more of Harbour.');

  const arrives = power.getByRole('region', { name: 'What arrives' });
  const [, first] = await arrives.getByRole('row').all();
  await expect(first ?? arrives).toContainText('measured');
  await arrives.getByRole('button', { name: 'Module', exact: true }).click();
  await expect(arrives.getByRole('columnheader', { name: 'Module' })).toHaveAttribute(
    'aria-sort',
    'ascending',
  );
  await arrives.getByRole('button', { name: 'All 16 modules' }).click();
  await expect(arrives.getByRole('row')).toHaveCount(17);
  await expect(arrives.getByRole('row', { name: /^Kelp guessed/ })).toBeVisible();
  expect(await barriersOn(page)).toEqual([]);

  await page.keyboard.press('Escape');
  await expect(power).toBeHidden();
  await expect(page.getByRole('button', { name: /930\/1600/ })).toBeFocused();
});

test('by keys: V opens and shuts the panel, Shift+V lays the heat map on the drawing and takes it off', async ({
  page,
}) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await rememberTexts(page);
  await openApp(page);
  await page.keyboard.press('v');
  await expect(panel(page)).toBeVisible();
  await page.keyboard.press('v');
  await expect(panel(page)).toBeHidden();

  await forget(page);
  await page.keyboard.press('Shift+V');
  await expect(legend(page)).toBeVisible();
  await isWritten(page, '120 ▸');
  expect(await texts(page)).toContain('21');
  await expect(page.getByText('Heat map of +12 V.')).toContainText('loses most, 21 mV of 250 allowed.');
  await legend(page).getByRole('button', { name: 'Ground' }).click();
  await expect(legend(page)).toContainText('Shift against the supply’s ground');
  expect(await barriersOn(page)).toEqual([]);

  // While something moves the figures are gone: they are those of what stands.
  await forget(page);
  await holdAndMove(page, /^Gull 1/, 30);
  await isWritten(page, 'Harbour');
  expect((await texts(page)).filter((text) => CURRENT.test(text))).toEqual([]);
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await isWritten(page, CURRENT);

  await page.keyboard.press('t');
  await expect(legend(page)).toContainText('Turn to the rear for the current in each ribbon.');
  await page.keyboard.press('t');
  await expect(legend(page)).toContainText('On ribbons: mA');
  await forget(page);
  await page.keyboard.press('Shift+V');
  await expect(legend(page)).toBeHidden();
  await isWritten(page, 'Harbour');
  expect((await texts(page)).filter((text) => CURRENT.test(text))).toEqual([]);
});

test('a better feed is one tap and one undo', async ({ page }) => {
  await withPlainPicker(page);
  await openApp(page);
  await openLayoutFile(page, bigLayout(12));
  await page.keyboard.press('v');
  const feeds = panel(page).getByRole('region', { name: 'Where to feed' });
  const offer = feeds.getByRole('button', { name: 'Feed Cobble (c3-1) instead of Boulder (b-1)' });
  await expect(feeds.getByRole('button')).toHaveCount(2);
  await expect(feeds).toContainText('Worst loss of the group 28 → 27 mV.');
  await offer.click();
  await expect(feeds.getByRole('button')).toHaveCount(1);
  await expect(offer).toHaveCount(0);
  await expect(feeds).toBeFocused();
  await page.keyboard.press('Control+z');
  await expect(offer).toBeVisible();
});

test.describe('on a phone', () => {
  const { defaultBrowserType: _, ...phone } = devices['Pixel 7'];
  test.use({ ...phone, viewport: { width: 390, height: 844 } });

  test('the loads under the notes open the panel, and nothing is wider than the screen', async ({ page }) => {
    await openApp(page);
    await page.getByRole('button', { name: /^Notes/ }).tap();
    await page.getByRole('button', { name: /930\/1600/ }).tap();
    const power = panel(page);
    await expect(power.getByRole('status')).toContainText('With the 9th');
    await power.getByRole('button', { name: /^Heat map on the drawing/ }).tap();
    await expect(power.getByText('not reached')).toBeVisible();
    expect(await barriersOn(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    const small = await power.evaluate((element) =>
      [...element.querySelectorAll('button, select')]
        .map((each) => ({ text: each.textContent, box: each.getBoundingClientRect() }))
        .filter(({ box }) => box.height < 40 || box.width < 40)
        .map(({ text }) => text),
    );
    expect(small).toEqual([]);
    await power.getByRole('button', { name: 'Done' }).tap();
    await expect(legend(page)).toBeVisible();
    await legend(page).getByRole('button', { name: 'Off' }).tap();
    await expect(legend(page)).toBeHidden();
  });
});
