import { readFile } from 'node:fs/promises';
import { onRails, openApp, spotOn } from './app-page.ts';
import { expect, test } from './fixtures.ts';

test.beforeEach(async ({ page }) => {
  // The browser's own file dialogs cannot be driven; without them the app takes the ways that every browser has.
  await page.addInitScript(() => {
    Reflect.deleteProperty(window, 'showOpenFilePicker');
    Reflect.deleteProperty(window, 'showSaveFilePicker');
  });
  await openApp(page);
});

async function pickFile(page: Parameters<typeof openApp>[0], text: string): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await page.keyboard.press('Control+o');
  await (await chooser).setFiles({
    name: 'layout.json',
    mimeType: 'application/json',
    buffer: Buffer.from(text),
  });
}

test('a layout is saved under its title, opened again, and the one before is an undo away', async ({
  page,
}) => {
  const { x, y } = await spotOn(page, /^Gull 1/);
  await page.mouse.click(x, y);
  await page.keyboard.press('Delete');
  const download = page.waitForEvent('download');
  await page.keyboard.press('Control+s');
  const saved = await download;
  expect(saved.suggestedFilename()).toBe('Shoreline kit.ribbonwright.json');
  const text = await readFile(await saved.path(), 'utf8');
  await page.keyboard.press('Control+z');
  await expect(onRails(page, /^Gull 1/)).toHaveCount(1);
  await pickFile(page, text);
  await expect(onRails(page, /^Gull 1/)).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Undo open Shoreline kit' })).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(onRails(page, /^Gull 1/)).toHaveCount(1);
});

test('a file that is no layout is refused in one line, and nothing is lost', async ({ page }) => {
  await pickFile(page, 'not a layout');
  await expect(page.getByRole('alert')).toContainText('Not opened');
  await expect(onRails(page, /^Gull 1/)).toHaveCount(1);
  await page.getByRole('button', { name: 'Put this message away' }).click();
  await expect(page.getByRole('alert')).toBeEmpty();
});

test('a file may be dropped anywhere', async ({ page }) => {
  await page.evaluate(() => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File(['{}'], 'layout.json', { type: 'application/json' }));
    document.body.dispatchEvent(new DragEvent('drop', { bubbles: true, cancelable: true, dataTransfer }));
  });
  await expect(page.getByRole('alert')).toContainText('Not opened');
});
