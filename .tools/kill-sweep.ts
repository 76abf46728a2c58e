import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright';
import { findBrowser, launchArguments } from '../e2e/find-browser.ts';
import { builtApp, serveFolder } from './serve.ts';

/*
 * Ends pages and browsers without warning while somebody edits, and looks at what is there afterwards
 * (node --import tsx .tools/kill-sweep.ts 100 SEED). What was done in the last 300 ms before the end may be lost.
 */

const [times = '100', seedText = String(Date.now() % 2 ** 31)] = process.argv.slice(2);
const MAY_BE_LOST_MS = 300;
const executablePath = findBrowser();

let seed = Number(seedText);
/** 0 to 1, the same row for the same seed. */
function random(): number {
  seed = (seed * 1_103_515_245 + 12_345) % 2 ** 31;
  return seed / 2 ** 31;
}
const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;

interface Committed {
  readonly state: string;
  readonly at: number;
}

/** Title, and where every module stands. */
const stateOf = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const title = document.querySelector<HTMLInputElement>('.top-bar .title')?.value;
    const modules = [...document.querySelectorAll('.by-list [role=option]')].map(
      (one) => one.getAttribute('aria-label') ?? one.textContent,
    );
    return JSON.stringify([title, ...modules]);
  });

async function opened(context: BrowserContext, address: string): Promise<Page> {
  const page = await context.newPage();
  await page.goto(address);
  await page.locator('.by-list[data-held]').waitFor();
  return page;
}

/** One edit by hand; when it was committed. What is on the screen then is known without a look, which would give time. */
async function edit(page: Page, number: number, before: string): Promise<Committed> {
  const title = page.locator('.top-bar .title');
  await title.fill(`Edit ${number}`);
  await title.press('Enter');
  const at = performance.now();
  const [, ...modules] = JSON.parse(before) as unknown[];
  return { state: JSON.stringify([`Edit ${number}`, ...modules]), at };
}

/** How pages end: the whole program by force, the page by force, the page closed unasked. */
const ENDS = ['browser', 'renderer', 'page'] as const;

interface Outcome {
  readonly end: (typeof ENDS)[number];
  /** Edits that were not there. */
  readonly lost: number;
  /** Age of the last edit at the end, ms. */
  readonly age: number;
  readonly isBad: boolean;
}

const folder = mkdtempSync(join(tmpdir(), 'kill-sweep-'));
const app = join(folder, 'app');
cpSync(builtApp, app, { recursive: true });
const server = await serveFolder(app);
const address = `${server.origin}/`;
const launch = () =>
  chromium.launchPersistentContext(join(folder, 'profile'), {
    executablePath,
    args: launchArguments(),
  });

/** The process to be ended, asked for before, so that the end comes in the moment that is meant. */
async function processOf(context: BrowserContext): Promise<number> {
  const session = await context.browser()?.newBrowserCDPSession();
  const { processInfo } = (await session?.send('SystemInfo.getProcessInfo')) ?? { processInfo: [] };
  const main = processInfo.find(({ type }) => type === 'browser');
  if (!main) throw new Error('the browser names no process');
  return main.id;
}

/** By force, as when a machine goes dark. */
async function killBrowser(context: BrowserContext, id: number): Promise<void> {
  const gone = new Promise((resolve) => context.once('close', resolve));
  process.kill(id, 'SIGKILL');
  await gone;
}

console.log(
  `seed ${seedText}: node --import tsx .tools/kill-sweep.ts ${times} ${seedText} does the same again`,
);
const outcomes: Outcome[] = [];
let context = await launch();
let browserProcess = await processOf(context);
let page = await opened(context, address);
let count = 0;
for (let i = 0; i < Number(times); i++) {
  const end = pick(ENDS);
  const history: Committed[] = [{ state: await stateOf(page), at: -Infinity }];
  const edits = 1 + Math.floor(random() * 6);
  for (let k = 0; k < edits; k++) {
    history.push(await edit(page, ++count, history.at(-1)?.state ?? '[]'));
    if (k < edits - 1) await page.waitForTimeout(random() * 500);
  }
  await page.waitForTimeout(random() < 0.5 ? random() * 30 : random() * 600);
  const before = performance.now();
  if (end === 'browser') {
    await killBrowser(context, browserProcess);
    context = await launch();
    browserProcess = await processOf(context);
  } else if (end === 'renderer') {
    await page.goto('chrome://crash').catch(() => {});
    await page.close();
  } else {
    await page.close();
  }
  page = await opened(context, address);
  await page.waitForFunction(() => !document.querySelector('.kept-line.opening'));
  const state = await stateOf(page);
  const there = history.findLastIndex((one) => one.state === state);
  const lost = history.slice(there + 1);
  const oldest = Math.max(0, ...lost.map(({ at }) => before - at));
  const isBad = there < 0 || oldest > MAY_BE_LOST_MS;
  outcomes.push({ end, lost: lost.length, age: before - (history.at(-1)?.at ?? 0), isBad });
  if (isBad)
    console.log(
      `LOST: kill ${i}, ${end}, ${lost.length} edits, the oldest ${Math.round(oldest)} ms old; there is ${state.slice(0, 80)}`,
    );
}
await context.close();
await server.close();
rmSync(folder, { recursive: true, force: true });

const BANDS = [20, 50, 100, 200, 300, 600, Number.POSITIVE_INFINITY];
for (const end of ENDS) {
  const of = outcomes.filter((one) => one.end === end);
  console.log(`${end}: ${of.length} times, nothing lost ${of.filter(({ lost }) => lost === 0).length} times`);
  BANDS.forEach((most, b) => {
    const least = BANDS[b - 1] ?? 0;
    const band = of.filter(({ age }) => age >= least && age < most);
    if (band.length > 0)
      console.log(
        `  last edit ${least} to ${most} ms before: ${band.length}, of which ${band.filter(({ lost }) => lost > 0).length} had lost it`,
      );
  });
}
const bad = outcomes.filter(({ isBad }) => isBad).length;
console.log(`${outcomes.length} kills, ${bad} lost more than the last ${MAY_BE_LOST_MS} ms`);
process.exitCode = bad > 0 ? 1 : 0;
