import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { delimiter, dirname, join } from 'node:path';
import { chromium } from 'playwright/test';

/** The environment variable that names the browser by hand; the tests then use that one or fail. */
export const CHOICE = 'RIBBONWRIGHT_BROWSER';

/** Chromium without its window: the same engine, and the tests take half the time. */
const SHELL = 'chromium-headless-shell';

const COMMANDS = [SHELL, 'chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome'];

const USUAL_PLACES = [
  '/usr/bin/chromium',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

/**
 * The path of a Chromium for the tests.
 * Looks, in this order, at the named choice, a Chromium without a window, the runner's own downloads, the usual
 * commands and places. Where that is safe to do unasked, one without a window is installed from Debian's packages first;
 * if there is none at all, any, or else the runner's download.
 * @throws If the named choice does not work, or if nothing was found and nothing could be installed.
 */
export function findBrowser(): string {
  const chosen = process.env[CHOICE];
  if (chosen) return usable(chosen);
  const found =
    installedShell() ??
    (installFromDebian(SHELL) ? installedShell() : undefined) ??
    installedBrowser() ??
    (installFromDebian('chromium') || installByRunner() ? installedBrowser() : undefined);
  if (found) return found;
  throw new Error(
    `No Chromium found for the tests: install one, or set ${CHOICE} to the path of its program.`,
  );
}

function usable(chosen: string): string {
  if (answersToVersion(chosen)) return chosen;
  throw new Error(`${CHOICE} is set to '${chosen}', but no browser starts there.`);
}

function installedBrowser(): string | undefined {
  const downloaded = chromium.executablePath();
  return existsSync(downloaded)
    ? downloaded
    : [...alongPath(COMMANDS), ...USUAL_PLACES].find(answersToVersion);
}

const installedShell = (): string | undefined => alongPath([SHELL]).find(answersToVersion);

/** The runner wants a full path, so the search along PATH is made here. */
function alongPath(commands: readonly string[]): string[] {
  const folders = (process.env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  return commands.flatMap((command) => folders.map((folder) => join(folder, command)));
}

const answersToVersion = (program: string) =>
  existsSync(program) && succeeds(program, ['--version'], 'ignore');

/** Only a root on a throw-away test machine (CI=true) wants packages installed without being asked. */
function installFromDebian(browser: string): boolean {
  const mayInstall = isRoot() && process.env.CI === 'true' && existsSync('/etc/debian_version');
  return (
    mayInstall &&
    succeeds('apt-get', ['update']) &&
    succeeds('apt-get', ['install', '-y', '--no-install-recommends', browser, 'fonts-dejavu-core'])
  );
}

function installByRunner(): boolean {
  const folder = dirname(createRequire(import.meta.url).resolve('playwright/package.json'));
  return succeeds(process.execPath, [join(folder, 'cli.js'), 'install', 'chromium']);
}

const isRoot = () => process.getuid?.() === 0;

/** No graphics card, no calls home; root has no sandbox. */
export const launchArguments = (): string[] => [
  ...(isRoot() ? ['--no-sandbox'] : []),
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

function succeeds(
  command: string,
  args: readonly string[],
  output: 'ignore' | 'inherit' = 'inherit',
): boolean {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  try {
    execFileSync(command, args, { stdio: ['ignore', output, output], env });
    return true;
  } catch {
    return false;
  }
}
