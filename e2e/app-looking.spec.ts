import { barriersOn } from './accessibility.ts';
import { onRails, openApp, spotOn } from './app-page.ts';
import { expect, test } from './fixtures.ts';

test.describe('looking around', () => {
  test.beforeEach(({ page }) => openApp(page));

  test('turning the case swaps left and right', async ({ page }) => {
    const rear = await spotOn(page, /^Harbour/);
    await page.keyboard.press('t');
    await expect(page.getByRole('region', { name: 'Title block' })).toContainText('FRONT');
    const front = await spotOn(page, /^Harbour/);
    expect(front.x).toBeLessThan(rear.x - 300);
    await page.getByRole('button', { name: /^Turn/ }).click();
    expect(await spotOn(page, /^Harbour/)).toEqual(rear);
  });

  test('zooming keeps what is under the pointer, F fits again', async ({ page }) => {
    const before = await spotOn(page, /^Boulder 2/);
    // A wheel event tells whole px; what lies beside the pointer comes to lie twice as far off.
    const x = Math.round(before.x);
    await page.mouse.move(x, before.y);
    await page.keyboard.down('Control');
    await page.mouse.wheel(0, -300);
    await page.keyboard.up('Control');
    await expect(page.getByRole('region', { name: 'Title block' })).toContainText('1 : 1');
    expect((await spotOn(page, /^Boulder 2/)).x).toBeCloseTo(x + 2 * (before.x - x), 0);
    await page.keyboard.press('f');
    expect(await spotOn(page, /^Boulder 2/)).toEqual(before);
  });

  test('touching a note dims the rest, Escape lets it go', async ({ page }) => {
    await page.keyboard.press(']');
    const headline = page.getByRole('button', { name: /lands one pin row off/ });
    await headline.click();
    await expect(headline).toHaveAttribute('aria-pressed', 'true');
    await page.keyboard.press('Escape');
    await expect(headline).toHaveAttribute('aria-pressed', 'false');
    await page.keyboard.press('n');
    await expect(headline).toHaveAttribute('aria-pressed', 'true');
  });

  test('the look that was chosen is there again next time', async ({ page }) => {
    await page.getByRole('button', { name: 'Menu' }).click();
    await page.getByRole('button', { name: 'Dim, for the stage' }).click();
    await expect(page.locator('html')).toHaveAttribute('data-theme', 'dim');
    await page.reload();
    await expect(page.locator('html')).toHaveAttribute('data-theme', 'dim');
  });

  test('what is typed into a field is no command', async ({ page }) => {
    const title = page.getByLabel('Title of the layout');
    await title.fill('Tffp 0');
    await title.press('Enter');
    await expect(title).toHaveValue('Tffp 0');
    await expect(page.getByRole('region', { name: 'Title block' })).toContainText('REAR');
    await expect(page.getByRole('button', { name: 'Undo rename the layout' })).toBeVisible();
  });
});

/** Texts smaller than 11 px. */
const tinyTexts = () =>
  [...document.querySelectorAll('body *')]
    .filter((element) =>
      [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim()),
    )
    .filter((element) => Number.parseFloat(getComputedStyle(element).fontSize) < 11)
    .map((element) => element.textContent);

for (const scheme of ['light', 'dark'] as const) {
  test(`nobody is shut out, ${scheme}: with notes, a part, the menu and the cautions`, async ({ page }) => {
    await page.emulateMedia({ colorScheme: scheme, reducedMotion: 'reduce' });
    await openApp(page);
    await page.getByRole('tab', { name: 'One long jetty' }).click();
    const { x, y } = await spotOn(page, /^Gull 1/);
    await page.mouse.click(x, y);
    await expect(page.getByRole('region', { name: 'This part' })).toBeVisible();
    expect(await barriersOn(page)).toEqual([]);
    expect(await page.evaluate(tinyTexts)).toEqual([]);
    await page.getByRole('button', { name: 'Menu' }).click();
    expect(await barriersOn(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: /^Before power/ }).click();
    await expect(page.getByText('qualified person')).toBeVisible();
    expect(await barriersOn(page)).toEqual([]);
  });
}

test('dim keeps its contrast', async ({ page }) => {
  await page.addInitScript(() => localStorage.setItem('ribbonwright.theme', '"dim"'));
  await openApp(page);
  await page.getByRole('tab', { name: 'One long jetty' }).click();
  expect(await barriersOn(page)).toEqual([]);
});

test('an empty case says what to do by its stock', async ({ page }) => {
  await openApp(page);
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'New empty case' }).click();
  await expect(onRails(page, /HP/)).toHaveCount(0);
  expect(await barriersOn(page)).toEqual([]);
  await page.keyboard.press('Control+z');
  await expect(onRails(page, /^Harbour/)).toHaveCount(1);
});
