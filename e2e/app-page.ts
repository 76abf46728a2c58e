import type { Locator, Page } from 'playwright/test';

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A module as the list of those who do not see the drawing has it: it lies where the module is drawn. */
export const onRails = (page: Page, name: RegExp | string): Locator =>
  page.locator('.by-list').getByRole('option', { name });

/** A spot on the upper edge of a module's panel, where no ribbon lies. */
export async function spotOn(page: Page, name: RegExp | string): Promise<Spot> {
  const box = await onRails(page, name).boundingBox();
  if (!box) throw new Error(`${name} is not on the rails`);
  return { x: box.x + box.width / 2, y: box.y + 5 };
}

/** CSS px of 1 HP, measured on a module of known width. */
export async function pxPerHp(page: Page): Promise<number> {
  const box = await onRails(page, /^Harbour/).boundingBox();
  return (box?.width ?? 0) / 10;
}

/** Presses a module and moves it by so many px, without letting go. */
export async function holdAndMove(page: Page, name: RegExp | string, dx: number, dy = 0): Promise<void> {
  const { x, y } = await spotOn(page, name);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + dx / 2, y + dy / 2);
  await page.mouse.move(x + dx, y + dy);
}

export async function drag(page: Page, name: RegExp | string, dx: number, dy = 0): Promise<void> {
  await holdAndMove(page, name, dx, dy);
  await page.mouse.up();
}

/** Opens the app and waits until it can be taken hold of. */
export async function openApp(page: Page, address = './'): Promise<void> {
  await page.goto(address);
  await page.locator('.by-list[data-held]').waitFor();
}

export const verdict = (page: Page): Locator => page.locator('.verdict');
