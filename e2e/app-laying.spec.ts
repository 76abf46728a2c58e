import type { Locator, Page } from 'playwright/test';
import { onRails, openApp, type Spot, spotOn } from './app-page.ts';
import { expect, test } from './fixtures.ts';

const HP_MM = 5.08;

/** Where the demo's kinds have their headers: mm from the left and bottom edge, seen from the front; their width in HP. */
const HEADERS = {
  'Jetty shore': [12.7, 38, 5],
  'Jetty tide': [12.7, 74, 5],
  'Cobble shore': [12.7, 38, 5],
  'Boulder shore': [38.1, 38, 15],
  'Foghorn power': [35, 64, 14],
} as const;

/** A header of a module, seen from the rear. */
async function header(page: Page, name: string, kind: keyof typeof HEADERS): Promise<Spot> {
  const box = await onRails(page, new RegExp(`^${name},`)).boundingBox();
  if (!box) throw new Error(`${name} is not on the rails`);
  const [xMm, yMm, widthHp] = HEADERS[kind];
  const scale = box.width / (widthHp * HP_MM - 0.3);
  return { x: box.x + box.width - (xMm - 0.15) * scale, y: box.y + box.height - yMm * scale };
}

/** CSS px per mm. */
async function scaleOf(page: Page): Promise<number> {
  const box = await onRails(page, /^Jetty A,/).boundingBox();
  return (box?.width ?? 0) / (5 * HP_MM - 0.3);
}

const card = (page: Page): Locator => page.locator('.hint-card');
const tally = (page: Page, kind: RegExp): Locator =>
  page.getByRole('region', { name: 'Stock' }).getByRole('button', { name: kind });

async function takeUp(page: Page, tab: 'Ribbons' | 'Leads', kind: RegExp): Promise<void> {
  await page.getByRole('region', { name: 'Stock' }).getByRole('button', { name: tab }).click();
  await tally(page, kind).click();
}

/** Takes away the ribbon that lies on a header. */
async function unlay(page: Page, at: Spot): Promise<void> {
  await page.mouse.click(at.x, at.y);
  await page.keyboard.press('Delete');
}

async function draw(page: Page, from: Spot, to: Spot): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move((from.x + to.x) / 2, (from.y + to.y) / 2);
  await page.mouse.move(to.x, to.y);
}

test.beforeEach(({ page }) => openApp(page));

for (const [way, from, to] of [
  ['right', 'Cobble 4', 'Jetty B'],
  ['left', 'Jetty B', 'Cobble 4'],
] as const) {
  test(`a ribbon of four is drawn to the ${way} from the rear`, async ({ page }) => {
    const kindOf = (name: string) => (name.startsWith('Jetty') ? 'Jetty shore' : 'Cobble shore');
    const start = await header(page, from, kindOf(from));
    const end = await header(page, to, kindOf(to));
    await unlay(page, start);
    await takeUp(page, 'Ribbons', /^Shore, 4 bending/);
    await draw(page, start, { x: end.x, y: end.y + 20 });
    await expect(card(page)).toContainText('stripe down');
    await expect(card(page)).toContainText('4 of 4 land');
    await page.mouse.up();
    await expect(card(page)).toBeHidden();
    await expect(tally(page, /^Shore, 4 bending/)).toContainText('1 of 1');
    await page.keyboard.press('Control+z');
    await expect(tally(page, /^Shore, 4 bending/)).toContainText('0 of 1');
  });
}

test('the card says that a connector is a row off, and Escape drops it all', async ({ page }) => {
  const jetty = await header(page, 'Jetty A', 'Jetty shore');
  const boulder = await header(page, 'Boulder 1', 'Boulder shore');
  await unlay(page, jetty);
  const cobble = await spotOn(page, /^Cobble 1,/);
  await page.mouse.click(cobble.x, cobble.y);
  await page.keyboard.press('Alt+ArrowLeft');
  await takeUp(page, 'Ribbons', /^Shore, 5 at 5 HP/);
  await draw(page, jetty, { x: boulder.x, y: boulder.y + 40 });
  await expect(card(page)).toContainText('2.54 mm (1 row) off Cobble 1');
  await page.keyboard.press('Escape');
  await expect(card(page)).toBeHidden();
  await page.mouse.up();
  await expect(tally(page, /^Shore, 5 at 5 HP/)).toContainText('0 of 1');
});

test('an extension is plugged into the free socket of a ribbon', async ({ page }) => {
  const jettyA = await header(page, 'Jetty A', 'Jetty tide');
  const jettyB = await header(page, 'Jetty B', 'Jetty tide');
  await unlay(page, { x: jettyB.x + 14, y: jettyB.y });
  const socket = { x: jettyA.x - 58 * (await scaleOf(page)), y: jettyA.y };
  await takeUp(page, 'Ribbons', /^Tide, extension/);
  await draw(page, socket, { x: jettyB.x, y: jettyB.y + 15 });
  await page.mouse.up();
  await expect(tally(page, /^Tide, extension/)).toContainText('1 of 1');
});

