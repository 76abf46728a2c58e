import type { Locator, Page } from 'playwright/test';
import { barriersOn } from './accessibility.ts';
import { openApp, spotOn, verdict } from './app-page.ts';
import { expect, test } from './fixtures.ts';
import { stock } from './support/kind-form.ts';

const desk = (page: Page): Locator => page.getByRole('dialog', { name: 'Stock' });
const list = (page: Page): Locator => desk(page).locator('.list-pane');
const NO_CONFLICT = 'No conflict found in the data entered';

async function openPage(page: Page, name: string): Promise<void> {
  await page.locator('.by-list').focus();
  await page.keyboard.press('s');
  await desk(page).getByRole('navigation').getByRole('button', { name, exact: true }).click();
}

async function close(page: Page): Promise<void> {
  await page.keyboard.press('Escape');
  await expect(desk(page)).toBeHidden();
}

test('a bus with ±15 V is drawn pin by pin, and a voltage is called otherwise everywhere at once', async ({
  page,
}) => {
  await openApp(page);
  await openPage(page, 'Buses and voltages');
  await list(page).getByRole('button', { name: '±15 V' }).click();
  await expect(list(page).getByRole('button', { name: '−15 V' })).toBeVisible();
  await list(page).getByRole('button', { name: 'New bus' }).click();
  await expect(desk(page).getByLabel('Name', { exact: true })).toBeFocused();
  await page.keyboard.type('Reef');
  await desk(page).getByRole('button', { name: 'Last pair' }).click();
  await expect(desk(page).getByText('8 pins')).toBeVisible();

  // Counted down one side, as on a chip: what is typed there lies elsewhere in the order of a pin header.
  await desk(page)
    .getByRole('radio', { name: /Down one side/ })
    .check();
  await desk(page).getByLabel('Pin 1', { exact: true }).focus();
  for (const line of ['+15', 'GND', 'mix', '', '', 'tone', 'GND', '-15']) {
    await page.keyboard.type(line);
    await page.keyboard.press('Enter');
  }
  await desk(page)
    .getByRole('radio', { name: /Across and on/ })
    .check();
  const pins = desk(page).locator('.map input');
  await expect(pins).toHaveCount(8);
  expect(
    await pins.evaluateAll((inputs) => inputs.map((input) => (input as HTMLInputElement).value)),
  ).toEqual(['+15', '-15', 'GND', 'GND', 'mix', 'tone', '', '']);
  await desk(page).getByLabel('Pin 1', { exact: true }).focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowDown');
  await expect(desk(page).getByLabel('Pin 4', { exact: true })).toBeFocused();
  await desk(page).getByLabel('Pin 7', { exact: true }).focus();
  await desk(page).getByRole('group', { name: /Pin 7/ }).getByRole('button', { name: 'GND' }).click();
  await expect(desk(page).getByLabel('Pin 7', { exact: true })).toHaveValue('GND');
  await expect(desk(page).getByLabel('Pin 8', { exact: true })).toBeFocused();
  expect(await barriersOn(page)).toEqual([]);
  await desk(page).getByRole('button', { name: 'Put in stock' }).click();
  await expect(list(page).getByRole('button', { name: /^Reef/ })).toHaveText(
    /8 pins · \+15 V · −15 V · 2 signals/,
  );

  // What is in use stays, and says where; its name may change all the same.
  await list(page)
    .getByRole('button', { name: /^\+12 V/ })
    .click();
  await expect(desk(page)).toContainText('"+12" is in use: on pins of Shore');
  await expect(desk(page).getByRole('button', { name: 'Remove' })).toHaveAttribute('aria-disabled', 'true');
  await desk(page).getByLabel('Name', { exact: true }).fill('+12A');
  await expect(desk(page)).toContainText('No note comes or goes');
  await desk(page).getByRole('button', { name: 'Change the voltage' }).click();
  await expect(list(page).getByRole('button', { name: /^Shore/ })).toContainText('+12A');
  await close(page);
  await expect(verdict(page)).toHaveText(NO_CONFLICT);
  for (let step = 0; step < 3; step++) await page.keyboard.press('Control+z');
  await openPage(page, 'Buses and voltages');
  await expect(list(page).getByRole('button', { name: /^Reef/ })).toHaveCount(0);
  await expect(list(page).getByRole('button', { name: '±15 V' })).toBeVisible();
});

