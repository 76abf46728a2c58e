import type { Page } from 'playwright/test';
import { openApp } from '../app-page.ts';
import { layingLayout, layingWay } from './laying-layout.ts';
import { openLayoutFile } from './open-layout.ts';

/** Draws a ribbon over seven headers of a case with so many modules, up to the last one, and holds it there. */
export async function beginLaying(page: Page, modules: number, address?: string) {
  await openApp(page, address);
  await openLayoutFile(page, layingLayout(modules));
  const [first, last] = [/^Free 1, /, /^Free 7, /].map((name) => page.getByRole('option', { name }));
  const [from, to] = [await first?.boundingBox(), await last?.boundingBox()];
  if (!from || !to) throw new Error('the headers are not shown');
  const way = layingWay(from, to);
  const { y, fromX, toX, stepX } = way;
  await page.mouse.move(fromX, y);
  await page.mouse.down();
  await page.mouse.move(fromX + stepX, y);
  await page.mouse.move(toX, y);
  await page.locator('.hint-card', { hasText: '7 of 7 land' }).waitFor();
  return way;
}
