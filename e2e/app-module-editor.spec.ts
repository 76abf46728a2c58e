import { devices, type Page } from 'playwright/test';
import { barriersOn } from './accessibility.ts';
import { onRails, openApp, verdict } from './app-page.ts';
import { expect, test } from './fixtures.ts';
import { openForm, type } from './support/kind-form.ts';
import {
  editor,
  headerOn,
  hugePicture,
  kindRow,
  lay,
  middleOf,
  openEditor,
  photographFile,
  pinsOf,
  pxPerMm,
  said,
} from './support/module-editor.ts';

const CLEAR = 'No conflict found in the data entered';

const keep = (page: Page) => editor(page).getByRole('button', { name: 'Change', exact: true });
const closeStock = (page: Page) =>
  page.getByRole('dialog', { name: 'Stock' }).getByRole('button', { name: 'Close' });
const effects = (page: Page) => page.getByRole('region', { name: 'What it does to the notes' });
const toFindOut = (page: Page) => page.getByRole('region', { name: 'Facts to find out' });

test('by keys alone: a header is nudged and typed, its notes follow, and one undo takes it all back', async ({
  page,
}) => {
  await openApp(page);
  await page.keyboard.press('s');
  await expect(page.getByRole('region', { name: 'Kinds of module' })).toContainText('7 kinds');
  expect(await barriersOn(page)).toEqual([]);
  await page.getByLabel('Find a kind of module').fill('boulder');
  await expect(page.getByRole('region', { name: 'Kinds of module' })).toContainText('1 of 7 kinds');
  await kindRow(page, 'Boulder').focus();
  await page.keyboard.press('Enter');
  await expect(editor(page)).toHaveAccessibleName('Change Boulder');
  await expect(page.getByLabel('Name', { exact: true })).toBeFocused();

  // 15 HP are 76.2 mm, and its shore header stands on the middle.
  await headerOn(page, 'Shore').focus();
  await expect(said(page)).toContainText(
    'Shore: 38.1 mm from the left edge seen from the rear, 38 mm from the lower edge',
  );
  await page.keyboard.press('ArrowRight');
  await expect(page.getByLabel('Across', { exact: true })).toHaveValue('38.6');
  await page.keyboard.press('Alt+ArrowLeft');
  await page.keyboard.press('Shift+ArrowUp');
  await expect(said(page)).toContainText(
    '38.5 mm from the left edge seen from the rear, 40.54 mm from the lower edge',
  );
  await page.keyboard.press('Control+z');
  await expect(said(page)).toContainText(
    '38.5 mm from the left edge seen from the rear, 38 mm from the lower edge',
  );

  // Measured from the other side without mirroring in the head: 76.2 − 38.5.
  await page.getByLabel('Across is measured from').selectOption({ label: 'the front’s left edge' });
  await expect(page.getByLabel('Across', { exact: true })).toHaveValue('37.7');
  await page.getByLabel('Up or down is measured from').selectOption({ label: 'the upper edge' });
  await expect(page.getByLabel('Up or down', { exact: true })).toHaveValue('90.4');
  await type(page, 'Across', '33,02 mm');
  await expect(effects(page)).toContainText('S1, connector 1 misses Boulder 1 by 5.08 mm');
  await expect(effects(page)).toContainText('2 modules in Three jetties, 2 modules in One long jetty');
  expect(await barriersOn(page)).toEqual([]);
  await page.keyboard.press('Enter');
  await expect(editor(page)).toBeHidden();
  await closeStock(page).click();
  await expect(verdict(page)).not.toHaveText(CLEAR);
  await page.keyboard.press('Control+z');
  await expect(verdict(page)).toHaveText(CLEAR);
});

