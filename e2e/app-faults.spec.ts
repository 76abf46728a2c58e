import type { Locator, Page } from 'playwright/test';
import { barriersOn } from './accessibility.ts';
import { onRails, openApp, spotOn } from './app-page.ts';
import { expect, test } from './fixtures.ts';

test.beforeEach(({ page }) => openApp(page));

const panel = (page: Page): Locator => page.getByRole('region', { name: 'Find a fault' });

async function breakAt(page: Page, where: string, at: string, what: string): Promise<void> {
  const own = panel(page);
  await own.getByLabel('Where', { exact: true }).selectOption({ label: where });
  await own.getByLabel('At', { exact: true }).selectOption({ label: at });
  await own.getByLabel('What', { exact: true }).selectOption({ label: what });
  await own.getByRole('button', { name: 'Break it' }).click();
}

/** The drawing as it is painted now. */
const drawing = (page: Page): Promise<string> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLCanvasElement>('canvas:not(.print)')]
      .map((canvas) => canvas.toDataURL())
      .join(),
  );

test('a lead is broken: who is dead, what a meter shows, and one key mends it all', async ({ page }) => {
  const before = await drawing(page);
  await page.keyboard.press('d');
  const own = panel(page);
  await expect(own).toBeFocused();
  await breakAt(page, 'L2', 'Connector 1 on header 2 of Board 1', '+12 V open, contacts 9 and 10');
  await expect(own.getByRole('status')).toContainText(
    '4 modules dead: Jetty A, Cobble 1, Cobble 2 and Boulder 1.',
  );
  expect(await drawing(page)).not.toBe(before);

  const dead = own.getByRole('list', { name: /^What meters would show/ }).getByRole('listitem');
  await expect(dead).toHaveCount(4);
  await dead.filter({ hasText: 'Boulder 1' }).locator('summary').click();
  const plus = dead.filter({ hasText: 'Boulder 1' }).getByRole('row', { name: /\+12 V/ });
  await expect(plus).toContainText('nothing');
  await expect(dead.filter({ hasText: 'Boulder 1' }).getByRole('row', { name: /−12 V/ })).toContainText(
    '−11.9',
  );

  await breakAt(page, 'Cobble 5', 'Inside the module', '+12 V touches ground');
  await expect(own.getByRole('status')).toContainText('+12 V of Supply is shorted');
  await expect(own.getByRole('status')).toContainText('16 modules dead');
  expect(await barriersOn(page)).toEqual([]);

  await own.getByRole('button', { name: /^Mend Cobble 5/ }).click();
  await expect(own.getByRole('status')).toContainText('4 modules dead');
  await expect(own).toBeFocused();
  await page.keyboard.press('Delete');
  await expect(own.getByRole('status')).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Undo' }), 'nothing of the layout changed').toHaveAttribute(
    'aria-disabled',
    'true',
  );
  await page.keyboard.press('Escape');
  await expect(own).toBeHidden();
  await expect.poll(() => drawing(page)).toBe(before);
});

test('what is selected on the drawing is what will be broken, and Delete spares it', async ({ page }) => {
  await page.keyboard.press('d');
  const { x, y } = await spotOn(page, /^Kelp/);
  await page.mouse.click(x, y);
  const own = panel(page);
  await expect(own.getByLabel('Where', { exact: true })).toHaveValue('module:kelp');
  await own.getByLabel('What', { exact: true }).focus();
  await page.keyboard.press('Delete');
  await expect(onRails(page, /^Kelp/)).toHaveCount(1);
  await own.getByRole('button', { name: 'Something is wrong' }).click();
  await expect(own.getByLabel('Module', { exact: true })).toHaveValue('kelp');
});

