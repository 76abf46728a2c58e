import { test as base, expect } from 'playwright/test';
import { builtApp, type StaticServer, serveFolder } from '../.tools/serve.ts';
import { watch } from './watch.ts';

type Fixtures = {
  /** What went wrong in the browser so far; a test that provokes trouble on purpose empties it, else the test fails. */
  readonly trouble: string[];
};

type WorkerFixtures = {
  /** The built app on a port of this worker's own. */
  readonly server: StaticServer;
};

export const test = base.extend<Fixtures, WorkerFixtures>({
  server: [
    // biome-ignore lint/correctness/noEmptyPattern: the runner reads the names of the fixtures needed from this pattern.
    async ({}, use) => {
      const server = await serveFolder(builtApp);
      await use(server);
      await server.close();
    },
    { scope: 'worker' },
  ],
  baseURL: async ({ server }, use) => {
    await use(`${server.origin}/`);
  },
  trouble: [
    async ({ context, server }, use) => {
      const trouble = watch(context, server.origin);
      await use(trouble);
      expect(trouble, 'trouble in the browser').toEqual([]);
    },
    { auto: true },
  ],
});

export { expect };