test('headers of two kinds are dragged: held to lines, from either side, and told where they leave the panel', async ({
  page,
}) => {
  await openApp(page);
  await openEditor(page, 'Harbour');
  const px = await pxPerMm(page);
  const from = await pinsOf(page, 'Tide');
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x + 5 * px, from.y, { steps: 3 });
  await page.mouse.up();
  // On the grid of half pins about the middle: 10 HP are 50.8 mm, so 25.4 and whole steps of 1.27 from it.
  const across = Number(await page.getByLabel('Across', { exact: true }).inputValue());
  expect(Math.abs(((across - 25.4) / 1.27) % 1)).toBeCloseTo(0, 2);
  // Near the height of the other header it catches on that, and a line says so.
  const other = await pinsOf(page, 'Power, 16-way');
  const now = await pinsOf(page, 'Tide');
  await page.mouse.move(now.x, now.y);
  await page.mouse.down();
  await page.mouse.move(now.x, other.y + 4, { steps: 4 });
  await expect(page.locator('.header-drawing .guide')).not.toHaveCount(0);
  await page.mouse.up();
  await expect(page.locator('.header-drawing .guide')).toHaveCount(0);
  expect((await pinsOf(page, 'Tide')).y).toBeCloseTo(other.y, 1);
  await page.getByRole('button', { name: 'Take back the last step with headers' }).click();
  expect((await pinsOf(page, 'Tide')).y).toBeCloseTo(now.y, 1);

  // The front is its mirror image, and left is still left of what is seen.
  const rear = await pinsOf(page, 'Tide');
  const panel = await middleOf(page.locator('.header-drawing .panel'));
  await page.getByRole('button', { name: 'Front', exact: true }).click();
  expect((await pinsOf(page, 'Tide')).x - panel.x).toBeCloseTo(panel.x - rear.x, 0);
  await expect(page.getByLabel('Across is measured from')).toHaveValue('front-left');
  await page.keyboard.press('Escape');
  await expect(editor(page)).toContainText('What you changed is not kept yet');
  await page.keyboard.press('Escape');
  await expect(editor(page)).toBeHidden();

  // Another kind: dragged off its panel, which is told; a header more, a copy, and one fewer.
  await kindRow(page, 'Gull').click();
  const at = await pinsOf(page, 'Power, 16-way');
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  await page.mouse.move(at.x + 22 * px, at.y, { steps: 4 });
  await expect(said(page)).toContainText('reaches beyond the panel');
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await expect(said(page)).not.toContainText('beyond');
  await page.getByRole('button', { name: 'Header', exact: true }).click();
  await expect(headerOn(page, 'Shore')).toBeFocused();
  await page.keyboard.press('Control+d');
  await expect(headerOn(page, 'Shore shore-2')).toBeFocused();
  await page.keyboard.press('Delete');
  await expect(headerOn(page, 'Shore')).toHaveCount(1);
  await expect(page.locator('.header-drawing').getByRole('button').last()).toBeFocused();
  await keep(page).click();
  await expect(editor(page)).toBeHidden();
  await expect(kindRow(page, 'Gull')).toContainText('8 HP · 2 headers');
});

test('what a change would take along is asked before; a kind in use is not removed, and says where it is', async ({
  page,
}) => {
  await openApp(page);
  await openEditor(page, 'Cobble');
  await headerOn(page, 'Shore').focus();
  await page.keyboard.press('Delete');
  await expect(editor(page)).toContainText(/This takes \d+ connectors off/);
  await keep(page).click();
  const asked = page.getByRole('dialog', { name: 'Change Cobble?' });
  await expect(asked).toContainText('Three jetties: ');
  expect(await barriersOn(page)).toEqual([]);
  await asked.getByRole('button', { name: 'Keep' }).click();
  await expect(editor(page)).toBeVisible();
  await keep(page).click();
  await asked.getByRole('button', { name: 'Change' }).click();
  await expect(editor(page)).toBeHidden();
  await closeStock(page).click();
  await expect(verdict(page)).not.toHaveText(CLEAR);
  await page.keyboard.press('Control+z');
  await expect(verdict(page)).toHaveText(CLEAR);

  await page.keyboard.press('s');
  const remove = page.getByRole('button', { name: 'Remove Cobble', exact: true });
  await expect(remove).toHaveAttribute('aria-disabled', 'true');
  await expect(remove).toHaveAccessibleDescription(
    /6 modules in Three jetties and 6 modules in One long jetty/,
  );
  await page.getByRole('button', { name: 'Clone Cobble' }).click();
  await page.getByLabel('Which kinds').selectOption('unused');
  await page.getByRole('button', { name: 'Remove Cobble, copy', exact: true }).click();
  await expect(page.getByRole('region', { name: 'Kinds of module' })).toContainText('No such kind');
});

