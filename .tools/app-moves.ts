import type { Browser, Page } from 'playwright';
import { openApp } from '../e2e/app-page.ts';
import { beginLaying } from '../e2e/support/begin-laying.ts';
import { hubLayout } from '../e2e/support/hub-layout.ts';
import { openLayoutFile, withPlainPicker } from '../e2e/support/open-layout.ts';
import { type MainThread, mainThreadOf } from './main-thread.ts';

const MOVES = 80;
const MOVE_MS = 24;

export const sleep = (ms: number) => new Promise((done) => setTimeout(done, ms));

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

export async function newPage(browser: Browser): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    reducedMotion: 'reduce',
  });
  return context.newPage();
}

/** The frozen page of plain canvases. */
export async function boundMoves(browser: Browser, origin: string): Promise<MainThread> {
  const page = await newPage(browser);
  await page.goto(origin);
  const moves = await traceMoves(browser, page, { x: 400, y: 200 });
  await page.context().close();
  return moves;
}

/** A module in the hand that three ribbons and a lead hang on. */
export async function appMoves(browser: Browser, origin: string, modules: number): Promise<MainThread> {
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
export async function layingMoves(browser: Browser, origin: string, modules: number): Promise<MainThread> {
  const page = await newPage(browser);
  await withPlainPicker(page);
  const { y, toX, stepX } = await beginLaying(page, modules, `${origin}/`);
  const moves = await traceMoves(browser, page, { x: toX - 2 * stepX, y, stepX });
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await page.context().close();
  return moves;
}
