import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

// The long sweep: every property, random hands on the app among them, so many times as often as in the gate (npm run long -- 50).

const [times = '20', seed = String(Math.trunc(Math.random() * 2 ** 31))] = process.argv.slice(2);
console.log(`seed ${seed}: npm run long -- ${times} ${seed} does the same again`);
const HOUR_MS = 3_600_000;

const TESTS = fileURLToPath(new URL('../tests/', import.meta.url));

/** Tests that ask how often to try. */
function filesWithProperties(): string[] {
  const files = readdirSync(TESTS, { recursive: true, encoding: 'utf8' });
  const tests = files.filter((file) => /\.test\.tsx?$/.test(file));
  return tests
    .filter((file) => /\bfc\.|\bruns\(/.test(readFileSync(TESTS + file, 'utf8')))
    .map((file) => `tests/${file}`);
}

const { status } = spawnSync(
  'npx',
  [
    'vitest',
    'run',
    '--project',
    'unit',
    '--project',
    'mocked',
    `--testTimeout=${HOUR_MS}`,
    ...filesWithProperties(),
  ],
  {
    stdio: 'inherit',
    env: { ...process.env, RIBBONWRIGHT_TIMES: times, RIBBONWRIGHT_SEED: seed },
    shell: process.platform === 'win32',
  },
);

// Pages and browsers that end while somebody edits, on the app as built.
const swept = spawnSync(`npm run build && node --import tsx .tools/kill-sweep.ts 100 ${seed}`, {
  stdio: 'inherit',
  shell: true,
});
process.exitCode = (status ?? 1) || (swept.status ?? 1);
