import { spawnSync } from 'node:child_process';

// The long sweep: every property of the core, and random hands on the app, so many times as often as in the gate (npm run long -- 50).

const [times = '20'] = process.argv.slice(2);
const HOUR_MS = 3_600_000;

const { status } = spawnSync(
  'npx',
  [
    'vitest',
    'run',
    '--project',
    'unit',
    `--testTimeout=${HOUR_MS}`,
    'tests/checks/properties',
    'tests/layout',
    'tests/edit',
    'tests/app/monkey',
  ],
  {
    stdio: 'inherit',
    env: { ...process.env, RIBBONWRIGHT_TIMES: times },
    shell: process.platform === 'win32',
  },
);
process.exitCode = status ?? 1;