test('a guessed fact leads to its field, and once it is known its notes are gone', async ({ page }) => {
  await openApp(page);
  await page.keyboard.press('s');
  await toFindOut(page)
    .getByRole('button', { name: /Kelp: Guessed figures/ })
    .click();
  await expect(page.getByLabel('These facts are')).toBeFocused();
  await page.getByLabel('These facts are').selectOption('measured');
  await expect(effects(page)).toContainText('Gone');
  await expect(effects(page)).toContainText('1 module with guessed figures');
  await page.getByLabel('Depth behind the panel').fill('');
  await expect(toFindOut(page).last()).toContainText('Depth');
  await toFindOut(page)
    .last()
    .getByRole('button', { name: /^Reminder Depth/ })
    .click();
  await expect(page.getByLabel('Depth behind the panel')).toBeFocused();
  await page.keyboard.type('41');
  await page.keyboard.press('Enter');
  await expect(editor(page)).toBeHidden();
  await expect(toFindOut(page)).toContainText('No note rests on an unknown or guessed fact.');
});

test('a photograph is laid under, scaled by two points, kept in this browser alone, and taken away', async ({
  page,
}) => {
  await openApp(page);
  await openEditor(page, 'Boulder');
  const photo = page.locator('.header-drawing image');
  await lay(page, { name: 'rear.png', mimeType: 'image/png', buffer: Buffer.from('<svg/>') });
  await expect(editor(page)).toContainText('no photograph that the browser can show');
  await lay(page, {
    name: 'rear.svg',
    mimeType: 'image/svg+xml',
    buffer: Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>'),
  });
  await expect(editor(page)).toContainText('no photograph that the browser can show');
  await lay(page, hugePicture(20_000));
  await expect(editor(page)).toContainText('The photograph is too large');
  await lay(page, await photographFile(page));
  await expect(photo).toBeVisible();
  await expect(editor(page)).toContainText(
    'It stays in this browser, unless all layouts are saved in one file',
  );

  // The two dots are 400 px apart of 600: said to be 80 mm apart, the photograph is 120 mm high.
  const px = await pxPerMm(page);
  await page.getByRole('button', { name: 'Scale by two points' }).click();
  const box = await photo.boundingBox();
  if (!box) throw new Error('no photograph');
  for (const [i, share] of [100 / 600, 500 / 600].entries()) {
    const point = page.getByRole('button', { name: `Point ${i + 1} of the photograph` });
    const at = await middleOf(point.locator('.cross').last());
    await page.mouse.move(at.x, at.y);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width / 2, box.y + box.height * share, { steps: 3 });
    await page.mouse.up();
  }
  expect(await barriersOn(page)).toEqual([]);
  await page.getByLabel('Between them').fill('80');
  await page.keyboard.press('Enter');
  await expect.poll(async () => ((await photo.boundingBox())?.height ?? 0) / px).toBeCloseTo(120, 0);

  // Dragged to fit: its upper left corner to the panel's, and then its lower left one.
  await page.getByRole('button', { name: 'Drag it to fit' }).click();
  const panel = await page.locator('.header-drawing .panel').boundingBox();
  if (!panel) throw new Error('no panel');
  for (const low of [false, true]) {
    const now = await photo.boundingBox();
    if (!now) throw new Error('no photograph');
    await page.mouse.move(now.x + 1, low ? now.y + now.height - 1 : now.y + 1);
    await page.mouse.down();
    await page.mouse.move(panel.x + 3, low ? panel.y + panel.height - 3 : panel.y + 3, { steps: 4 });
    await page.mouse.up();
  }
  await expect.poll(async () => (await photo.boundingBox())?.height ?? 0).toBeCloseTo(panel.height, -1);
  await keep(page).click();
  await expect(editor(page)).toBeHidden();

  // The layout has not changed: nothing is there to undo. The photograph is there again, and goes when it is told to.
  await closeStock(page).click();
  await expect(page.getByRole('button', { name: /^Undo/ })).toHaveAttribute('aria-disabled', 'true');
  await page.reload();
  await page.locator('.by-list[data-held]').waitFor();
  await openEditor(page, 'Boulder');
  await expect(photo).toBeVisible();
  await page.getByRole('button', { name: 'Take the photograph away' }).click();
  await expect(photo).toHaveCount(0);
  await keep(page).click();
  await kindRow(page, 'Boulder').click();
  await expect(page.getByRole('button', { name: 'Lay a photograph under it' })).toBeVisible();
  await expect(photo).toHaveCount(0);

  // Dropped, it is laid just so.
  const { buffer } = await photographFile(page);
  const dropped = await page.evaluateHandle((data) => {
    const bytes = Uint8Array.from(atob(data), (letter) => letter.charCodeAt(0));
    const transfer = new DataTransfer();
    transfer.items.add(new File([bytes], 'rear.png', { type: 'image/png' }));
    return transfer;
  }, buffer.toString('base64'));
  await page.locator('.header-drawing').dispatchEvent('drop', { dataTransfer: dropped });
  await expect(photo).toBeVisible();
});

