import type { Page } from 'playwright/test';
import { holdAndMove, onRails, openApp, type Spot, spotOn, verdict } from './app-page.ts';
import { expect, test } from './fixtures.ts';

const CLEAR = 'No conflict found in the data entered';

/** Takes a kind from the stock and drags it to a spot. */
async function dragFromStock(page: Page, shelf: string, kind: RegExp, { x, y }: Spot): Promise<void> {
  const stock = page.getByRole('region', { name: 'Stock' });
  await stock.getByRole('button', { name: shelf, exact: true }).click();
  await stock.getByRole('button', { name: kind }).hover();
  await page.mouse.down();
  await page.mouse.move(x, y - 30);
  await page.mouse.move(x, y);
  await page.mouse.up();
}

/** Where a header of a module lies in the rear view: mm from the panel's left edge (front) and bottom edge. */
async function headerOf(page: Page, module: RegExp, xMm: number, yMm: number): Promise<Spot> {
  const box = await onRails(page, module).boundingBox();
  if (!box) throw new Error(`${module} is not on the rails`);
  // A 3U panel is 128.4 mm high (n × 44.45 − 4.95, subrack practice); width is read from the same scale.
  const pxPerMm = box.height / 128.4;
  return { x: box.x + box.width - xMm * pxPerMm, y: box.y + box.height - yMm * pxPerMm };
}

const note = (page: Page, words: string) => page.getByRole('article').filter({ hasText: words });

test('an empty case becomes a linked, fed group by dragging; notes come and go, from the rear and from the front', async ({
  page,
}) => {
  await openApp(page);
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'New empty case' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Ribbonwright');
  await expect(onRails(page, /./)).toHaveCount(0);

  // A collector and two voices beside it, right to left as the rear shows them.
  const ground = await page.locator('.by-list').boundingBox();
  if (!ground) throw new Error('no stage');
  await dragFromStock(page, 'Modules', /^Jetty/, { x: ground.x + ground.width * 0.5, y: ground.y + 120 });
  const hp = ((await onRails(page, /^Jetty/).boundingBox())?.width ?? 0) / 5;
  const jetty = await spotOn(page, /^Jetty/);
  await dragFromStock(page, 'Modules', /^Cobble/, { x: jetty.x - 5 * hp, y: jetty.y + 40 });
  await dragFromStock(page, 'Modules', /^Cobble/, { x: jetty.x - 10 * hp, y: jetty.y + 40 });
  await expect(onRails(page, /^Cobble/)).toHaveCount(2);

  // One ribbon over all three: the group is linked, and has no power.
  await dragFromStock(page, 'Ribbons', /^Shore, 3 at 5 HP/, await headerOf(page, /^Jetty/, 12.7, 38));
  await expect(page.getByRole('region', { name: 'This part' })).toContainText('3 of 3 connectors seated');
  await expect(note(page, 'have no power lead')).toBeVisible();

  // One lead feeds it.
  await dragFromStock(page, 'Leads', /^Lead 16 to 10, 400/, await headerOf(page, /^Cobble 2/, 12.7, 91));
  await expect(note(page, 'have no power lead')).toHaveCount(0);
  await expect(verdict(page)).toHaveText(CLEAR);

  // Half an HP off, a connector can sit one pin row beside its header: damage, told while the module moves.
  await page.keyboard.down('Alt');
  await holdAndMove(page, /^Cobble 2/, -0.5 * hp);
  await expect(verdict(page)).toHaveText('1 thing would do damage');
  await page.mouse.up();
  await page.keyboard.up('Alt');
  await expect(note(page, 'lands one pin row off Cobble 2')).toBeVisible();

  // The same note stands from the front; its remedy mends it with one tap.
  await page.keyboard.press('t');
  await expect(page.getByText('FRONT', { exact: true })).toBeVisible();
  await note(page, 'lands one pin row off Cobble 2')
    .getByRole('button', { name: /^Move Cobble 2 to/ })
    .click();
  await expect(verdict(page)).toHaveText(CLEAR);

  // From the front, left is left: one HP further right it misses the ribbon; undone, all is well.
  await holdAndMove(page, /^Cobble 2/, hp);
  await expect(verdict(page)).toHaveText('1 will not fit or work');
  await page.mouse.up();
  await expect(note(page, 'misses Cobble 2')).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(note(page, 'misses Cobble 2')).toHaveCount(0);
  await expect(verdict(page)).toHaveText(CLEAR);
});
