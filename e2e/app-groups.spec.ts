import type { Page } from 'playwright/test';
import { barriersOn } from './accessibility.ts';
import { drag, onRails, openApp, pxPerHp, spotOn, verdict } from './app-page.ts';
import { expect, test } from './fixtures.ts';

test.beforeEach(({ page }) => openApp(page));

const selected = (page: Page) => page.locator('.by-list [role=option][aria-selected=true]');

/** Selects the group of Cobble 5 by keys: Jetty C, two Cobbles and the ribbon on them. */
async function selectGroup(page: Page): Promise<void> {
  const { x, y } = await spotOn(page, /^Cobble 5,/);
  await page.mouse.click(x, y);
  await page.keyboard.press('j');
  await expect(selected(page)).toHaveCount(3);
}

test('a group is copied by keys and pasted with its ribbon into the other take and into a new layout', async ({
  page,
}) => {
  await selectGroup(page);
  await page.keyboard.press('Control+c');
  await expect(page.getByRole('status')).toHaveText('Copied 3 modules and 1 ribbon.');

  await page.getByRole('tab', { name: 'One long jetty' }).click();
  await page.mouse.move(5, 5);
  await page.keyboard.press('Control+v');
  await expect(selected(page)).toHaveCount(3);
  await expect(page.getByRole('status')).toContainText('Pasted 3 modules and 1 ribbon.');
  await expect(page.getByRole('heading', { name: '4 selected' })).toBeVisible();
  await page.getByRole('button', { name: 'Undo paste 3 modules' }).click();
  await expect(selected(page)).toHaveCount(0);

  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'New empty case' }).click();
  await expect(onRails(page, /./)).toHaveCount(0);
  await page.keyboard.press('Control+v');
  await expect(onRails(page, /^Jetty C, 5 HP at 30/)).toHaveCount(1);
  await expect(onRails(page, /^Cobble [56], 5 HP/)).toHaveCount(2);
  await expect(page.locator('[data-kind="module:cobble"]')).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(onRails(page, /./)).toHaveCount(0);
});

test('what is cut out is pasted near the pointer', async ({ page }) => {
  await selectGroup(page);
  await page.keyboard.press('Control+x');
  await expect(onRails(page, /^Cobble 5,/)).toHaveCount(0);
  const { x, y } = await spotOn(page, /^Kelp/);
  await page.mouse.move(x + (await pxPerHp(page)) * 45, y + 40);
  await page.keyboard.press('Control+v');
  const lower = page.getByRole('group', { name: 'Lower row' });
  await expect(lower.getByRole('option', { name: /^Jetty C, 5 HP at [0-9]\b/ })).toHaveCount(1);
});

test('other text on the clipboard changes nothing and is told; text in a field is its own', async ({
  page,
}) => {
  const title = page.getByLabel('Title of the layout');
  await title.focus();
  await page.keyboard.press('Control+a');
  await page.keyboard.press('Control+c');
  await page.keyboard.press('Control+v');
  await expect(title).toHaveValue('Shoreline kit');
  await page.locator('.by-list').focus();
  await page.keyboard.press('Control+v');
  await expect(page.getByText('There is no group of modules on the clipboard.')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toHaveAttribute(
    'aria-disabled',
    'true',
  );
});

test('buttons copy and paste as keys do', async ({ page }) => {
  await selectGroup(page);
  await page.getByRole('button', { name: 'Copy with ribbons' }).click();
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: /^Paste/ }).click();
  await expect(onRails(page, /^Cobble/)).toHaveCount(8);
  await page.getByRole('button', { name: 'Undo paste 3 modules' }).click();
  await page.locator('.by-list').focus();
  await page.keyboard.press('Control+v');
  await expect(onRails(page, /^Cobble/)).toHaveCount(8);
});

test('a double click selects what is joined, and all of it is dragged to the lower row at once', async ({
  page,
}) => {
  const from = await spotOn(page, /^Cobble 3,/);
  await page.mouse.dblclick(from.x, from.y);
  await expect(selected(page)).toHaveCount(4);
  const to = await spotOn(page, /^Kelp/);
  await drag(page, /^Cobble 3,/, (await pxPerHp(page)) * -8, to.y - from.y);
  const lower = page.getByRole('group', { name: 'Lower row' });
  for (const name of [/^Jetty B/, /^Boulder 2/, /^Cobble 3,/, /^Cobble 4,/])
    await expect(lower.getByRole('option', { name })).toHaveCount(1);
  await expect(
    page
      .getByRole('article')
      .filter({ hasText: /T2 would have to reach/ })
      .first(),
  ).toBeVisible();
  await expect(page.getByRole('article').filter({ hasText: /S2/ })).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo move 4 modules' }).click();
  await expect(verdict(page)).toHaveText('No conflict found in the data entered');
});

/** What the lead is called that is selected; nothing where none is. */
const leadSelected = async (page: Page): Promise<string | null> => {
  const label = page.getByLabel('Label of the ribbon');
  const value = (await label.count()) > 0 ? await label.inputValue() : '';
  return /^L\d$/.test(value) ? value : null;
};

/** On the long lead below Boulder 2, well clear of other ribbons. */
async function spotOnLead(page: Page): Promise<{ x: number; y: number }> {
  const box = await onRails(page, /^Boulder 2/).boundingBox();
  if (!box) throw new Error('Boulder 2 is not on the rails');
  for (let y = box.y + box.height * 0.75; y < box.y + box.height * 0.95; y += 3) {
    await page.mouse.click(box.x + box.width * 0.9, y);
    if (await leadSelected(page)) {
      return { x: box.x + box.width * 0.9, y };
    }
    await page.waitForTimeout(400);
  }
  throw new Error('no lead was hit');
}

test('hidden leads cannot be hit, what is hidden is told, and nobody is shut out', async ({ page }) => {
  const { x, y } = await spotOnLead(page);
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Layers' }).click();
  await page.getByRole('checkbox', { name: /^Leads/ }).uncheck();
  expect(await barriersOn(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(page.getByRole('button', { name: 'Layers 1 hidden' })).toBeVisible();
  await page.mouse.click(x, y);
  await expect(page.getByLabel('Name', { exact: true })).toHaveValue('Boulder 2');
  await page.keyboard.press('h');
  await expect(page.getByRole('status')).toHaveText('Leads shown.');
  await page.keyboard.press('Escape');
  await page.waitForTimeout(400);
  await page.mouse.click(x, y);
  await expect.poll(() => leadSelected(page)).not.toBeNull();
});
