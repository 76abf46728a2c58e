import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright/test';

const axePath = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

/** One line for each way in which `page`, as it stands now, shuts people out; checked by axe-core. */
export async function barriersOn(page: Page): Promise<string[]> {
  await page.addScriptTag({ path: axePath });
  const { violations } = await page.evaluate<AxeResults>(
    "axe.run({ preload: false, resultTypes: ['violations'] })",
  );
  return violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ target }) => `${id}: ${help} (${target.join(' ')})`),
  );
}
