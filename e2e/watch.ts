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
  context.on('page', followSockets);
  context.pages().forEach(followSockets);
  return trouble;
}

const INSIDE_THE_PAGE = new Set(['data:', 'blob:', 'about:']);

function leavesOrigin(url: string, origin: string): boolean {
  const { protocol, host } = new URL(url);
  return !INSIDE_THE_PAGE.has(protocol) && host !== new URL(origin).host;
}
