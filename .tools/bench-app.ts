import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright';
import { findBrowser, launchArguments } from '../e2e/find-browser.ts';
import { appMount, boundMount, type FirstLoad, firstLoad } from './app-mounts.ts';
import { appMoves, boundMoves, layingMoves } from './app-moves.ts';
import type { MainThread } from './main-thread.ts';
import { builtApp, serveFolder } from './serve.ts';

// What the main thread of the built app has to do (npm run build && npm run bench:app): for a move with live checks, of
// a module and of a ribbon that is being laid, for a take that is shown, and for the first load; moves and mounts beside
// frozen pages of plain canvases in the same browser run. Prints ratios; timings never fail anything.

const BOUND = fileURLToPath(new URL('../e2e/bound/', import.meta.url));
const SIZES = process.argv.slice(2).map(Number);
const ROUNDS = 5;

/** The value below which such a share of all lies. */
function quantile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
}

const median = (values: readonly number[]): number => quantile(values, 0.5);

const [app, bound] = [await serveFolder(builtApp), await serveFolder(BOUND)];
const browser = await chromium.launch({ executablePath: findBrowser(), args: launchArguments() });
const sizes = SIZES.length > 0 ? SIZES : [60, 200, 1000];

interface Measured {
  readonly what: string;
  readonly run: () => Promise<MainThread>;
  readonly runs: MainThread[];
  /** What it is measured against, of the same round. */
  readonly against?: Measured;
}

const measured = (what: string, run: () => Promise<MainThread>, against?: Measured): Measured => ({
  what,
  run,
  runs: [],
  ...(against && { against }),
});

const plain = measured('plain canvases (the bound)', () => boundMoves(browser, bound.origin));
const moves = [
  plain,
  ...sizes.flatMap((size) => [
    measured(`${size} modules: a module`, () => appMoves(browser, app.origin, size), plain),
    measured(`${size} modules: laying`, () => layingMoves(browser, app.origin, size), plain),
  ]),
];
const mounts = sizes.flatMap((size) => {
  const painted = measured(`${size} modules painted plainly`, () => boundMount(browser, bound.origin, size));
  return [painted, measured(`${size} modules shown`, () => appMount(browser, app.origin, size), painted)];
});
const loads: FirstLoad[] = [];
for (let round = 0; round < ROUNDS; round++) {
  for (const { run, runs } of [...moves, ...mounts]) runs.push(await run());
  loads.push(await firstLoad(browser, app.origin));
}
await browser.close();
await app.close();
await bound.close();

const times = ({ runs, against }: Measured, of: (run: MainThread) => number): string =>
  against === undefined
    ? ''
    : median(runs.map((run, i) => of(run) / of(against.runs[i] as MainThread))).toFixed(2);

const longest = (runs: readonly MainThread[]): string =>
  median(runs.map(({ longestMs }) => longestMs)).toFixed(1);

console.table(
  moves.map((one) => {
    const perMove = one.runs.flatMap(({ moveMs }) => moveMs);
    return {
      drag: one.what,
      'ms per move, half': quantile(perMove, 0.5).toFixed(2),
      '95 of 100': quantile(perMove, 0.95).toFixed(2),
      'times the bound': times(one, ({ totalMs }) => totalMs),
      'by processor time': times(one, ({ cpuMs }) => cpuMs),
      'longest task ms': longest(one.runs),
    };
  }),
);
console.table(
  mounts.map((one) => ({
    mount: one.what,
    'ms in all': median(one.runs.map(({ totalMs }) => totalMs)).toFixed(0),
    'times the bound': times(one, ({ totalMs }) => totalMs),
    'by processor time': times(one, ({ cpuMs }) => cpuMs),
    'longest task ms': longest(one.runs),
    'times the longest there': times(one, ({ longestMs }) => longestMs),
  })),
);
console.table([
  {
    'first load of the demo, from this machine': 'median of 5',
    'first picture ms': median(loads.map(({ pictureMs }) => pictureMs)).toFixed(0),
    'can be taken hold of ms': median(loads.map(({ heldMs }) => heldMs)).toFixed(0),
    'main thread ms': median(loads.map(({ totalMs }) => totalMs)).toFixed(0),
    'longest task ms': longest(loads),
  },
]);
