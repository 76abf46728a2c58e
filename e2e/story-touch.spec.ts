import { type CDPSession, devices, type Page } from 'playwright/test';
import { onRails, openApp, type Spot, spotOn, verdict } from './app-page.ts';
import { expect, test } from './fixtures.ts';

const { defaultBrowserType: _, ...phone } = devices['Pixel 7'];

test.use({ ...phone, viewport: { width: 390, height: 844 } });

const CLEAR = 'No conflict found in the data entered';

const card = (page: Page) => page.locator('.hint-card');
const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ });
const fold = (page: Page, name: RegExp) => page.getByRole('button', { name }).tap();

/** Where a header of a module lies in the rear view: mm from the panel's left edge (front) and bottom edge. */
async function headerOf(page: Page, module: RegExp, xMm: number, yMm: number): Promise<Spot> {
  const box = await onRails(page, module).boundingBox();
  if (!box) throw new Error(`${module} is not on the rails`);
  // A 3U panel is 128.4 mm high (n × 44.45 − 4.95, subrack practice).
  const pxPerMm = box.height / 128.4;
  return { x: box.x + box.width - xMm * pxPerMm, y: box.y + box.height - yMm * pxPerMm };
}

/** Fingers on the glass, straight to the browser: they stay down between moves. */
class Fingers {
  readonly #wire: CDPSession;
  readonly #page: Page;

  private constructor(page: Page, wire: CDPSession) {
    this.#page = page;
    this.#wire = wire;
  }

  static async on(page: Page): Promise<Fingers> {
    return new Fingers(page, await page.context().newCDPSession(page));
  }

  /** All fingers that are down now; one more or fewer than before is put down or lifted. */
  async touch(
    type: 'touchStart' | 'touchMove' | 'touchEnd' | 'touchCancel',
    ...spots: Spot[]
  ): Promise<void> {
    const touchPoints = spots.map(({ x, y }, id) => ({ x, y, id }));
    await this.#wire.send('Input.dispatchTouchEvent', { type, touchPoints });
  }

  async press(at: Spot): Promise<void> {
    await this.touch('touchStart', at);
  }

  /** Rests until a long press counts. */
  async rest(at: Spot): Promise<void> {
    await this.press(at);
    await this.#page.waitForTimeout(600);
  }

  async move(from: Spot, to: Spot): Promise<void> {
    for (const share of [0.25, 0.5, 0.75, 1])
      await this.touch('touchMove', {
        x: from.x + (to.x - from.x) * share,
        y: from.y + (to.y - from.y) * share,
      });
  }

  async lift(): Promise<void> {
    await this.touch('touchEnd');
  }
}

test.beforeEach(({ page }) => openApp(page));

test('a slip on the phone: moved by finger, told, mended with a tap, all taken back', async ({ page }) => {
  const fingers = await Fingers.on(page);

  // A tap selects; then a finger moves it.
  const jetty = await spotOn(page, /^Jetty A/);
  await page.touchscreen.tap(jetty.x, jetty.y);
  await fingers.press(jetty);
  await fingers.move(jetty, { x: jetty.x + 12, y: jetty.y });
  await fingers.lift();
  await expect(onRails(page, /^Jetty A, 5 HP at 10/)).toHaveCount(0);
  await expect(verdict(page)).not.toHaveText(CLEAR);

  // Its note is read, and its remedy mends it.
  await fold(page, /^Notes/);
  const remedy = page.locator('article .mend').first();
  await expect(remedy).toBeVisible();
  for (let taps = 0; taps < 6 && (await remedy.count()) > 0; taps++) {
    const before = await verdict(page).textContent();
    await remedy.tap();
    await expect(verdict(page)).not.toHaveText(before ?? '');
  }
  await expect(verdict(page)).toHaveText(CLEAR);
  await fold(page, /^Notes/);

  while ((await undo(page).getAttribute('aria-disabled')) !== 'true') await undo(page).tap();
  await expect(onRails(page, /^Jetty A, 5 HP at 10/)).toHaveCount(1);
  await expect(verdict(page)).toHaveText(CLEAR);
});

test('a ribbon is taken away and laid anew with a finger that rests first; two fingers call it off', async ({
  page,
}) => {
  const fingers = await Fingers.on(page);
  const cobble = await headerOf(page, /^Cobble 1/, 12.7, 38);
  const jetty = await headerOf(page, /^Jetty A/, 12.7, 38);
  await page.touchscreen.tap((cobble.x + jetty.x) / 2, cobble.y);
  await fold(page, /^This part/);
  await expect(page.getByRole('region', { name: 'This part' })).toContainText('4 of 5 connectors seated');
  await page.getByRole('region', { name: 'This part' }).getByRole('button', { name: 'Remove' }).tap();
  await fold(page, /^This part/);
  await expect(verdict(page)).not.toHaveText(CLEAR);

  const end = await headerOf(page, /^Boulder 1/, 38.1, 38);
  const lay = async (): Promise<void> => {
    await fingers.rest(jetty);
    await fingers.move(jetty, end);
    await expect(card(page)).toContainText('land');
  };

  // A second finger in the middle of it: nothing is laid, the sheet is pinched.
  await lay();
  await fingers.touch('touchStart', end, { x: end.x + 80, y: end.y + 120 });
  await expect(card(page)).toBeHidden();
  await fingers.touch('touchEnd');
  await expect(undo(page)).toHaveAccessibleName('Undo remove S1');

  // Taken away by the system: nothing is laid either.
  await lay();
  await fingers.touch('touchCancel');
  await expect(card(page)).toBeHidden();
  await expect(undo(page)).toHaveAccessibleName('Undo remove S1');

  await lay();
  await expect(card(page)).toContainText('4 of 5 land');
  await fingers.lift();
  await expect(verdict(page)).toHaveText(CLEAR);
  await undo(page).tap();
  await undo(page).tap();
  await expect(verdict(page)).toHaveText(CLEAR);
});

test('a kind in hand stays there while two fingers look closer, and is put down with a tap', async ({
  page,
}) => {
  const fingers = await Fingers.on(page);
  await fold(page, /^Stock/);
  await page.getByRole('button', { name: /^Gull 8 HP/ }).tap();
  const wide = (await onRails(page, /^Jetty C/).boundingBox())?.width ?? 0;
  const spot = await spotOn(page, /^Jetty C/);
  const [a, b] = [
    { x: spot.x - 20, y: spot.y + 60 },
    { x: spot.x + 20, y: spot.y + 60 },
  ];
  await fingers.touch('touchStart', a);
  await fingers.touch('touchStart', a, b);
  for (const by of [10, 20, 30])
    await fingers.touch('touchMove', { x: a.x - by, y: a.y }, { x: b.x + by, y: b.y });
  await fingers.touch('touchEnd');
  await expect
    .poll(async () => (await onRails(page, /^Jetty C/).boundingBox())?.width ?? 0)
    .toBeGreaterThan(1.3 * wide);
  await expect(onRails(page, /^Gull/)).toHaveCount(2);
  const free = await spotOn(page, /^Jetty C/);
  const { width = 0 } = (await onRails(page, /^Jetty C/).boundingBox()) ?? {};
  await page.touchscreen.tap(Math.min(380, free.x + 1.5 * width), free.y + 30);
  await expect(onRails(page, /^Gull/)).toHaveCount(3);
  await undo(page).tap();
  await expect(onRails(page, /^Gull/)).toHaveCount(2);
});
