import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright/test';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** One line for each way in which `page`, as it stands now, shuts people out; checked by axe-core. */
export async function barriersOn(page: Page): Promise<string[]> {
  // By the runner's own door: the page takes no script but its own.
  await page.evaluate(axe);
  const { violations } = await page.evaluate<AxeResults>(
    "axe.run({ preload: false, resultTypes: ['violations'] })",
  );
  return violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ target }) => `${id}: ${help} (${target.join(' ')})`),
  );
}
