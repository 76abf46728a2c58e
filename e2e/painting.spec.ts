import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright/test';
import { serveFolder } from '../.tools/serve.ts';
import { openApp } from './app-page.ts';
import { expect, test } from './fixtures.ts';
import { beginLaying } from './support/begin-laying.ts';
import { hubLayout } from './support/hub-layout.ts';
import { openLayoutFile, withPlainPicker } from './support/open-layout.ts';
import { countPainting, type Painting, readCount, startCounting } from './support/painting.ts';

const BOUND = fileURLToPath(new URL('./bound/', import.meta.url));
const MOVES = 12;

/** Waits until the page has painted: two frames. */
const painted = (page: Page): Promise<void> =>
  page.evaluate(
    () => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))),
  );

/**
 * What each of a row of movements paints, on average.
 * @param resting - layers that stand still meanwhile: each is copied once, after it was drawn last
 */
async function paintingOfMoves(
  page: Page,
  x: number,
  y: number,
  { stepX = 6, resting = 0 }: { readonly stepX?: number; readonly resting?: number } = {},
): Promise<Painting> {
  await expect(page.locator('.print:visible')).toHaveCount(resting);
  await painted(page);
  await startCounting(page);
  for (let i = 0; i < MOVES; i++) {
    await page.mouse.move(x + (i % 2 === 0 ? stepX : 0), y);
    await painted(page);
  }
  const { calls, bitmapPixels, byName } = await readCount(page);
  return { calls: calls / MOVES, bitmapPixels: bitmapPixels / MOVES, byName };
}

async function paintingOfDrag(page: Page, modules: number, hasHeat = false): Promise<Painting> {
  await openApp(page);
  await openLayoutFile(page, hubLayout(modules));
  if (hasHeat) {
    await page.keyboard.press('Shift+V');
    await page.getByRole('region', { name: 'Heat map' }).waitFor();
  }
  const box = await page.getByRole('option', { name: /^Hub, / }).boundingBox();
  if (!box) throw new Error('the hub is not shown');
  const x = box.x + box.width / 2;
  const y = box.y + box.height * 0.92;
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 30, y);
  const painting = await paintingOfMoves(page, x + 24, y, { resting: 2 });
  await page.keyboard.press('Escape');
  await page.mouse.up();
  return painting;
}

/*
 * Counts are the same on every machine, so they may fail the gate. The bound paints one module with four ribbons
 * on plain canvases; the app may paint a quarter more, and no more in a case of a thousand modules than in one
 * of fifty.
 */
test('a drag paints hardly more than plain canvases would, however large the case', async ({
  page,
  context,
  trouble,
}) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await page.setViewportSize({ width: 1440, height: 900 });
  await countPainting(page);
  await withPlainPicker(page);
  const small = await paintingOfDrag(page, 50);
  const hot = await paintingOfDrag(page, 50, true);
  const large = await paintingOfDrag(page, 1000);
  await page.close();

  const server = await serveFolder(BOUND);
  const plain = await context.newPage();
  await plain.setViewportSize({ width: 1440, height: 900 });
  await countPainting(plain);
  await plain.goto(server.origin);
  const bound = await paintingOfMoves(plain, 400, 200);
  await plain.close();
  await server.close();
  // The bound's page is served from another origin than the app, on purpose.
  trouble.splice(0);

  console.log(
    `painting calls per move: bound ${bound.calls}, 50 modules ${small.calls}, 1,000 modules ${large.calls}`,
  );
  expect(bound.calls).toBeGreaterThan(40);
  expect(large.calls).toBe(small.calls);
  expect(hot.calls).toBe(small.calls);
  expect(small.calls).toBeLessThanOrEqual(1.25 * bound.calls);
  expect(small.bitmapPixels).toBe(bound.bitmapPixels);
});

async function paintingOfLaying(page: Page, modules: number): Promise<Painting> {
  const { y, toX, stepX } = await beginLaying(page, modules);
  // To and fro between the last header and the one before it: the ribbon is another one with each move.
  const painting = await paintingOfMoves(page, toX, y, { stepX: -stepX, resting: 2 });
  await page.keyboard.press('Escape');
  await page.mouse.up();
  return painting;
}

test('a ribbon that is laid over seven headers paints the same in a small case and in a large one', async ({
  page,
}) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await page.setViewportSize({ width: 1440, height: 900 });
  await countPainting(page);
  await withPlainPicker(page);
  const small = await paintingOfLaying(page, 50);
  const large = await paintingOfLaying(page, 1000);
  console.log(`painting calls per move of a laying: 50 modules ${small.calls}, 1,000 modules ${large.calls}`);
  expect(small.calls).toBeGreaterThan(20);
  expect(large.calls).toBe(small.calls);
  expect(large.bitmapPixels).toBe(0);
});
