import { readFile } from 'node:fs/promises';
import type { BrowserContext, Page } from 'playwright/test';
import { barriersOn } from './accessibility.ts';
import { onRails, openApp, spotOn } from './app-page.ts';
import { expect, test } from './fixtures.ts';
import { withPlainPicker } from './support/open-layout.ts';

/** Times that a page is closed right after an edit; `RIBBONWRIGHT_CLOSINGS` for more. */
const CLOSINGS = Number(process.env.RIBBONWRIGHT_CLOSINGS ?? 10);

const title = (page: Page) => page.getByLabel('Title of the layout');
const state = (page: Page) => page.locator('.kept-line > span');
const desk = (page: Page) => page.getByRole('dialog', { name: 'My layouts' });

async function rename(page: Page, text: string): Promise<void> {
  await title(page).fill(text);
  await title(page).press('Enter');
}

const removeGull = async (page: Page): Promise<void> => {
  const { x, y } = await spotOn(page, /^Gull 1/);
  await page.mouse.click(x, y);
  await page.keyboard.press('Delete');
};

async function anotherTab(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  await openApp(page);
  return page;
}

/** Titles that the page shows from its very first picture on. */
const recordTitles = async (page: Page): Promise<void> => {
  await page.addInitScript(() => {
    const seen: string[] = [];
    Object.assign(window, { seenTitles: seen });
    new MutationObserver(() => {
      const field = document.querySelector<HTMLInputElement>('.top-bar .title');
      if (field && seen.at(-1) !== field.value) seen.push(field.value);
    }).observe(document, { subtree: true, childList: true });
  });
};

test('what is changed is there again when the page is loaded anew, and the demo does not flash', async ({
  page,
}) => {
  await openApp(page);
  await expect(state(page)).toHaveText('Nothing to save yet');
  await removeGull(page);
  await rename(page, 'My rack');
  await expect(state(page)).toHaveText('Saved on this device');
  await recordTitles(page);
  await page.reload();
  await expect(title(page)).toHaveValue('My rack');
  await expect(onRails(page, /^Kelp/)).toHaveCount(1);
  await expect(onRails(page, /^Gull 1/)).toHaveCount(0);
  expect(await page.evaluate(() => Reflect.get(window, 'seenTitles'))).toEqual(['My rack']);
});

test('a page that is closed right after an edit, or crashes, has lost nothing', async ({
  page,
  context,
  trouble,
}) => {
  await openApp(page);
  await rename(page, 'Closed at once');
  await page.close();
  const next = await anotherTab(context);
  await expect(title(next)).toHaveValue('Closed at once');
  await rename(next, 'Crashed');
  const wire = await context.newCDPSession(next);
  void wire.send('Page.crash').catch(() => {});
  await next.waitForEvent('crash');
  const last = await anotherTab(context);
  await expect(title(last)).toHaveValue('Crashed');
  await expect(state(last)).toHaveText('Saved on this device');
  trouble.splice(0);
});

test('nothing is lost, however often a page is closed in the very moment of an edit', async ({
  page,
  context,
}) => {
  let tab = page;
  await openApp(tab);
  for (let i = 0; i < CLOSINGS; i++) {
    await rename(tab, `Closed ${i}`);
    await Promise.all([tab.close(), context.waitForEvent('page'), context.newPage()]);
    tab = context.pages().at(-1) as Page;
    await openApp(tab);
    await expect(title(tab)).toHaveValue(`Closed ${i}`);
  }
  await expect(state(tab)).toHaveText('Saved on this device');
  expect(
    await tab.evaluate(() => Object.keys(localStorage).filter((key) => key.includes('unsaved'))),
  ).toEqual([]);
});

test('an edit that the browser never came to store is there all the same', async ({
  page,
  context,
  trouble,
}) => {
  await openApp(page);
  await page.evaluate(() => {
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('no', 'UnknownError');
    };
  });
  await rename(page, 'Never stored');
  await page.close();
  const next = await anotherTab(context);
  await expect(title(next)).toHaveValue('Never stored');
  await expect(state(next)).toHaveText('Saved on this device');
  trouble.splice(0);
});

