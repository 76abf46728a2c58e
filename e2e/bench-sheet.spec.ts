import { readFileSync } from 'node:fs';
import type { Download, Page } from 'playwright/test';
import { demoLayout } from '../src/layout/demo.ts';
import type { Layout } from '../src/layout/layout.ts';
import { benchSheet } from '../src/sheet/bench-sheet.ts';
import type { Paper } from '../src/sheet/sheet-page.ts';
import { deriveTake } from '../src/wiring/derive.ts';
import { fortyModules } from '../tests/support/forty-modules.ts';
import { barriersOn } from './accessibility.ts';
import { openApp } from './app-page.ts';
import { expect, test } from './fixtures.ts';
import { hostileNames } from './support/hostile-names.ts';
import { bare, readPdf } from './support/read-pdf.ts';

/** Paper, mm: ISO 216; Letter is 8½ by 11 in. */
const SIZES: Readonly<Record<Paper, readonly [short: number, long: number]>> = {
  a4: [210, 297],
  letter: [215.9, 279.4],
};

/** Printers' points are whole in some places: half of one, mm. */
const POINT_MM = 0.3;

async function print(page: Page, html: string, path: string): Promise<number> {
  await page.setContent(html);
  await page.emulateMedia({ media: 'print' });
  await page.pdf({ path, preferCSSPageSize: true, printBackground: true });
  return page.locator('.page').count();
}

/** Everything on the pages whose content is larger than it is itself, but for what CSS cuts on purpose. */
const overflowing = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('.body, td, th, .body h2, .gig p, .labels, .label > div, footer')]
      .filter((box) => box.scrollHeight > box.clientHeight + 1 || box.scrollWidth > box.clientWidth + 1)
      .map((box) => `${box.closest('.page')?.getAttribute('data-page')}: ${box.textContent?.slice(0, 40)}`),
  );

const LAYOUTS: readonly (readonly [name: string, layout: () => Layout, paper: Paper])[] = [
  ['the demo', demoLayout, 'a4'],
  ['forty modules', fortyModules, 'letter'],
  ['hostile names', hostileNames, 'a4'],
];

for (const [name, make, paper] of LAYOUTS) {
  test(`the sheet of ${name} comes out of the printer whole`, async ({ page }, testInfo) => {
    const layout = make();
    const [take] = layout.takes;
    if (!take) throw new Error('no take');
    const file = testInfo.outputPath('sheet.pdf');
    const pages = await print(page, benchSheet(layout, take.id, { paper }), file);
    expect(pages).toBeGreaterThan(5);
    expect(await overflowing(page)).toEqual([]);

    const { texts, sizes } = readPdf(file);
    expect(sizes).toHaveLength(pages);
    const [short, long] = SIZES[paper];
    for (const { widthMm, heightMm } of sizes) {
      expect(Math.abs(Math.min(widthMm, heightMm) - short)).toBeLessThan(POINT_MM);
      expect(Math.abs(Math.max(widthMm, heightMm) - long)).toBeLessThan(POINT_MM);
    }
    for (const [i, text] of texts.entries()) expect(text).toContain(`page${i + 1}of${pages}`);

    // Characters that no font here has come out as whatever stands for them: names are found by what they end in.
    const printed = texts.join('');
    const { places, wiring } = deriveTake(layout.kit, take);
    const tail = (each: string): string => bare(each.split(' ').at(-1) ?? '');
    for (const thing of [...places.modules, ...wiring.ribbons]) expect(printed).toContain(tail(thing.name));
  });
}

test('the sheet can be read without eyes and has no script', async ({ page }) => {
  const html = benchSheet(hostileNames(), '', { paper: 'a4' });
  expect(html).not.toContain('<script');
  await page.setContent(html);
  expect(await barriersOn(page)).toEqual([]);
});

/** The frame of the preview lets no script in, the test runner's own neither, which it tells on the console. */
const REFUSED = /^console error: Blocked script execution in 'about:srcdoc'/;

test.afterEach(({ trouble }) => {
  trouble.splice(0, trouble.length, ...trouble.filter((each) => !REFUSED.test(each)));
});

const desk = (page: Page) => page.getByRole('dialog', { name: /^Bench sheet of/ });

