import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright';
import { openApp } from '../e2e/app-page.ts';
import { findBrowser, launchArguments } from '../e2e/find-browser.ts';
import { hubLayout } from '../e2e/support/hub-layout.ts';
import { layingLayout, layingWay } from '../e2e/support/laying-layout.ts';
import { openLayoutFile, withPlainPicker } from '../e2e/support/open-layout.ts';
import { type MainThread, mainThreadOf } from './main-thread.ts';
import { builtApp, serveFolder } from './serve.ts';

// Main-thread time of a move with live checks, of a module and of a ribbon that is being laid, beside the frozen page of plain canvases in the same browser
// (npm run build && npm run bench:app). Prints ratios; timings never fail anything.

const BOUND = fileURLToPath(new URL('../e2e/bound/', import.meta.url));
const SIZES = process.argv.slice(2).map(Number);
const ROUNDS = 5;
const MOVES = 80;
const MOVE_MS = 24;

const sleep = (ms: number) => new Promise((done) => setTimeout(done, ms));

interface Moves {
  readonly x: number;
  readonly y: number;
  /** From one move to the next, px. */
  readonly stepX?: number;
}

async function traceMoves(browser: Browser, page: Page, { x, y, stepX = 12 }: Moves): Promise<MainThread> {
  // Straight to the browser: the test runner would have the page run scripts of its own before each move.
  const wire = await page.context().newCDPSession(page);
  await sleep(300);
  await browser.startTracing(page, { categories: ['toplevel', 'devtools.timeline', 'blink.user_timing'] });
  for (let i = 0; i < MOVES; i++) {
    const next = sleep(MOVE_MS);
    const at = { x: x + stepX * ((i % 5) - 2), y };
    await wire.send('Input.dispatchMouseEvent', { type: 'mouseMoved', button: 'left', buttons: 1, ...at });
    await next;
  }
  await sleep(200);
  return mainThreadOf((await browser.stopTracing()).toString());
}

async function newPage(browser: Browser): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    reducedMotion: 'reduce',
  });
  return context.newPage();
}

async function boundMoves(browser: Browser, origin: string): Promise<MainThread> {
  const page = await newPage(browser);
  await page.goto(origin);
  const moves = await traceMoves(browser, page, { x: 400, y: 200 });
  await page.context().close();
  return moves;
}

async function appMoves(browser: Browser, origin: string, modules: number): Promise<MainThread> {
  const page = await newPage(browser);
  await withPlainPicker(page);
  await openApp(page, `${origin}/`);
  await openLayoutFile(page, hubLayout(modules));
  const box = await page.getByRole('option', { name: /^Hub, / }).boundingBox();
  if (!box) throw new Error('the hub is not shown');
  const x = box.x + box.width / 2;
  const y = box.y + box.height * 0.92;
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 30, y);
  const moves = await traceMoves(browser, page, { x: x + 40, y });
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await page.context().close();
  return moves;
}

/** A ribbon that is drawn on and back again over its last headers: each move lays it on another one. */
async function layingMoves(browser: Browser, origin: string, modules: number): Promise<MainThread> {
  const page = await newPage(browser);
  await withPlainPicker(page);
  await openApp(page, `${origin}/`);
  await openLayoutFile(page, layingLayout(modules));
  const [first, last] = [/^Free 1, /, /^Free 7, /].map((name) => page.getByRole('option', { name }));
  const [from, to] = [await first?.boundingBox(), await last?.boundingBox()];
  if (!from || !to) throw new Error('the headers are not shown');
  const { y, fromX, toX, stepX } = layingWay(from, to);
  await page.mouse.move(fromX, y);
  await page.mouse.down();
  await page.mouse.move(fromX + stepX, y);
  await page.mouse.move(toX, y);
  await page.locator('.hint-card', { hasText: '7 of 7 land' }).waitFor();
  const moves = await traceMoves(browser, page, { x: toX - 2 * stepX, y, stepX });
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await page.context().close();
  return moves;
}

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

const [app, bound] = [await serveFolder(builtApp), await serveFolder(BOUND)];
const browser = await chromium.launch({ executablePath: findBrowser(), args: launchArguments() });
const sizes = SIZES.length > 0 ? SIZES : [60, 500, 1000];
const plain: MainThread[] = [];
const measured = sizes.flatMap((size) => [
  {
    what: `${size} modules: a module`,
    moves: () => appMoves(browser, app.origin, size),
    runs: [] as MainThread[],
  },
  {
    what: `${size} modules: laying`,
    moves: () => layingMoves(browser, app.origin, size),
    runs: [] as MainThread[],
  },
]);
for (let round = 0; round < ROUNDS; round++) {
  plain.push(await boundMoves(browser, bound.origin));
  for (const { moves, runs } of measured) runs.push(await moves());
}
await browser.close();
await app.close();
await bound.close();

const row = (what: string, runs: readonly MainThread[]) => {
  const perMove = (of: (run: MainThread) => number) => (median(runs.map(of)) / MOVES).toFixed(2);
  const times = (of: (run: MainThread) => number) =>
    median(runs.map((run, i) => of(run) / of(plain[i] as MainThread))).toFixed(2);
  return {
    drag: what,
    'ms per move': perMove(({ totalMs }) => totalMs),
    'times the bound': times(({ totalMs }) => totalMs),
    'of it on the processor': perMove(({ cpuMs }) => cpuMs),
    'times the bound there': times(({ cpuMs }) => cpuMs),
    'longest task ms': median(runs.map(({ longestMs }) => longestMs)).toFixed(1),
    'longest there': Math.max(...runs.map(({ longestCpuMs }) => longestCpuMs)).toFixed(1),
  };
};
console.table([
  row('plain canvases (the bound)', plain),
  ...measured.map(({ what, runs }) => row(what, runs)),
]);