test('limits are changed, their notes told before, and reset', async ({ page }) => {
  await openApp(page);
  await openPage(page, 'Limits');
  const bend = desk(page).getByRole('textbox', { name: 'Smallest bend of a ribbon' });
  await expect(bend).toHaveAccessibleDescription(/NASA-STD-8739\.4/);
  await bend.fill('none');
  await desk(page).getByRole('button', { name: 'Change limits' }).click();
  await expect(bend).toBeFocused();
  await expect(bend).toHaveAccessibleDescription(/A number of mm from 0/);
  await bend.fill('30');
  await expect(desk(page)).toContainText(/notes would come/);
  expect(await barriersOn(page)).toEqual([]);
  await desk(page).getByRole('button', { name: 'Change limits' }).click();
  await close(page);
  await expect(verdict(page)).not.toHaveText(NO_CONFLICT);
  await openPage(page, 'Limits');
  await expect(bend).toHaveValue('30');
  await desk(page).getByRole('button', { name: 'Reset all' }).click();
  await expect(bend).toHaveValue('3');
  await expect(desk(page)).toContainText(/notes would go/);
  await desk(page).getByRole('button', { name: 'Change limits' }).click();
  await close(page);
  await expect(verdict(page)).toHaveText(NO_CONFLICT);
});

test('connectors of a ribbon are dragged, moved by keys and typed; the change is told and undone', async ({
  page,
}) => {
  await openApp(page);
  await openPage(page, 'Ribbons');
  await list(page)
    .getByRole('button', { name: /^Shore, 4 bending/ })
    .click();
  await expect(desk(page)).toContainText('Shore, 4 bending is in use: 1 ribbon in Three jetties');
  const second = desk(page).getByRole('slider', { name: 'Connector 2 of 4, socket' });
  const place = desk(page).getByLabel('Place of connector 2, mm');
  await expect(second).toHaveAttribute('aria-valuetext', '36 mm');
  await second.focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Shift+ArrowLeft');
  await expect(place).toHaveValue('37.9');

  const third = desk(page).getByRole('slider', { name: 'Connector 3 of 4, socket' });
  const box = await third.boundingBox();
  const one = await desk(page).getByRole('slider', { name: 'Connector 1 of 4, socket' }).boundingBox();
  if (!box || !one) throw new Error('no connectors');
  const pxPerMm = (box.x - one.x) / 96;
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2 + 5 * pxPerMm, box.y, { steps: 3 });
  await page.mouse.move(box.x + box.width / 2 + 10 * pxPerMm, box.y, { steps: 3 });
  await page.mouse.up();
  await expect(desk(page).getByLabel('Place of connector 3, mm')).toHaveValue('106');

  // A gap moves all that comes after it; half an inch is as good as 12.7 mm, and HP as good as mm.
  const gap = desk(page).getByLabel('Gap before connector 2, mm');
  await gap.fill('6 hp');
  await page.keyboard.press('Enter');
  await expect(place).toHaveValue('30.48');
  await expect(desk(page).getByLabel('Gap before connector 3, mm')).toHaveValue('68.1');
  await desk(page).getByLabel('Key of connector 2').selectOption('with the stripe');
  await expect(desk(page)).toContainText('in all takes 2 ribbons with');
  expect(await barriersOn(page)).toEqual([]);
  await desk(page).getByRole('button', { name: 'Change the ribbon' }).click();
  await expect(desk(page).getByRole('button', { name: 'Change the ribbon' })).toHaveAttribute(
    'aria-disabled',
    'true',
  );
  await close(page);
  await page.keyboard.press('Control+z');
  await openPage(page, 'Ribbons');
  await list(page)
    .getByRole('button', { name: /^Shore, 4 bending/ })
    .click();
  await expect(place).toHaveValue('36');
});

/** Selects three headers' modules of the demo and begins to make a ribbon for them. */
async function measureJettyAndCobbles(page: Page): Promise<void> {
  for (const [i, name] of [/^Jetty C/, /^Cobble 5/, /^Cobble 6/].entries()) {
    const { x, y } = await spotOn(page, name);
    if (i > 0) await page.keyboard.down('Shift');
    await page.mouse.click(x, y);
    if (i > 0) await page.keyboard.up('Shift');
  }
  await page.keyboard.press('u');
  await expect(desk(page).getByRole('heading', { name: 'Made to measure' })).toBeVisible();
}

