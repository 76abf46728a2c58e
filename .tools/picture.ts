import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright';
import { findBrowser, launchArguments } from '../e2e/find-browser.ts';
import { type GuideShot, guideShots, SHOT_SIZE } from './guide-shots.ts';
import { builtApp, serveFolder } from './serve.ts';

// Takes the README's picture and the guide's from the built app (npm run build && npm run picture && npm run build).

const README = fileURLToPath(new URL('../.pictures/rear.png', import.meta.url));
const GUIDE = fileURLToPath(new URL('../app/help/pictures/', import.meta.url));

/** Small letters stay sharp; the whole guide is downloaded once, for offline. */
const QUALITY = 0.45;

const server = await serveFolder(builtApp);
const browser = await chromium.launch({ executablePath: findBrowser(), args: launchArguments() });

async function opened(colorScheme: 'light' | 'dark', width: number, height: number): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme,
    reducedMotion: 'reduce',
    serviceWorkers: 'block',
  });
  const page = await context.newPage();
  await page.goto(`${server.origin}/`);
  await page.locator('.by-list[data-held]').waitFor();
  return page;
}

async function forReadme(): Promise<void> {
  const page = await opened('light', 1440, 900);
  await page
    .getByRole('tab', { name: 'One long jetty' })
    .or(page.getByRole('button', { name: 'One long jetty' }))
    .first()
    .click();
  // Remedies are looked for one note after the other; the first three stand in the picture.
  for (const i of [0, 1, 2]) await page.locator('.note').nth(i).locator('.mend').first().waitFor();
  await page.screenshot({ path: README });
  await page.context().close();
}

/** A PNG as WebP, which is half as large: by the browser's own encoder. */
async function asWebp(by: Browser, png: Buffer): Promise<Buffer> {
  const page = await by.newPage();
  const coded = await page.evaluate(
    async ([data, quality]) => {
      const picture = new Image();
      picture.src = `data:image/png;base64,${data}`;
      await picture.decode();
      const canvas = document.createElement('canvas');
      [canvas.width, canvas.height] = [picture.width, picture.height];
      canvas.getContext('2d')?.drawImage(picture, 0, 0);
      return canvas.toDataURL('image/webp', quality).split(',')[1] ?? '';
    },
    [png.toString('base64'), QUALITY] as const,
  );
  await page.close();
  return Buffer.from(coded, 'base64');
}

async function forGuide({ name, at: [x, y], show }: GuideShot, shade: 'light' | 'dark'): Promise<number> {
  const page = await opened(shade, 1200, 760);
  await show(page);
  const png = await page.screenshot({ clip: { x, y, ...SHOT_SIZE } });
  const webp = await asWebp(browser, png);
  writeFileSync(`${GUIDE}${name}-${shade}.webp`, webp);
  await page.context().close();
  return webp.length;
}

mkdirSync(GUIDE, { recursive: true });
await forReadme();
let bytes = 0;
for (const shot of guideShots)
  for (const shade of ['light', 'dark'] as const) bytes += await forGuide(shot, shade);
console.log(`${guideShots.length} steps of the guide, ${Math.round(bytes / 1000)} kB`);
await browser.close();
await server.close();
