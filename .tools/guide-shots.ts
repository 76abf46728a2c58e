import type { Page } from 'playwright';
import { onRails, type Spot, spotOn } from '../e2e/app-page.ts';

/** CSS px of a picture of the guide. */
export const SHOT_SIZE = { width: 680, height: 390 };

/** A picture of the guide: what is done in the demo, and what of a window of 1200 by 760 px is shown. */
export interface GuideShot {
  readonly name: string;
  readonly at: readonly [x: number, y: number];
  readonly show: (page: Page) => Promise<void>;
}

const MARGIN = [520, 48] as const;

/** The pointer's, and the one that lies on the first thing of a form, are not what is to be seen. */
const unfocus = (page: Page): Promise<void> =>
  page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());

async function byKey(page: Page, key: string, ready: string): Promise<void> {
  await page.keyboard.press(key);
  await page.locator(ready).first().waitFor();
  await unfocus(page);
}

async function sheetPage(page: Page, name: string): Promise<void> {
  await page.keyboard.press('e');
  const heading = page.frameLocator('.bench-sheet iframe').getByRole('heading', { name }).first();
  await heading.waitFor();
  await unfocus(page);
  await heading.evaluate((head) => head.closest('.page')?.scrollIntoView({ block: 'start' }));
}

/** A header of a module, seen from the rear, by its place in mm from the left and bottom edge of a panel of so many HP. */
async function headerOn(page: Page, name: string, [xMm, yMm, hp]: readonly number[]): Promise<Spot> {
  const box = await onRails(page, new RegExp(`^${name},`)).boundingBox();
  if (!box || xMm === undefined || yMm === undefined || hp === undefined) throw new Error(`no ${name}`);
  const scale = box.width / (hp * 5.08 - 0.3);
  return { x: box.x + box.width - (xMm - 0.15) * scale, y: box.y + box.height - yMm * scale };
}

async function layAgain(page: Page): Promise<void> {
  const from = await headerOn(page, 'Jetty A', [12.7, 38, 5]);
  const to = await headerOn(page, 'Boulder 1', [38.1, 38, 15]);
  await page.mouse.click(from.x, from.y);
  await page.keyboard.press('Delete');
  const stock = page.getByRole('region', { name: 'Stock' });
  await stock.getByRole('button', { name: 'Ribbons' }).click();
  await stock.getByRole('button', { name: /^Shore, 5 at 5 HP/ }).click();
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move((from.x + to.x) / 2, to.y);
  await page.mouse.move(to.x, to.y + 20);
  await page.locator('.hint-card').waitFor();
}

async function placeAnother(page: Page): Promise<void> {
  await page.keyboard.press('t');
  const { y } = await spotOn(page, /^Kelp/);
  const { x } = await spotOn(page, /^Boulder 1/);
  await page.getByRole('button', { name: /^Cobble 5 HP/ }).hover();
  await page.mouse.down();
  await page.mouse.move(x - 250, y);
  await page.mouse.move(x - 260, y + 30);
}

const longJetty = (page: Page): Promise<void> => page.getByText('One long jetty').first().click();

/** One for each step of the guide that a picture helps, by the name that it bears there. */
export const guideShots: readonly GuideShot[] = [
  { name: 'case', at: MARGIN, show: (page) => byKey(page, 'c', '.fold-panel') },
  { name: 'stock', at: [12, 12], show: (page) => byKey(page, 's', 'dialog :text("Harbour")') },
  { name: 'place', at: [10, 365], show: placeAnother },
  { name: 'join', at: [420, 48], show: layAgain },
  {
    name: 'feed',
    at: MARGIN,
    show: async (page) => {
      await longJetty(page);
      const note = page.locator('.note', { hasText: 'no power lead' }).first();
      await note.locator('.mend').first().waitFor();
      await note.click();
    },
  },
  { name: 'power', at: MARGIN, show: (page) => byKey(page, 'v', '.margin .arrivals') },
  { name: 'crimp', at: [310, 60], show: (page) => sheetPage(page, 'True-scale strips') },
  {
    name: 'test',
    at: MARGIN,
    show: async (page) => {
      await byKey(page, 'a', '.fold-panel');
      await page
        .getByRole('button', { name: /All three/ })
        .first()
        .click();
      await unfocus(page);
    },
  },
  { name: 'order', at: [395, 60], show: (page) => sheetPage(page, 'Order of work') },
  {
    name: 'power-up',
    at: MARGIN,
    show: async (page) => {
      await byKey(page, 'a', '.fold-panel');
      await page.getByRole('heading', { name: 'Powering up, in this order' }).scrollIntoViewIfNeeded();
      await page
        .getByRole('heading', { name: 'Powering up, in this order' })
        .evaluate((head) => head.scrollIntoView());
    },
  },
  {
    name: 'change',
    at: MARGIN,
    show: async (page) => {
      await byKey(page, 'a', '.fold-panel');
      await page.getByRole('button', { name: 'Mark this take as in the case' }).click();
      await longJetty(page);
      await unfocus(page);
      await byKey(page, 'Shift+A', '.fold-panel');
    },
  },
];
