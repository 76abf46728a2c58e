import { expect, type Locator, type Page } from 'playwright/test';

export const stock = (page: Page): Locator => page.getByRole('region', { name: 'Stock' });

/** Types into a field that a label names, by the keyboard alone. */
export async function type(page: Page, label: string, text: string): Promise<void> {
  await page.getByLabel(label, { exact: true }).focus();
  await page.keyboard.press('Control+a');
  await page.keyboard.type(text);
}

/** Chooses from a list by typing what its entry begins with, as one does by keyboard. */
export async function pick(page: Page, label: string, start: string): Promise<void> {
  await page.getByLabel(label, { exact: true }).focus();
  await page.keyboard.type(start);
}

/** Opens the form from its tile in the tray, by the keyboard. */
export async function openForm(page: Page, tile: string): Promise<void> {
  await stock(page).getByRole('button', { name: tile }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog')).toBeVisible();
}
