import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { lusolve, type Matrix, matrix, slu } from 'mathjs';
import { build } from 'vite';
import { expect, it } from 'vitest';
import { solveTake } from '../src/electrical/solution.ts';
import type * as Core from '../src/index.ts';
import type { Layout, Take } from '../src/layout/layout.ts';
import { deriveTake } from '../src/wiring/derive.ts';
import { bigLayout } from './support/big-take.ts';
import { type Circuit, nodalEquations, solved, sparseMatrix } from './support/circuit.ts';
import { plainNetwork } from './support/plain-network.ts';

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

it('derives, checks and solves a take after a move', async () => {
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

const medianOf = (runs: number, work: () => void): number => {
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return times.sort((a, b) => a - b)[Math.floor(runs / 2)] as number;
};

/** The network of a take, and of one that every ribbon joins to the next: loops through all of it. */
const networks = (modules: number): readonly (readonly [string, Circuit])[] => {
  const { kit, takes } = bigLayout(modules);
  const { circuit, reached } = plainNetwork(deriveTake(kit, takes[0] as Take));
  const loads = circuit.loads.map(([at]) => at);
  const across = loads.slice(1).map((at, i) => [loads[i] as number, at, 0.05] as const);
  expect(reached.size).toBeGreaterThan(modules);
  return [
    ['as wired', circuit],
    ['with loops', { ...circuit, resistors: [...circuit.resistors, ...across] }],
  ];
};

it('solves a network faster than a library of general use', () => {
  const table = [60, 1000].flatMap((modules) =>
    networks(modules).map(([wiring, circuit]) => {
      const equations = nodalEquations(circuit);
      const made = sparseMatrix(equations);
      let volts: readonly number[] = [];
      const ours = medianOf(41, () => {
        volts = solved(circuit).volts;
      });
      let theirs: Matrix | undefined;
      // Order 2 of mathjs is a minimum-degree order of AᵀA, 1 that of A + Aᵀ, which suits a symmetric matrix.
      const library = medianOf(3, () => {
        const lu = slu(made as unknown as never, 1, 0.001);
        theirs = lusolve(lu as unknown as Matrix, matrix(equations.right)) as Matrix;
      });
      const answers = (theirs as Matrix).valueOf() as number[][];
      const off = equations.free.map((node, i) =>
        Math.abs((answers[i]?.[0] as number) - (volts[node] as number)),
      );
      expect(Math.max(...off)).toBeLessThan(1e-6);
      return {
        modules,
        wiring,
        unknowns: equations.free.length,
        'ours, all of it, ms': ours.toFixed(2),
        'sparse LU of mathjs, ms': library.toFixed(1),
        times: (library / ours).toFixed(0),
      };
    }),
  );
  console.table(table);
});

it('writes out a whole solution', () => {
  const table = [60, 1000, 10_000].map((modules) => {
    const { kit, takes } = bigLayout(modules);
    let step = 0;
    const ms = medianOf(15, () => {
      const { seats } = solveTake(deriveTake(kit, moved(takes[0] as Take, step++)));
      expect(seats.length).toBeGreaterThan(modules);
    });
    return { modules, 'after a move, ms': ms.toFixed(2) };
  });
  console.table(table);
});