test('the short form goes over into all facts with what was typed, and a new kind begins from a template', async ({
  page,
}) => {
  await openApp(page);
  await openForm(page, 'New kind of module');
  await type(page, 'Name', 'Skerry');
  await type(page, 'Width', '6');
  await page.getByRole('button', { name: 'All facts…' }).click();
  await expect(page.getByLabel('Name', { exact: true })).toHaveValue('Skerry');
  await page.getByLabel('Sort').selectOption('expander');
  await expect(page.locator('.header-drawing').getByRole('button')).toHaveCount(2);
  await page.getByRole('textbox', { name: 'Notes' }).fill('borrowed');
  await headerOn(page, 'Shore out').focus();
  await expect(page.getByLabel('Header’s id')).toHaveValue('out');
  await page.getByLabel('Axis').selectOption('horizontal');
  await page.getByLabel('Pin 1', { exact: true }).selectOption('right');
  await page.getByLabel('Counts for').fill('2');
  await expect(page.getByLabel('Sort')).toHaveValue('kept');
  await page.getByRole('button', { name: 'Put in stock' }).click();
  await expect(onRails(page, /^Skerry/)).toHaveCount(0);
  await page.keyboard.press('s');
  await expect(kindRow(page, 'Skerry')).toContainText('6 HP · 2 headers');
  await expect(kindRow(page, 'Skerry')).toContainText('pin 1 of in');
});

test.describe('on a phone', () => {
  const { defaultBrowserType: _, ...phone } = devices['Pixel 7'];
  test.use({ ...phone, viewport: { width: 390, height: 844 } });

  test('a header is dragged by a finger, and nothing is wider than the screen or too small', async ({
    page,
  }) => {
    await openApp(page);
    await page.keyboard.press('s');
    await kindRow(page, 'Cobble').tap();
    await expect(headerOn(page, 'Shore')).toBeVisible();
    expect(await barriersOn(page)).toEqual([]);
    const at = await pinsOf(page, 'Shore');
    const px = await pxPerMm(page);
    const wire = await page.context().newCDPSession(page);
    const touch = (kind: 'touchStart' | 'touchMove' | 'touchEnd', y?: number) =>
      wire.send('Input.dispatchTouchEvent', {
        type: kind,
        touchPoints: y === undefined ? [] : [{ x: at.x, y, id: 0 }],
      });
    await touch('touchStart', at.y);
    for (const share of [0.3, 0.6, 1]) await touch('touchMove', at.y - share * 12.7 * px);
    await touch('touchEnd');
    await expect(said(page)).toContainText(
      '12.7 mm from the left edge seen from the rear, 50.8 mm from the lower edge',
    );
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    const wide = await page.evaluate(() =>
      [...document.querySelectorAll('.kind-desk.full :is(button, input, select, textarea)')]
        .map((element) => ({ element, box: element.getBoundingClientRect() }))
        .filter(({ box }) => box.width > 0 && box.right > 390)
        .map(({ element }) => element.outerHTML),
    );
    expect(wide).toEqual([]);
    const small = await page.evaluate(() =>
      [...document.querySelectorAll('.kind-desk.full :is(button, input:not([type]), select)')]
        .map((element) => ({ element, box: element.getBoundingClientRect() }))
        .filter(({ box }) => box.width > 0 && (box.height < 40 || box.width < 40))
        .map(({ element }) => element.outerHTML),
    );
    expect(small).toEqual([]);
    await keep(page).tap();
    await expect(editor(page)).toBeHidden();
  });
});
