import { defineConfig, devices } from 'playwright/test';
import { CHOICE, findBrowser, launchArguments } from './find-browser.ts';

const browser = findBrowser();
// The runner's worker processes load this file again and inherit the answer.
process.env[CHOICE] = browser;

export default defineConfig({
  testDir: '.',
  outputDir: '../.out/e2e',
  snapshotPathTemplate: '{testDir}/golden/{arg}{ext}',
  // A picture that is missing is a fault; they are taken by `npm run golden` alone.
  updateSnapshots: 'none',
  fullyParallel: true,
  workers: 2,
  forbidOnly: process.env.CI === 'true',
  timeout: 60_000,
  // A busy machine may miss a frame; a test that needed a second try is listed as flaky.
  retries: process.env.CI === 'true' ? 1 : 0,
  reporter: 'list',
  use: {
    ...devices['Desktop Chrome'],
    // What works offline has tests of its own, which let it in; all others stay clear of it.
    serviceWorkers: 'block',
    launchOptions: { executablePath: browser, args: launchArguments() },
    // A trace takes as much of the machine as many a test: one that fails is tried again with it.
    trace: 'on-first-retry',
    screenshot: 'only-on-failure',
  },
});
