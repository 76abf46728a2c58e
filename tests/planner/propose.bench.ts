import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { expect, it } from 'vitest';
import { demoLayout } from '../../src/layout/demo.ts';
import { rackOf } from './rack-of.ts';

const SIZES = [10, 20, 40, 80];

/** The planner as the app gets it, in one file; each run is a new process, so that its start is in what it takes. */
async function builtPlanner(): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'silent',
    build: {
      write: false,
      target: 'es2023',
      lib: { entry: fileURLToPath(new URL('../../src/planner.ts', import.meta.url)), formats: ['es'] },
    },
  });
  const [output] = Array.isArray(built) ? built : [];
  const code = output?.output[0].code;
  if (!code) throw new Error('nothing was built');
  const folder = fileURLToPath(new URL('../../.out/', import.meta.url));
  mkdirSync(folder, { recursive: true });
  writeFileSync(`${folder}planner.mjs`, code);
  const inputs = {
    ...Object.fromEntries(SIZES.map((size) => [size, rackOf(size)])),
    demo: { kit: demoLayout().kit, take: demoLayout().takes[0] },
  };
  writeFileSync(`${folder}racks.json`, JSON.stringify(inputs));
  writeFileSync(
    `${folder}plan.mjs`,
    `import { readFileSync } from 'node:fs';
const [, , name, make] = process.argv;
const { kit, take } = JSON.parse(readFileSync(new URL('racks.json', import.meta.url), 'utf8'))[name];
const start = performance.now();
const startCpu = process.cpuUsage();
const planner = await import('./planner.mjs');
let loaded = false;
const load = async () => {
  loaded = true;
  const { default: loadHighs } = await import('highs');
  return planner.engineOf(await loadHighs());
};
const { score, optimal, bound } = await planner.withEngine((engine) => planner[make](kit, take, engine), load);
const { user, system } = process.cpuUsage(startCpu);
console.log(JSON.stringify({ ms: performance.now() - start, cpuMs: (user + system) / 1000, loaded, optimal, bound, ...score }));
`,
  );
  return `${folder}plan.mjs`;
}

interface Row {
  readonly ms: number;
  /** Of all threads of the process, those that compile and collect among them. */
  readonly cpuMs: number;
  readonly loaded: boolean;
  readonly optimal: boolean;
  readonly unlinked: number;
  readonly cost: number;
  readonly ribbons: number;
}

/** @param held - to one core, with the system's own means; nothing where it has none */
function timed(script: string, name: string, make: string, runs: number, held = false): Row | undefined {
  const [program, ...before] = held ? ['taskset', '-c', '0', process.execPath] : [process.execPath];
  const rows: Row[] = [];
  for (let i = 0; i < runs; i++) {
    const { stdout, stderr, error } = spawnSync(program, [...before, script, name, make], {
      encoding: 'utf8',
    });
    if (held && error) return undefined;
    if (!stdout) throw new Error(stderr.slice(-500));
    rows.push(JSON.parse(stdout) as Row);
  }
  return rows.sort((a, b) => a.cpuMs - b.cpuMs)[Math.floor(runs / 2)];
}

/** What a process costs that does nothing: how busy the machine is. */
function emptyMs(): number {
  const script = 'const { user, system } = process.cpuUsage(); console.log((user + system) / 1000)';
  const runs = Array.from({ length: 5 }, () =>
    Number(spawnSync(process.execPath, ['-e', script], { encoding: 'utf8' }).stdout),
  ).sort((a, b) => a - b);
  return runs[2] as number;
}

it('proposes wiring, in a process of its own, start included', async () => {
  const script = await builtPlanner();
  const rows = SIZES.map((size) => ({
    size,
    ...(timed(script, `${size}`, 'proposeWiring', 5) as Row),
    oneCoreMs: timed(script, `${size}`, 'proposeWiring', 5, true)?.ms,
  }));
  console.table(
    rows.map(({ size, ms, oneCoreMs, cpuMs, optimal, loaded, unlinked, cost, ribbons }, i) => {
      const before = rows[i - 1];
      return {
        modules: size,
        'by the clock ms': ms.toFixed(0),
        'on one core ms': oneCoreMs?.toFixed(0) ?? '',
        'processor ms': cpuMs.toFixed(0),
        'aim ms': size === 40 ? 300 : '',
        'grows as n^': before ? (Math.log(cpuMs / before.cpuMs) / Math.log(2)).toFixed(2) : '',
        optimal,
        'engine needed': loaded,
        unlinked,
        cost,
        ribbons,
      };
    }),
  );
  const demo = ['proposeWiring', 'proposeArrangement'].map((make) => ({
    make,
    ...(timed(script, 'demo', make, 3) as Row),
  }));
  console.table(
    demo.map(({ make, ms, cpuMs, ribbons }) => ({
      demo: make,
      'by the clock ms': ms.toFixed(0),
      'processor ms': cpuMs.toFixed(0),
      ribbons,
    })),
  );
  console.log(`An empty process took ${emptyMs().toFixed(0)} ms of processor time.`);
  expect(rows.find(({ size }) => size === 40)?.optimal).toBe(true);
});
