import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

// The one gate: runs the steps in order, stops at the first that fails, and says what ran, how long it took and what it counted.

type Count = { readonly passed: number; readonly failed: number };

type Step = {
  /** The name of its script in package.json. */
  readonly script: string;
  readonly args?: readonly string[];
  readonly report?: { readonly file: string; readonly read: (report: string) => Count };
};

const outFile = (name: string) => fileURLToPath(new URL(`../.out/${name}`, import.meta.url));

const UNIT_REPORT = outFile('unit.json');
const E2E_REPORT = outFile('e2e.json');

const STEPS: readonly Step[] = [
  { script: 'types' },
  { script: 'lint' },
  { script: 'unused' },
  {
    script: 'unit',
    args: ['--reporter=default', '--reporter=json', `--outputFile.json=${UNIT_REPORT}`],
    report: { file: UNIT_REPORT, read: readUnitReport },
  },
  { script: 'build' },
  { script: 'e2e:built', args: ['--reporter=list,json'], report: { file: E2E_REPORT, read: readE2eReport } },
];

const ENVIRONMENT = { ...process.env, PLAYWRIGHT_JSON_OUTPUT_FILE: E2E_REPORT };

function readUnitReport(report: string): Count {
  const { numPassedTests, numFailedTests } = JSON.parse(report);
  return { passed: numPassedTests, failed: numFailedTests };
}

function readE2eReport(report: string): Count {
  const { expected, unexpected, flaky } = JSON.parse(report).stats;
  return { passed: expected + flaky, failed: unexpected };
}

type Outcome = {
  readonly script: string;
  readonly seconds: number;
  readonly ok: boolean;
  readonly count: Count;
};

function run({ script, args = [], report }: Step): Outcome {
  if (report) rmSync(report.file, { force: true });
  console.log(`\n── ${script}`);
  const start = performance.now();
  const { status } = spawnSync('npm', ['run', '--silent', script, '--', ...args], {
    stdio: ['ignore', 'inherit', 'inherit'],
    env: ENVIRONMENT,
    shell: process.platform === 'win32',
  });
  const ok = status === 0;
  const seconds = (performance.now() - start) / 1000;
  const counted =
    report && existsSync(report.file)
      ? report.read(readFileSync(report.file, 'utf8'))
      : { passed: 0, failed: 0 };
  // A step may fail without a failing test (a type fault, a file that cannot be loaded): that is one failure too.
  const count = ok ? counted : { ...counted, failed: Math.max(1, counted.failed) };
  return { script, seconds, ok, count };
}

function runUntilFailure(steps: readonly Step[]): Outcome[] {
  const outcomes: Outcome[] = [];
  for (const step of steps) {
    const outcome = run(step);
    outcomes.push(outcome);
    if (!outcome.ok) break;
  }
  return outcomes;
}

const sum = (outcomes: readonly Outcome[], pick: (outcome: Outcome) => number) =>
  outcomes.reduce((total, outcome) => total + pick(outcome), 0);

const line = (name: string, seconds: number, remark = '') =>
  console.log(`${name.padEnd(10)} ${seconds.toFixed(1).padStart(6)} s${remark}`);

const outcomes = runUntilFailure(STEPS);
const failed = sum(outcomes, ({ count }) => count.failed);

console.log('');
for (const { script, seconds, ok } of outcomes)
  line(script, seconds, ok ? '' : '  failed; later steps were not run');
line(
  'all',
  sum(outcomes, ({ seconds }) => seconds),
);
console.log(`\n${sum(outcomes, ({ count }) => count.passed)} passed, ${failed} failed`);

process.exitCode = failed === 0 ? 0 : 1;