/** Answers each step as a case in which lead L7 has a broken +12 V conductor would, until the search ends. */
async function answerForL7(page: Page): Promise<number> {
  const own = panel(page);
  let steps = 0;
  for (; steps < 12; steps++) {
    const step = own.getByRole('region', { name: `Step ${steps + 1}`, exact: true });
    await step.or(own.getByRole('region', { name: 'The end of the search' })).waitFor();
    if ((await step.count()) === 0) return steps;
    const question = (await step.locator('b').textContent()) ?? '';
    const isLost = /\+12 V/.test(question) && /Kelp|connector of L7/.test(question);
    await step.getByRole('button', { name: isLost ? 'It is not there' : 'It is there', exact: true }).click();
  }
  return steps;
}

test('from "no +12 V at Kelp" to its lead, step by step, with cautions', async ({ page }) => {
  await page.keyboard.press('d');
  const own = panel(page);
  await own.getByRole('button', { name: 'Something is wrong' }).click();
  await own.getByLabel('Module', { exact: true }).selectOption({ label: 'Kelp' });
  await own.getByLabel('How it is').selectOption({ label: 'has no +12 V' });
  await own.getByRole('button', { name: 'Add', exact: true }).click();
  await expect(own.getByRole('status')).toContainText(/^\d+ things could be it/);
  const first = own.getByRole('region', { name: 'Step 1' });
  await expect(first).toContainText('the probe must not bridge two pins');
  expect(await barriersOn(page)).toEqual([]);
  expect(await answerForL7(page)).toBeLessThanOrEqual(9);
  const end = own.getByRole('region', { name: 'The end of the search' });
  await expect(end).toContainText('L7, between connectors 1 and 2: +12 V broken, conductors 9 and 10');
  await expect(end).toContainText('look at L7 and its seats');

  await own.getByRole('button', { name: 'Take the last answer back' }).click();
  await expect(own.getByRole('region', { name: /^Step/ })).toBeVisible();
  await own.getByRole('button', { name: 'I cannot tell' }).click();
  await expect(own.getByText('left out')).toBeVisible();
  await own.getByRole('button', { name: /^Begin again/ }).click();
  await expect(own.getByRole('button', { name: 'Add', exact: true })).toBeVisible();
});

test('a step that unplugs says to switch off first', async ({ page }) => {
  await page.keyboard.press('d');
  const own = panel(page);
  await own.getByRole('button', { name: 'Something is wrong' }).click();
  await own.getByLabel('Module', { exact: true }).selectOption({ label: 'Harbour' });
  await own.getByLabel('How it is').selectOption({ label: 'has no +12 V' });
  await own.getByRole('button', { name: 'Add', exact: true }).click();
  const unplug = own.getByText('Switch off, unplug the supply, wait half a minute.');
  for (let i = 1; i < 10; i++) {
    const step = own.getByRole('region', { name: `Step ${i}`, exact: true });
    await step.waitFor();
    if ((await unplug.count()) > 0) break;
    // A short: +12 V is nowhere, all else is there.
    const isLost = /\+12 V/.test((await step.locator('b').textContent()) ?? '');
    await step.getByRole('button', { name: isLost ? 'It is not there' : 'It is there', exact: true }).click();
  }
  await expect(unplug).toBeVisible();
  await expect(own.getByRole('region', { name: /^Step/ })).toContainText(/Pull .* off /);
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  test('the search is reached, read and answered by touch', async ({ page }) => {
    await page.getByRole('button', { name: 'Menu' }).tap();
    await page.getByRole('button', { name: 'Find a fault' }).tap();
    const own = panel(page);
    await own.getByRole('button', { name: 'Something is wrong' }).tap();
    await own.getByLabel('Module', { exact: true }).selectOption({ label: 'Cobble 3' });
    await own.getByRole('button', { name: 'Add', exact: true }).tap();
    const there = own.getByRole('button', { name: 'It is there', exact: true });
    await expect(there).toBeInViewport();
    expect((await there.boundingBox())?.height).toBeGreaterThanOrEqual(44);
    expect(await barriersOn(page)).toEqual([]);
    await there.tap();
    await expect(own.getByRole('region', { name: 'Step 2' })).toBeVisible();
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(wide).toBeLessThanOrEqual(390);
    await own.getByRole('button', { name: 'Done' }).tap();
    await expect(own).toBeHidden();
  });
});
