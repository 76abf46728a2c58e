import { expect, type Page } from 'playwright/test';
import type { Layout } from '../../src/layout/layout.ts';

/** The picker that a test can answer: the other one is out of its reach. */
export const withPlainPicker = async (page: Page): Promise<void> => {
  await page.addInitScript(() => {
    for (const name of ['showOpenFilePicker', 'showSaveFilePicker']) {
      Object.defineProperty(window, name, { value: undefined, configurable: true });
    }
  });
};

/** Opens a file through the app's own door. */
async function openFile(page: Page, name: string, content: string): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await page.keyboard.press('Control+o');
  await (await chooser).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(content) });
}

/** Opens a layout and waits until it is shown. */
export async function openLayoutFile(page: Page, layout: Layout): Promise<void> {
  await openFile(page, 'layout.json', JSON.stringify(layout));
  await expect(page.getByLabel('Title of the layout')).toHaveValue(layout.title);
}
