import { cpSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page, type TestInfo } from 'playwright/test';
import { builtApp, serveFolder } from '../.tools/serve.ts';
import { openApp } from './app-page.ts';
import { findBrowser, launchArguments } from './find-browser.ts';
import { expect, test } from './fixtures.ts';
import { watch } from './watch.ts';

const title = (page: Page) => page.getByLabel('Title of the layout');
const state = (page: Page) => page.locator('.kept-line > span');

/** Looking for a new version fails where there is no server, and so does a deploy with a file missing. */
const EXPECTED = /ERR_CONNECTION_REFUSED|service-worker\.js|icon-192\.png/;

/** A browser with a profile that outlives it, and a site in a sub-folder that can be changed and taken away. */
async function stand(testInfo: TestInfo, trouble: string[]) {
  const site = testInfo.outputPath('site');
  const folder = join(site, 'some', 'folder');
  cpSync(builtApp, folder, { recursive: true });
  const server = await serveFolder(site);
  const { origin } = server;
  const start = async (): Promise<BrowserContext> => {
    const context = await chromium.launchPersistentContext(testInfo.outputPath('profile'), {
      executablePath: findBrowser(),
      args: launchArguments(),
      serviceWorkers: 'allow',
    });
    const seen = watch(context, origin);
    context.on('close', () => trouble.push(...seen.filter((line) => !EXPECTED.test(line))));
    return context;
  };
  return {
    address: `${origin}/some/folder/`,
    folder,
    start,
    stopServer: () => server.close(),
  };
}

/** Waits until everything is kept and a worker answers. */
const workerInCharge = (page: Page): Promise<unknown> =>
  page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated');

async function rename(page: Page, text: string): Promise<void> {
  await title(page).fill(text);
  await title(page).press('Enter');
}

/** Another build in place of the one served: the same program under another name and hash. */
function deploy(folder: string, name: string): void {
  const page = join(folder, 'index.html');
  writeFileSync(page, readFileSync(page, 'utf8').replace(/<title>.*<\/title>/, `<title>${name}</title>`));
  const worker = join(folder, 'service-worker.js');
  const hash = name.replace(/\W/g, '');
  writeFileSync(worker, readFileSync(worker, 'utf8').replace(/"hash":"\w+"/, `"hash":"${hash}"`));
}

const lookForUpdate = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    await registration?.update().catch(() => {});
  });

const cacheNames = (page: Page): Promise<string[]> => page.evaluate(() => caches.keys());

test('with the server down and the browser started cold, program and layout are there, parts loaded late too', async ({
  trouble,
}, testInfo) => {
  const { address, start, stopServer } = await stand(testInfo, trouble);
  const first = await start();
  const page = await first.newPage();
  await openApp(page, address);
  await rename(page, 'Kept through the night');
  await expect(state(page)).toHaveText('Saved on this device');
  await workerInCharge(page);
  await first.close();
  await stopServer();

  const second = await start();
  const again = await second.newPage();
  await again.goto(address);
  await expect(title(again)).toHaveValue('Kept through the night');
  await again.locator('.by-list[data-held]').waitFor();
  await again.getByRole('button', { name: 'New kind of module…' }).click();
  await expect(again.getByRole('dialog', { name: 'New kind of module' })).toBeVisible();
  await again.keyboard.press('Escape');
  await again.getByRole('button', { name: 'My layouts' }).click();
  await expect(again.getByRole('button', { name: 'Open Kept through the night' })).toBeVisible();
  await again.keyboard.press('Escape');
  await again.keyboard.press('F1');
  await again.getByRole('button', { name: 'From a box of modules' }).click();
  const picture = again.getByRole('dialog').getByRole('img').first();
  await expect.poll(() => picture.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBe(680);
  await second.close();
});

test('a new version asks, saves what is under way and loads once; one with a file missing never asks', async ({
  trouble,
}, testInfo) => {
  const { address, folder, start, stopServer } = await stand(testInfo, trouble);
  const context = await start();
  const page = await context.newPage();
  let loads = 0;
  page.on('load', () => loads++);
  await page.goto(address);
  await workerInCharge(page);
  const [before] = await cacheNames(page);
  await page.locator('.by-list[data-held]').waitFor();
  await rename(page, 'In the middle of it');

  cpSync(folder, `${folder}-whole`, { recursive: true });
  deploy(folder, 'Broken deploy');
  rmSync(join(folder, 'icons', 'icon-192.png'));
  await lookForUpdate(page);
  await page.waitForTimeout(800);
  await expect.poll(() => cacheNames(page), 'what was fetched in vain is cleared away').toEqual([before]);
  await expect(page.locator('.update-note')).toHaveCount(0);

  cpSync(`${folder}-whole`, folder, { recursive: true });
  deploy(folder, 'Second version');
  await lookForUpdate(page);
  await expect(page.getByText('A new version is ready.')).toBeVisible();
  await expect(page).toHaveTitle('Ribbonwright');
  const other = await context.newPage();
  await other.goto(address);
  await expect(other).toHaveTitle('Ribbonwright');
  await expect(other.getByText('A new version is ready.')).toBeVisible();
  await rename(page, 'Typed a moment ago');
  loads = 0;
  await page.getByRole('button', { name: 'Load it' }).click();
  await expect(page).toHaveTitle('Second version');
  await expect(title(page)).toHaveValue('Typed a moment ago');
  await expect(other).toHaveTitle('Second version');
  await expect(page.locator('.update-note')).toHaveCount(0);
  await page.waitForTimeout(4500);
  expect(loads).toBe(1);
  const after = await cacheNames(page);
  expect(after).toHaveLength(1);
  expect(after).not.toEqual([before]);
  await context.close();
  await stopServer();
});

test('the browser finds nothing amiss with installing it', async ({ trouble }, testInfo) => {
  const { address, start, stopServer } = await stand(testInfo, trouble);
  const context = await start();
  const page = await context.newPage();
  await page.goto(address);
  await workerInCharge(page);
  const wire = await context.newCDPSession(page);
  const { errors, data } = await wire.send('Page.getAppManifest');
  expect(errors).toEqual([]);
  expect(JSON.parse(data ?? '')).toMatchObject({
    start_url: './',
    file_handlers: [{ accept: { 'application/json': ['.json'] } }],
  });
  const { installabilityErrors } = await wire.send('Page.getInstallabilityErrors');
  expect(installabilityErrors).toEqual([]);
  await context.close();
  await stopServer();
});
