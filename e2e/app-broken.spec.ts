import { readFile } from 'node:fs/promises';
import { expect, test } from './fixtures.ts';

test('where the screen breaks, the layout can be taken away as a file', async ({ page, trouble }) => {
  await page.addInitScript(() => {
    HTMLCanvasElement.prototype.getContext = () => {
      throw new Error('provoked');
    };
  });
  await page.goto('./');
  await expect(page.getByRole('heading', { name: 'The screen has stopped working' })).toBeVisible();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the layout as a file' }).click();
  const text = await readFile(await (await download).path(), 'utf8');
  expect(JSON.parse(text)).toMatchObject({ format: 'ribbonwright', title: 'Shoreline kit' });
  expect(trouble.splice(0).every((line) => line.includes('provoked'))).toBe(true);
});
