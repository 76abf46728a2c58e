import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

// The long sweep: every property, random hands on the app among them, so many times as often as in the gate (npm run long -- 50).

const [times = '20'] = process.argv.slice(2);
const HOUR_MS = 3_600_000;

const TESTS = fileURLToPath(new URL('../tests/', import.meta.url));

/** Tests that ask how often to try. */
function filesWithProperties(): string[] {
  const files = readdirSync(TESTS, { recursive: true, encoding: 'utf8' });
  const tests = files.filter((file) => /\.test\.tsx?$/.test(file));
  return tests
    .filter((file) => /\bruns\(/.test(readFileSync(TESTS + file, 'utf8')))
    .map((file) => `tests/${file}`);
}

const { status } = spawnSync(
  'npx',
  ['vitest', 'run', '--project', 'unit', `--testTimeout=${HOUR_MS}`, ...filesWithProperties()],
  {
    stdio: 'inherit',
    env: { ...process.env, RIBBONWRIGHT_TIMES: times },
    shell: process.platform === 'win32',
  },
);
process.exitCode = status ?? 1;