async function textOf(download: Download): Promise<string> {
  return readFileSync(await download.path(), 'utf8');
}

test('pages and paper are chosen, looked at, printed and saved, by key', async ({ page }) => {
  await openApp(page);
  await page.keyboard.press('e');
  await expect(desk(page).getByRole('button', { name: 'Print…' })).toBeFocused();
  const sheet = page.frameLocator('.bench-sheet iframe');
  await expect(sheet.getByRole('heading', { name: 'Rear view' })).toBeVisible();
  expect(await barriersOn(page)).toEqual([]);

  const all = await sheet.locator('.page').count();
  await desk(page)
    .getByRole('checkbox', { name: /^Front view/ })
    .press('Space');
  await expect(sheet.locator('.page')).toHaveCount(all - 1);
  await desk(page).getByRole('radio', { name: 'Letter' }).check();
  await expect.poll(() => sheet.locator('style').textContent()).toContain('size: 215.9mm');

  await page.evaluate(() => {
    const frame = document.querySelector('iframe')?.contentWindow;
    if (frame) frame.print = () => document.body.setAttribute('data-printed', '');
  });
  await desk(page).getByRole('button', { name: 'Print…' }).press('Enter');
  await expect(page.locator('body')).toHaveAttribute('data-printed', '');

  const saved = page.waitForEvent('download');
  await desk(page).getByRole('button', { name: 'Save as HTML' }).press('Enter');
  const file = await saved;
  expect(file.suggestedFilename()).toBe('Shoreline kit Three jetties.bench-sheet.html');
  expect(await textOf(file)).toMatch(/^<!doctype html>/);

  const revision = await page.locator('.revision-line b').textContent();
  await expect(sheet.locator('.code b').first()).toHaveText(revision ?? '');
  await page.keyboard.press('Escape');
  await expect(desk(page)).toHaveCount(0);
});

test('drawings go out as SVG with text and layers, and as a picture of a stated size', async ({ page }) => {
  await openApp(page);
  await page.getByRole('button', { name: 'Bench sheet…' }).click();
  const svg = page.waitForEvent('download');
  await desk(page).getByRole('button', { name: 'Rear view as SVG' }).click();
  const text = await textOf(await svg);
  expect(text).toContain('<g id="rear-links"><title>links</title>');
  expect(text).toContain('>Harbour</text>');

  const png = page.waitForEvent('download');
  await desk(page).getByRole('button', { name: 'Rear view as PNG' }).click();
  const bytes = readFileSync(await (await png).path());
  await expect(desk(page).getByRole('status')).toHaveText('Saved at 1 : 2 with 300 dots to the inch.');
  // Width and height stand at bytes 16 and 20 (PNG, W3C, section 11.2.1).
  const widthMm = Number(/width="([\d.]+)mm"/.exec(text)?.[1]);
  expect(bytes.readUInt32BE(16)).toBeGreaterThan((widthMm / 25.4) * 300 - 4);
  expect(bytes.readUInt32BE(16)).toBeLessThan((widthMm / 25.4) * 300 + 4);
});

test('a figure that no printer is off by is refused', async ({ page }) => {
  await openApp(page);
  await page.keyboard.press('e');
  const bar = desk(page).getByLabel('The printed bar of 100 mm measures');
  await bar.fill('9');
  await expect(bar).toHaveAccessibleDescription('It takes 80 to 120 mm.');
  await bar.fill('98,5');
  await expect(bar).toHaveAccessibleDescription(/^Print at 100 %/);
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  test('it opens, and nothing of it is out of reach', async ({ page }) => {
    await openApp(page);
    await page.getByRole('button', { name: 'Bench sheet…' }).tap();
    await expect(
      page.frameLocator('.bench-sheet iframe').getByRole('heading', { name: 'Front view' }),
    ).toBeAttached();
    const wide = await desk(page)
      .locator('.body')
      .evaluate((body) => body.scrollWidth - body.clientWidth);
    expect(wide).toBe(0);
    expect(await barriersOn(page)).toEqual([]);
    await desk(page).getByRole('button', { name: 'Close' }).tap();
    await expect(desk(page)).toHaveCount(0);
  });
});