test('two tabs: one changes the layout, the other shows it and can take over', async ({ page, context }) => {
  await openApp(page);
  await rename(page, 'Ours');
  await expect(state(page)).toHaveText('Saved on this device');
  const other = await anotherTab(context);
  await expect(state(other)).toHaveText('Another tab changes it');
  await rename(page, 'Ours, changed');
  await expect(title(other)).toHaveValue('Ours, changed');
  await rename(other, 'Refused');
  await expect(other.getByRole('alert')).toContainText('Another tab is changing this layout');
  await expect(title(other)).toHaveValue('Ours, changed');
  expect(await barriersOn(other)).toEqual([]);

  await page.bringToFront();
  await removeGull(page);
  await other.bringToFront();
  await other.getByRole('button', { name: 'Change it here' }).click();
  await expect(state(other)).toHaveText('Saved on this device');
  await expect(onRails(other, /^Gull 1/)).toHaveCount(0);
  await expect(state(page)).toHaveText('Another tab changes it');
  await rename(other, 'From the other tab');
  await expect(title(page)).toHaveValue('From the other tab');
  await other.close();
  await expect(state(page)).toHaveText('Saved on this device');
  await rename(page, 'Back here');
  await expect(state(page)).toHaveText('Saved on this device');
});

test('without locks between tabs the one opened last writes, and the other says so', async ({
  page,
  context,
}) => {
  await context.addInitScript(() => {
    Object.defineProperty(Navigator.prototype, 'locks', { get: () => undefined });
  });
  await openApp(page);
  await rename(page, 'Ours');
  await expect(state(page)).toHaveText('Saved on this device');
  const other = await anotherTab(context);
  await expect(state(other)).toHaveText('Saved on this device');
  await expect(state(page)).toHaveText('Another tab changes it');
  await rename(other, 'Ours, changed');
  await expect(title(page)).toHaveValue('Ours, changed');
  await other.close();
  await page.getByRole('button', { name: 'Change it here' }).click();
  await expect(state(page)).toHaveText('Saved on this device');
  await rename(page, 'Back here');
  await page.reload();
  await expect(title(page)).toHaveValue('Back here');
});

test('where the browser keeps nothing the app works, says so and offers a file', async ({ page }) => {
  await withPlainPicker(page);
  await page.addInitScript(() => {
    Object.defineProperty(window, 'indexedDB', {
      get: () => {
        throw new DOMException('forbidden', 'SecurityError');
      },
    });
  });
  await openApp(page);
  await expect(page.getByRole('alert')).toContainText('lets this page keep nothing');
  await rename(page, 'Only here');
  await expect(state(page)).toHaveText('Not saved: storage is blocked');
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as a file', exact: true }).click();
  expect((await download).suggestedFilename()).toBe('Only here.ribbonwright.json');
});

test('where the browser does not answer, the demo stands after a while', async ({ page }) => {
  await page.addInitScript(() => {
    IDBFactory.prototype.open = () => ({}) as IDBOpenDBRequest;
  });
  await openApp(page);
  await expect(title(page)).toHaveValue('Shoreline kit');
});

test('what cannot be opened is kept as it is, and can be taken away as a file', async ({ page }) => {
  await withPlainPicker(page);
  await openApp(page);
  await rename(page, 'From the future');
  await expect(state(page)).toHaveText('Saved on this device');
  await page.evaluate(
    () =>
      new Promise<void>((done) => {
        const opening = indexedDB.open('ribbonwright');
        opening.onsuccess = () => {
          const transaction = opening.result.transaction('layouts', 'readwrite');
          const store = transaction.objectStore('layouts');
          store.getAll().onsuccess = ({ target }) => {
            const [record] = (target as IDBRequest).result;
            store.put({ ...record, text: record.text.replace('"version":1', '"version":9') });
          };
          transaction.oncomplete = () => {
            opening.result.close();
            done();
          };
        };
      }),
  );
  await page.reload();
  await expect(page.getByRole('alert')).toContainText(
    '“From the future” could not be opened: made by a newer program',
  );
  await expect(title(page)).toHaveValue('Shoreline kit');
  await expect(page.locator('.by-list[data-held]')).toBeVisible();
  await rename(page, 'Another');
  await expect(state(page)).toHaveText('Saved on this device');
  await page.getByRole('button', { name: 'My layouts' }).click();
  await expect(desk(page)).toContainText('Cannot be opened here: made by a newer program');
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save From the future as a file' }).click();
  expect(await readFile(await (await download).path(), 'utf8')).toContain('"version":9');
});

