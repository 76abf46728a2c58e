import type { Browser } from 'playwright';
import { openApp } from '../e2e/app-page.ts';
import { openLayoutFile, withPlainPicker } from '../e2e/support/open-layout.ts';
import { emptyLayout } from '../src/layout/starter.ts';
import { bigLayout } from '../tests/support/big-take.ts';
import { newPage, sleep } from './app-moves.ts';
import { type MainThread, mainThreadOf } from './main-thread.ts';

const CATEGORIES = ['toplevel', 'devtools.timeline', 'blink.user_timing'];

/** Long enough for everything to come to rest, ms. */
const REST_MS = 1500;

/** As many modules painted by hand, at a click. */
export async function boundMount(browser: Browser, origin: string, modules: number): Promise<MainThread> {
  const page = await newPage(browser);
  await page.goto(`${origin}/mount.html?modules=${modules}`);
  await sleep(500);
  await browser.startTracing(page, { categories: CATEGORIES });
  await page.mouse.click(700, 400);
  await sleep(REST_MS);
  const mount = mainThreadOf((await browser.stopTracing()).toString());
  await page.context().close();
  return mount;
}

/** A take with so many modules shown for the first time, after an empty one: derived, checked and drawn. */
export async function appMount(browser: Browser, origin: string, modules: number): Promise<MainThread> {
  const page = await newPage(browser);
  await withPlainPicker(page);
  await openApp(page, `${origin}/`);
  const { kit, takes } = bigLayout(modules);
  const [empty] = emptyLayout().takes;
  await openLayoutFile(page, {
    ...emptyLayout(),
    title: `${modules} modules`,
    kit,
    takes: [{ ...empty, id: 'empty', name: 'Empty' } as (typeof takes)[number], ...takes],
  });
  await sleep(1000);
  await browser.startTracing(page, { categories: CATEGORIES });
  await page.keyboard.press(']');
  await page
    .getByRole('option')
    .nth(modules - 1)
    .waitFor({ state: 'attached' });
  await sleep(REST_MS);
  const mount = mainThreadOf((await browser.stopTracing()).toString());
  await page.context().close();
  return mount;
}

export interface FirstLoad extends MainThread {
  /** From asking for the page to the first picture in it, and to when it can be taken hold of, ms by the clock. */
  readonly pictureMs: number;
  readonly heldMs: number;
}

/** The demo in a browser that has never seen the program; the server is this very machine. */
export async function firstLoad(browser: Browser, origin: string): Promise<FirstLoad> {
  const page = await newPage(browser);
  await browser.startTracing(page, { categories: CATEGORIES });
  await openApp(page, `${origin}/`);
  const heldMs = await page.evaluate(() => performance.now());
  const pictureMs = await page.evaluate(
    () => performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? Number.NaN,
  );
  await sleep(REST_MS);
  const loaded = mainThreadOf((await browser.stopTracing()).toString());
  await page.context().close();
  return { ...loaded, pictureMs, heldMs };
}
