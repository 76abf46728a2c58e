import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright/test';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** One line for each way in which `page`, as it stands now, shuts people out; checked by axe-core, the size of targets included (WCAG 2.2, 2.5.8). */
export async function barriersOn(page: Page): Promise<string[]> {
  // By the runner's own door: the page takes no script but its own.
  await page.evaluate(axe);
  const { violations } = await page.evaluate<AxeResults>(
    "axe.run({ preload: false, resultTypes: ['violations'], rules: { 'target-size': { enabled: true } } })",
  );
  const barriers = violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ target }) => ({ id, help, target: target.join(' ') })),
  );
  const large = await Promise.all(
    barriers.map(async ({ id, target }) => id === 'target-size' && (await isLarge(page, target))),
  );
  return barriers.filter((_, i) => !large[i]).map(({ id, help, target }) => `${id}: ${help} (${target})`);
}

/**
 * Whether a target can be hit on 24 by 24 px all the same: by the words of its label, which axe-core does not count to it,
 * or since what axe-core takes to lie over it is cut off there.
 */
const isLarge = (page: Page, target: string): Promise<boolean> =>
  page.evaluate((selector) => {
    const found = document.querySelector(selector);
    const whole = found?.closest('label') ?? found;
    const { left = 0, right = 0, top = 0, bottom = 0 } = whole?.getBoundingClientRect() ?? {};
    if (!whole || right - left < 24 || bottom - top < 24) return false;
    const [x, y] = [(left + right) / 2, (top + bottom) / 2];
    return [-11, 0, 11].every((dx) =>
      [-11, 0, 11].every((dy) => whole.contains(document.elementFromPoint(x + dx, y + dy))),
    );
  }, target);
