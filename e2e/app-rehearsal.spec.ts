import type { Page } from 'playwright/test';
import { barriersOn } from './accessibility.ts';
import { openApp } from './app-page.ts';
import { expect, test } from './fixtures.ts';

const desk = (page: Page) => page.getByRole('dialog', { name: /^Rehearse/ });
const told = (page: Page) => desk(page).getByRole('status');
const hold = (page: Page) => desk(page).getByRole('application');
const step = (page: Page, name: RegExp) => desk(page).getByRole('button', { name });

/** The first ribbon of the demo, and the rehearsal of its first seat: S1 on Boulder 1. */
async function openFirst(page: Page): Promise<void> {
  await page.keyboard.press('b');
  await page.keyboard.press('Shift+R');
  await expect(desk(page)).toContainText('S1, connector 1 on Boulder 1');
}

/** The middle of the connector, wherever it is held. */
async function middleOfPlug(page: Page): Promise<{ x: number; y: number }> {
  const box = await desk(page).locator('.shell').boundingBox();
  if (!box) throw new Error('no connector');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** From one pin to the next, px. */
async function pitch(page: Page): Promise<{ x: number; y: number }> {
  const pins = await desk(page)
    .locator('.pin > rect')
    .evaluateAll((rects) =>
      rects.slice(0, 3).map((rect) => rect.getBoundingClientRect().toJSON() as DOMRect),
    );
  const [one, two, three] = pins;
  if (!one || !two || !three) throw new Error('no pins');
  return { x: Math.abs(two.x - one.x), y: Math.abs(three.y - one.y) };
}

test.describe('on a wide screen', () => {
  test.use({ reducedMotion: 'reduce' });

  test('from a note, in just that wrong position; the layout stays as it is', async ({ page }) => {
    await openApp(page);
    await page.getByRole('tab', { name: 'One long jetty' }).click();
    const note = page.getByRole('article').filter({ hasText: 'S1, connector 4 lands one pin row off' });
    const rehearse = note.getByRole('button', { name: 'Rehearse' });
    await rehearse.click();
    await expect(desk(page)).toContainText('S1, connector 4 on Cobble 3');
    await expect(step(page, /^One row off/)).toHaveAttribute('aria-pressed', 'true');
    await expect(step(page, /^One row off/)).toContainText('as drawn');
    await expect(told(page)).toContainText('Shorted together: GND and +12 V');
    await expect(desk(page)).toContainText('Seen from the rear');
    await expect(desk(page)).toContainText('Nothing is changed in the layout');
    await expect(desk(page).getByRole('row', { name: /\+12 V 6 joined in A GND 5/ })).toBeVisible();
    expect(await barriersOn(page)).toEqual([]);

    await step(page, /^As it belongs/).click();
    await expect(told(page)).toContainText('All lines agree');
    await step(page, /^Turned/).click();
    await expect(told(page)).toContainText('Turned end for end');
    expect(await barriersOn(page)).toEqual([]);

    await page.keyboard.press('Escape');
    await expect(desk(page)).toHaveCount(0);
    await expect(rehearse).toBeFocused();
    await expect(page.getByRole('button', { name: 'Undo', exact: true })).toHaveAttribute(
      'aria-disabled',
      'true',
    );
  });

  test('by pointer: it snaps from pin to pin, and springs back on Escape', async ({ page }) => {
    await openApp(page);
    await openFirst(page);
    await expect(told(page)).toContainText('All lines agree');
    const by = await pitch(page);
    const start = await middleOfPlug(page);
    await page.mouse.move(start.x, start.y);
    await page.mouse.down();
    await page.mouse.move(start.x + 3, start.y - by.y, { steps: 3 });
    await expect(step(page, /^One pair up/)).toHaveAttribute('aria-pressed', 'true');
    await expect(told(page)).toContainText('2 contacts would hang free');
    const there = await middleOfPlug(page);
    expect(there.y).toBeCloseTo(start.y - by.y, 0);
    expect(there.x).toBeCloseTo(start.x, 0);
    await page.keyboard.press('Escape');
    await expect(step(page, /^As it belongs/)).toHaveAttribute('aria-pressed', 'true');
    await page.mouse.up();
    await expect(desk(page)).toBeVisible();

    await page.mouse.move(start.x, start.y);
    await page.mouse.down();
    await page.mouse.move(start.x - by.x, start.y, { steps: 3 });
    await page.mouse.up();
    await expect(step(page, /^One row off/)).toHaveAttribute('aria-pressed', 'true');
    await expect(told(page)).toContainText('5 contacts would hang free');
    await step(page, /^Row right/).click();
    await expect(told(page)).toContainText('All lines agree');
  });

  test('by keys alone: move, turn, let a group stand out, close', async ({ page }) => {
    await openApp(page);
    await openFirst(page);
    await expect(hold(page)).toBeFocused();
    await page.keyboard.press('ArrowDown');
    await expect(step(page, /^One pair down/)).toHaveAttribute('aria-pressed', 'true');
    await page.keyboard.press('r');
    await expect(told(page)).toContainText('Turned end for end and displaced by 1 pair towards pin 1');
    await page.keyboard.press('Space');
    await page.keyboard.press('Home');
    await expect(told(page)).toContainText('All lines agree');
    await page.keyboard.press('ArrowUp');
    await expect(told(page)).toContainText('Shorted together');

    const first = desk(page).getByRole('button', { name: /^A, Short/ });
    await first.focus();
    await page.keyboard.press('Enter');
    await expect(first).toHaveAttribute('aria-pressed', 'true');
    await expect(desk(page).locator('.pin.dim').first()).toBeVisible();
    await page.keyboard.press('Enter');
    await expect(desk(page).locator('.pin.dim')).toHaveCount(0);
    await page.keyboard.press('Escape');
    await expect(desk(page)).toHaveCount(0);
  });

  test('from the connector’s row, and a plug in another ribbon’s socket', async ({ page }) => {
    await openApp(page);
    for (let i = 0; i < 6; i++) await page.keyboard.press('b');
    await page.getByRole('button', { name: 'Rehearse connector 1' }).click();
    await expect(desk(page)).toContainText('T3, connector 1 on connector 2 of T2');
    await expect(desk(page)).toContainText('Seen from the side where it is plugged in');
    await page.keyboard.press('r');
    await expect(told(page)).toContainText("the other ribbon's");
    await desk(page).getByRole('button', { name: 'Close' }).click();
    await expect(page.getByRole('button', { name: 'Rehearse connector 1' })).toBeFocused();
  });
});

test.describe('on a phone', () => {
  test.use({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
    reducedMotion: 'reduce',
  });

  test('everything within reach of a finger, and nothing wider than the screen', async ({ page }) => {
    await openApp(page);
    await openFirst(page);
    await step(page, /^Turned/).tap();
    await expect(told(page)).toContainText('Turned end for end');
    expect(await barriersOn(page)).toEqual([]);
    const wide = await desk(page).evaluate(
      (dialog) =>
        [dialog, ...dialog.querySelectorAll('*')].filter(
          (part) =>
            part.getBoundingClientRect().right > 390.5 || part.scrollWidth > Math.max(part.clientWidth, 390),
        ).length,
    );
    expect(wide).toBe(0);
    const small = await desk(page)
      .getByRole('button')
      .evaluateAll((buttons) =>
        buttons
          .filter((button) => button.getBoundingClientRect().height < 43.5)
          .map((button) => button.textContent),
      );
    expect(small).toEqual([]);

    const by = await pitch(page);
    await step(page, /^As it belongs/).tap();
    const { x, y } = await middleOfPlug(page);
    const touch = await page.context().newCDPSession(page);
    const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', dy = 0) =>
      touch.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: type === 'touchEnd' ? [] : [{ x, y: y + dy }],
      });
    await send('touchStart');
    await send('touchMove', by.y / 2);
    await send('touchMove', by.y);
    await send('touchEnd');
    await expect(step(page, /^One pair down/)).toHaveAttribute('aria-pressed', 'true');
    // Right after a finger was lifted the browser may take the next touch for a part of the same gesture.
    await expect(async () => {
      if (!(await told(page).textContent())?.includes('Turned')) await step(page, /^Turn$/).tap();
      await expect(told(page)).toContainText('Turned end for end and displaced by 1 pair', { timeout: 1000 });
    }).toPass();
  });
});
