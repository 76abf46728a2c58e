import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { builtApp, serveFolder } from '../.tools/serve.ts';
import { expect, test } from './fixtures.ts';
import { watch } from './watch.ts';

test('the built app runs from a sub-folder of a site', async ({ browser }, testInfo) => {
  const site = testInfo.outputPath('site');
  cpSync(builtApp, join(site, 'some', 'folder'), { recursive: true });
  const server = await serveFolder(site);
  const context = await browser.newContext();
  const trouble = watch(context, server.origin);

  const page = await context.newPage();
  await page.goto(`${server.origin}/some/folder/`);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Ribbonwright');
  expect(trouble).toEqual([]);

  await context.close();
  await server.close();
});