test('my layouts, by keys alone: name, copy, delete and undo, open; and nobody is shut out', async ({
  page,
}) => {
  await openApp(page);
  await page.keyboard.press('m');
  await expect(desk(page)).toContainText('Nothing is kept here yet');
  expect(await barriersOn(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(desk(page)).toHaveCount(0);

  await rename(page, 'First');
  await expect(state(page)).toHaveText('Saved on this device');
  await page.locator('.by-list').focus();
  await page.keyboard.press('m');
  await expect(page.getByRole('button', { name: 'Open First' })).toBeFocused();
  await page.keyboard.press('Tab');
  await page.keyboard.type('Second');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: 'Open Second' })).toBeVisible();
  await page.getByRole('button', { name: 'Duplicate Second' }).press('Enter');
  await expect(page.getByRole('button', { name: 'Open Second, a copy' })).toBeVisible();
  expect(await barriersOn(page)).toEqual([]);
  await page.getByRole('button', { name: 'Delete Second', exact: true }).press('Enter');
  await expect(desk(page).getByRole('button', { name: 'Undo' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: 'Open Second', exact: true })).toBeFocused();
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('ArrowRight');
  await page.getByRole('button', { name: 'Open Second', exact: true }).press('Enter');
  await expect(desk(page)).toHaveCount(0);
  await expect(title(page)).toHaveValue('Second');
  await expect(page.locator('.by-list')).toBeFocused();
});

test('all layouts go into one file and come back from it; nothing that is here is overwritten', async ({
  page,
}) => {
  await withPlainPicker(page);
  await openApp(page);
  await rename(page, 'Mine');
  await expect(state(page)).toHaveText('Saved on this device');
  await page.getByRole('button', { name: 'My layouts' }).click();
  await page.getByRole('button', { name: 'Duplicate Mine' }).click();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save all in one file…' }).click();
  const text = await readFile(await (await download).path(), 'utf8');
  await page.getByRole('button', { name: 'Delete Mine, a copy' }).click();
  await page.keyboard.press('Escape');
  await rename(page, 'Mine, changed since');
  await expect(state(page)).toHaveText('Saved on this device');
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'My layouts' }).click();
  await page.getByRole('button', { name: 'Bring in a file…' }).click();
  await (await chooser).setFiles({
    name: 'all.json',
    mimeType: 'application/json',
    buffer: Buffer.from(text),
  });
  await expect(page.getByRole('alert')).toContainText('1 layout brought back.');
  await expect(page.getByRole('alert')).toContainText('1 layout brought back beside');
  await page.getByRole('button', { name: 'My layouts' }).click();
  for (const name of ['Mine', 'Mine, a copy', 'Mine, changed since']) {
    await expect(page.getByRole('button', { name: `Open ${name}`, exact: true })).toBeVisible();
  }
});

test('a file that the system opens with the installed program is brought in', async ({ page }) => {
  await page.addInitScript(() => {
    const launch = { files: [{ getFile: async () => new File(['{}'], 'layout.json') }] };
    Object.defineProperty(window, 'launchQueue', {
      value: { setConsumer: (take: (opened: typeof launch) => void) => take(launch) },
    });
  });
  await openApp(page);
  await expect(page.getByRole('alert')).toContainText('Not opened: not a layout of this program');
});
