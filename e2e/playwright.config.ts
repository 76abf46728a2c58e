import { defineConfig, devices } from 'playwright/test';
import { CHOICE, findBrowser, isRoot } from './find-browser.ts';

const browser = findBrowser();
// The runner's worker processes load this file again and inherit the answer.
process.env[CHOICE] = browser;

const QUIET = [
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export default defineConfig({
  testDir: '.',
  outputDir: '../.out/e2e',
  fullyParallel: true,
  workers: 2,
  forbidOnly: process.env.CI === 'true',
  timeout: 60_000,
  reporter: 'list',
  use: {
    ...devices['Desktop Chrome'],
    launchOptions: { executablePath: browser, args: isRoot() ? ['--no-sandbox', ...QUIET] : QUIET },
    trace: 'retain-on-failure',
    screenshot: 'only-on-failure',
  },
});
