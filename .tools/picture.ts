import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright';
import { findBrowser, launchArguments } from '../e2e/find-browser.ts';
import { builtApp, serveFolder } from './serve.ts';

// Takes the README's picture from the built app (npm run build && npm run picture).

const PICTURE = fileURLToPath(new URL('../.pictures/rear.png', import.meta.url));

const server = await serveFolder(builtApp);
const browser = await chromium.launch({ executablePath: findBrowser(), args: launchArguments() });
const page = await browser.newPage({
  viewport: { width: 1440, height: 900 },
  colorScheme: 'light',
  reducedMotion: 'reduce',
});
await page.goto(`${server.origin}/`);
await page.locator('.by-list[data-held]').waitFor();
await page
  .getByRole('tab', { name: 'One long jetty' })
  .or(page.getByRole('button', { name: 'One long jetty' }))
  .first()
  .click();
// Remedies are looked for one note after the other; the first three stand in the picture.
for (const i of [0, 1, 2]) await page.locator('.note').nth(i).locator('.mend').first().waitFor();
await page.screenshot({ path: PICTURE });
await browser.close();
await server.close();
