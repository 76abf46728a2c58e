import type { BrowserContext, Page } from 'playwright/test';

/**
 * Notes everything that goes wrong in `context` from now on, one line each, into the returned list:
 * console errors, uncaught exceptions, and requests to anywhere but `origin`.
 */
export function watch(context: BrowserContext, origin: string): string[] {
  const trouble: string[] = [];
  const noteAddress = (url: string) => {
    if (leavesOrigin(url, origin)) trouble.push(`request to another host: ${url}`);
  };
  const followSockets = (page: Page) => page.on('websocket', (socket) => noteAddress(socket.url()));
  context.on('console', (message) => {
    if (message.type() === 'error') trouble.push(`console error: ${message.text()}`);
  });
  context.on('weberror', (problem) => trouble.push(`uncaught: ${problem.error().message}`));
  context.on('request', (request) => noteAddress(request.url()));
  const follow = (page: Page) => {
    followSockets(page);
    page.on('domcontentloaded', followPolicy);
  };
  context.on('page', follow);
  context.pages().forEach(follow);
  return trouble;
}

/** Most breaches of the content policy are lines in the console anyway; some are a refused promise and no more. */
function followPolicy(page: Page): void {
  const listen = () =>
    addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI }) =>
      console.error(`content policy: ${violatedDirective} refused ${blockedURI}`),
    );
  // A page that has gone meanwhile has nothing more to tell.
  page.evaluate(listen).catch(() => {});
}

const INSIDE_THE_PAGE = new Set(['data:', 'blob:', 'about:']);

function leavesOrigin(url: string, origin: string): boolean {
  const { protocol, host } = new URL(url);
  return !INSIDE_THE_PAGE.has(protocol) && host !== new URL(origin).host;
}