test('one drag lays a lead, from the module and from the board', async ({ page }) => {
  const foghorn = await header(page, 'Foghorn', 'Foghorn power');
  await unlay(page, foghorn);
  const scale = await scaleOf(page);
  // Header 6 of Board 1 lies 13.6 mm further left, seen from the front, than header 7, which the lead leaves free.
  const left = await onRails(page, /^Foghorn,/).boundingBox();
  const right = (left?.x ?? 0) + (left?.width ?? 0);
  const board = { x: right - (370 + 9 + 13.6 * 6 - 82 * HP_MM) * scale, y: foghorn.y + 4 * scale };
  await page.getByRole('region', { name: 'Stock' }).getByRole('button', { name: 'Leads' }).click();
  const lead = tally(page, /^Lead 16-way, 150 mm/);
  const before = await lead.textContent();
  for (const [from, to] of [
    [foghorn, board],
    [board, foghorn],
  ] as const) {
    await draw(page, from, to);
    await expect(card(page)).toContainText('mm needed, 150 mm there');
    await page.mouse.up();
    await expect(lead).not.toHaveText(before ?? '');
    await page.keyboard.press('Control+z');
    await expect(lead).toHaveText(before ?? '');
  }
});

test('a loose link goes to the other row', async ({ page }) => {
  const jettyC = await header(page, 'Jetty C', 'Jetty tide');
  const jettyA = await header(page, 'Jetty A', 'Jetty tide');
  await unlay(page, jettyC);
  const scale = await scaleOf(page);
  // T2 has a free socket half way from Jetty B to where it is plugged into T1.
  const jettyB = await header(page, 'Jetty B', 'Jetty tide');
  const plug = jettyA.x - 58 * scale;
  const socket = { x: jettyB.x + (plug - jettyB.x) / 2, y: jettyB.y };
  await takeUp(page, 'Ribbons', /^Tide, loose link/);
  await draw(page, jettyC, socket);
  await expect(card(page)).toContainText('needed');
  await page.mouse.up();
  await expect(tally(page, /^Tide, loose link/)).toContainText('1 of 1');
});

test.describe('by finger', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  /** A finger as the browser tells of it: pressed, moved by steps, lifted. */
  async function finger(page: Page) {
    const session = await page.context().newCDPSession(page);
    const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', spots: readonly Spot[]) =>
      session.send('Input.dispatchTouchEvent', { type, touchPoints: spots.map(({ x, y }) => ({ x, y })) });
    return {
      down: (at: Spot) => send('touchStart', [at]),
      move: (at: Spot) => send('touchMove', [at]),
      up: () => send('touchEnd', []),
    };
  }

  test('a finger that rests on a header draws a ribbon; the card keeps clear of it and on the screen', async ({
    page,
  }) => {
    const boulder = await header(page, 'Boulder 1', 'Boulder shore');
    await page.touchscreen.tap(boulder.x, boulder.y);
    await page.keyboard.press('Delete');
    const jetty = await header(page, 'Jetty A', 'Jetty shore');
    const touch = await finger(page);
    await touch.down(boulder);
    await expect(card(page)).toBeVisible();
    const end = { x: jetty.x, y: jetty.y + 6 };
    await touch.move({ x: (boulder.x + end.x) / 2, y: end.y });
    await touch.move(end);
    await expect(card(page)).toContainText('land');
    const box = await card(page).boundingBox();
    if (!box) throw new Error('no card');
    expect(box.x).toBeGreaterThanOrEqual(0);
    expect(box.x + box.width).toBeLessThanOrEqual(390);
    expect(box.y).toBeGreaterThanOrEqual(0);
    const isUnder = ({ x, y, width, height }: { x: number; y: number; width: number; height: number }) =>
      end.y >= y && end.y <= y + height && end.x >= x && end.x <= x + width;
    expect(isUnder(box)).toBe(false);
    // What the finger hides is shown beside it, larger: many colours, and not the empty bench.
    const loupe = page.locator('.loupe');
    await expect(loupe).toBeVisible();
    expect(isUnder((await loupe.boundingBox()) ?? box)).toBe(false);
    const colours = await loupe.evaluate((canvas: HTMLCanvasElement) => {
      const { data } = canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height) ?? {};
      return new Set(new Uint32Array(data?.buffer ?? new ArrayBuffer(0))).size;
    });
    expect(colours).toBeGreaterThan(50);
    await touch.up();
    await expect(loupe).toBeHidden();
    await expect(card(page)).toBeHidden();
    await expect(page.getByRole('button', { name: /^Undo lay a ribbon/ })).toBeEnabled();
  });
});
