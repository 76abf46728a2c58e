import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';
import { expect, it } from 'vitest';
import type * as Core from '../src/index.ts';
import type { Layout, Take } from '../src/layout/layout.ts';
import { bigLayout } from './support/big-take.ts';

/** The core as the app gets it: in one file. The test runner's own loading of modules costs a third more. */
async function builtCore(): Promise<Pick<typeof Core, 'deriveTake' | 'checkTake'>> {
  const built = await build({
    configFile: false,
    logLevel: 'silent',
    build: {
      write: false,
      target: 'es2023',
      lib: { entry: fileURLToPath(new URL('../src/index.ts', import.meta.url)), formats: ['es'] },
    },
  });
  const [output] = Array.isArray(built) ? built : [];
  const code = output?.output[0].code;
  if (!code) throw new Error('nothing was built');
  const folder = fileURLToPath(new URL('../.out/', import.meta.url));
  mkdirSync(folder, { recursive: true });
  writeFileSync(`${folder}core.mjs`, code);
  return import(pathToFileURL(`${folder}core.mjs`).href);
}

const SIZES = [10, 60, 200, 1000, 10_000];
const BUDGET_MS: Readonly<Record<number, number>> = { 60: 1, 1000: 8 };

/** A drag moves one module: everything else keeps its identity, the kit above all. */
function moved(take: Take, step: number): Take {
  const [first, ...others] = take.modules;
  return first ? { ...take, modules: [{ ...first, atHp: first.atHp + (step % 3) * 0.5 }, ...others] } : take;
}

function medianMs(
  { deriveTake, checkTake }: Pick<typeof Core, 'deriveTake' | 'checkTake'>,
  { kit, takes }: Layout,
  runs: number,
): number {
  const [take] = takes;
  if (!take) throw new Error('no take');
  const times: number[] = [];
  for (let step = 0; step < runs; step++) {
    const next = moved(take, step);
    const start = performance.now();
    checkTake(deriveTake(kit, next));
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  return times[Math.floor(runs / 2)] as number;
}

it('derives and checks a take after a move', async () => {
  const core = await builtCore();
  medianMs(core, bigLayout(1000), 60);
  const rows = SIZES.map((size) => {
    const layout = bigLayout(size);
    const ms = medianMs(core, layout, size > 2000 ? 15 : 101);
    return { modules: layout.takes[0]?.modules.length ?? 0, size, ms };
  });
  const table = rows.map(({ modules, size, ms }, i) => {
    const before = rows[i - 1];
    const exponent = before ? Math.log(ms / before.ms) / Math.log(modules / before.modules) : undefined;
    return {
      modules,
      'median ms': ms.toFixed(3),
      'budget ms': BUDGET_MS[size] ?? '',
      'grows as n^': exponent?.toFixed(2) ?? '',
    };
  });
  console.table(table);
  const [from, to] = [rows[2], rows[4]];
  if (from && to)
    console.log(
      `growth exponent from 200 up: ${(Math.log(to.ms / from.ms) / Math.log(to.modules / from.modules)).toFixed(3)}`,
    );
  expect(rows.every(({ ms }) => ms > 0)).toBe(true);
});