test('a ribbon made to measure over three headers is laid at once, without a note, and undone in one step', async ({
  page,
}) => {
  await openApp(page);
  await measureJettyAndCobbles(page);
  const ticked = desk(page).getByRole('checkbox', { checked: true });
  await expect(ticked).toHaveCount(4);
  await expect(desk(page).getByLabel('Row and bus').locator('option:checked')).toHaveText(
    'Lower row · Shore',
  );
  await expect(desk(page).getByRole('checkbox', { name: /Pull out S3 first/ })).toBeChecked();
  const slack = desk(page).getByRole('textbox', { name: 'Slack of gap 2, mm' });
  await expect(slack).toHaveValue(/^\d/);
  await expect(desk(page)).toContainText('No note comes or goes');
  expect(await barriersOn(page)).toEqual([]);

  // Slack that does not clear the case is said before anything is laid.
  const usual = await slack.inputValue();
  await slack.fill('90');
  await expect(desk(page).getByRole('table')).toContainText('does not clear the case');
  await expect(desk(page)).toContainText(/notes? would come/);
  await slack.fill(usual);
  await expect(desk(page)).toContainText('No note comes or goes');

  await desk(page).getByRole('button', { name: 'Put in stock and lay it' }).click();
  await expect(desk(page)).toBeHidden();
  await expect(verdict(page)).toHaveText(NO_CONFLICT);
  await stock(page).getByRole('button', { name: 'Ribbons', exact: true }).click();
  const tile = stock(page).getByRole('button', { name: /^Shore to measure, 3/ });
  await expect(tile)
    .toContainText('0 of 0')
    .catch(() => expect(tile).toBeVisible());
  await page.locator('.by-list').focus();
  await page.keyboard.press('Control+z');
  await expect(tile).toHaveCount(0);
  await expect(verdict(page)).toHaveText(NO_CONFLICT);
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  test('a finger drags a connector', async ({ page }) => {
    await openApp(page);
    await openPage(page, 'Ribbons');
    await list(page)
      .getByRole('button', { name: /^Shore, 3 bending/ })
      .tap();
    const last = desk(page).getByRole('slider', { name: 'Connector 3 of 3, socket' });
    await last.scrollIntoViewIfNeeded();
    const box = await last.boundingBox();
    if (!box) throw new Error('no connector');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const wire = await page.context().newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: { x: number; y: number }[]) =>
      wire.send('Input.dispatchTouchEvent', { type, touchPoints: points });
    await touch('touchStart', [{ x, y }]);
    for (const dx of [-10, -20, -30]) await touch('touchMove', [{ x: x + dx, y: y + 4 }]);
    await touch('touchEnd', []);
    const place = desk(page).getByLabel('Place of connector 3, mm');
    await expect(place).not.toHaveValue('72');
    expect(Number(await place.inputValue())).toBeLessThan(70);
    await desk(page).getByRole('button', { name: 'As it was' }).tap();
    await expect(place).toHaveValue('72');
  });

  test('lists and what is chosen from them take turns, and nothing stands out of the page', async ({
    page,
  }) => {
    await openApp(page);
    for (const [name, entry, title] of [
      ['Ribbons', /^Shore, 3 bending/, 'Shore, 3 bending'],
      ['Ribbons', /^Make one to measure/, 'Made to measure'],
      ['Buses and voltages', /^Tide/, 'Tide'],
    ] as const) {
      await openPage(page, name);
      await list(page).getByRole('button', { name: entry }).click();
      await expect(desk(page).getByRole('heading', { name: title })).toBeVisible();
      await expect(list(page)).toBeHidden();
      const pane = desk(page).locator('.detail-pane');
      expect(await pane.evaluate(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth)).toBe(0);
      expect(await barriersOn(page)).toEqual([]);
      await desk(page).getByRole('button', { name: 'The list' }).click();
      await expect(list(page)).toBeVisible();
      await close(page);
    }
    await openPage(page, 'Limits');
    expect(await barriersOn(page)).toEqual([]);
    await desk(page).getByRole('textbox', { name: 'Play that a seated connector takes' }).fill('0');
    await expect(
      desk(page).getByRole('button', { name: 'Reset: play that a seated connector takes' }),
    ).toBeVisible();
  });
});
