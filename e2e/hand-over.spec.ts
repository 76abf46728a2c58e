import type { Browser, Page } from 'playwright/test';
import { demoLayout } from '../src/layout/demo.ts';
import type { Layout } from '../src/layout/layout.ts';
import { linkOf } from '../src/share/link.ts';
import { fortyModules } from '../tests/support/forty-modules.ts';
import { linkAroundData } from '../tests/support/link-around.ts';
import { barriersOn } from './accessibility.ts';
import { onRails, openApp } from './app-page.ts';
import { expect, test } from './fixtures.ts';
import { openLayoutFile, withPlainPicker } from './support/open-layout.ts';

const handOver = (page: Page) => page.getByRole('dialog', { name: /^Hand over/ });
const offer = (page: Page) => page.getByRole('dialog', { name: 'A layout came with this link' });
const title = (page: Page) => page.getByLabel('Title of the layout');

/** The link that the app itself makes of what it shows. */
async function takeLink(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'Hand over…' }).click();
  return handOver(page).getByLabel('Link', { exact: true }).inputValue();
}

function linkTo(layout: Layout, base = ''): string {
  const link = linkOf(layout, base);
  if (!link.ok) throw new Error(link.error.kind);
  return link.value;
}

/** A page of somebody else: nothing is shared with the first one but the address. */
async function elsewhere(browser: Browser, address: string): Promise<Page> {
  const context = await browser.newContext();
  const page = await context.newPage();
  await openApp(page, address);
  return page;
}

test('a link made in one browser opens in another, and back again', async ({ page, browser, server }) => {
  await withPlainPicker(page);
  await openApp(page);
  const mine = fortyModules();
  await openLayoutFile(page, mine);
  const link = await takeLink(page);
  expect(link.length).toBeGreaterThan(500);

  const other = await elsewhere(browser, link);
  await expect(offer(other)).toContainText('Stage case, spring tour');
  await expect(offer(other)).toContainText('3 rows, 40 modules, 2 takes');
  await expect(offer(other)).toContainText('As it stands:');
  await expect(title(other)).toHaveValue('Shoreline kit');
  expect(await barriersOn(other)).toEqual([]);
  await offer(other).getByRole('button', { name: 'Keep it as a layout of its own' }).click();
  await expect(title(other)).toHaveValue(mine.title);
  await expect(other.locator('.by-list').getByRole('option', { name: / HP at / })).toHaveCount(40);
  expect(other.url()).toBe(`${server.origin}/`);

  await title(other).fill('Stage case, with changes');
  await title(other).press('Enter');
  const back = await takeLink(other);
  await other.context().close();

  await page.keyboard.press('Escape');
  await page.goto(back);
  await expect(offer(page)).toContainText('Stage case, with changes');
  await expect(offer(page).getByRole('region', { name: 'What differs' })).toContainText(
    'It is called Stage case, with changes.',
  );
  await offer(page).getByRole('button', { name: 'Leave it' }).click();
  await expect(title(page)).toHaveValue(mine.title);
  expect(page.url()).toBe(`${server.origin}/`);
});

test('the demo is handed over by key: link, QR code and file, with and without prices', async ({ page }) => {
  await withPlainPicker(page);
  await openApp(page);
  await page.keyboard.press('k');
  const dialog = handOver(page);
  await expect(dialog.getByRole('img', { name: 'QR code of the link' })).toBeVisible();
  const whole = await dialog.getByLabel('Link', { exact: true }).inputValue();
  await expect(dialog).toContainText(`${whole.length} characters.`);
  expect(await barriersOn(page)).toEqual([]);

  await dialog.getByLabel('prices').check();
  await dialog.getByLabel('how many I own').check();
  const less = await dialog.getByLabel('Link', { exact: true }).inputValue();
  expect(less.length).toBeLessThan(whole.length);

  await dialog.getByRole('button', { name: 'Copy the link' }).click();
  await expect(dialog.getByRole('status')).toHaveText(/^Copied/);
  const download = page.waitForEvent('download');
  await dialog.getByRole('button', { name: 'Save as a file…' }).click();
  const stream = await (await download).createReadStream();
  const parts: Buffer[] = [];
  for await (const part of stream) parts.push(part as Buffer);
  const text = Buffer.concat(parts).toString();
  expect(text).toContain('"title": "Shoreline kit"');
  expect(text).not.toMatch(/"(price|owned)"/);

  await page.keyboard.press('Escape');
  await expect(dialog).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toHaveAttribute(
    'aria-disabled',
    'true',
  );
});

test('a link too long for a QR code says so', async ({ page }) => {
  await withPlainPicker(page);
  await openApp(page);
  await openLayoutFile(page, fortyModules());
  await page.keyboard.press('k');
  await expect(handOver(page)).toContainText('Too long for a QR code: it holds 997 characters');
  await expect(handOver(page)).not.toContainText('Some chats');
  await page.keyboard.press('Escape');
  const notes = Array.from({ length: 400 }, (_, i) => `${Math.sin(i)}`).join(' ');
  await openLayoutFile(page, { ...fortyModules(), title: 'Long', notes });
  await page.keyboard.press('k');
  await expect(handOver(page)).toContainText('Some chats cut links this long: a file is safer.');
  expect(await barriersOn(page)).toEqual([]);
});

test('a link put into the address of an open tab, or pasted, asks first', async ({ page }) => {
  await openApp(page);
  const link = linkTo({ ...demoLayout(), title: 'From the address' });
  await page.evaluate((fragment) => {
    location.hash = fragment;
  }, link);
  await expect(offer(page)).toContainText('From the address');
  await page.keyboard.press('Escape');
  await expect(offer(page)).toHaveCount(0);
  await expect(title(page)).toHaveValue('Shoreline kit');
  await expect.poll(() => page.url()).not.toContain('#');

  await page.evaluate(
    (text) => {
      const data = new DataTransfer();
      data.setData('text/plain', text);
      document.dispatchEvent(
        new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }),
      );
    },
    `Look: https://example.org/${linkTo({ ...demoLayout(), title: 'From a chat' })} what do you think?`,
  );
  await expect(offer(page)).toContainText('From a chat');
  await offer(page).getByRole('button', { name: 'Keep it as a layout of its own' }).click();
  await expect(title(page)).toHaveValue('From a chat');
  await page.getByRole('button', { name: 'Undo open From a chat' }).click();
  await expect(title(page)).toHaveValue('Shoreline kit');
});

const GOOD = linkTo(demoLayout());
for (const [what, link, words] of [
  ['cut', GOOD.slice(0, 300), 'cut short'],
  [
    'changed',
    `${GOOD.slice(0, 200)}${GOOD[200] === 'A' ? 'B' : 'A'}${GOOD.slice(201)}`,
    'changed on its way',
  ],
  ['newer', GOOD.replace('rw1', 'rw9'), 'newer program'],
] as const) {
  test(`a ${what} link says one clear thing and changes nothing`, async ({ page }) => {
    await openApp(page, `./${link}`);
    await expect(page.getByRole('alert')).toContainText(words);
    await expect(offer(page)).toHaveCount(0);
    await expect(onRails(page, /^Gull 1/)).toHaveCount(1);
    await expect(page.getByRole('button', { name: 'Undo', exact: true })).toHaveAttribute(
      'aria-disabled',
      'true',
    );
  });
}

test('what differs is told against the layout that a link comes from, though another one is open', async ({
  page,
}) => {
  await openApp(page);
  await title(page).fill('Mine');
  await title(page).press('Enter');
  await expect(page.locator('.kept-line > span')).toHaveText('Saved on this device');
  const { id } = await page.evaluate(
    () =>
      new Promise<{ id: string }>((done) => {
        indexedDB.open('ribbonwright').onsuccess = ({ target }) => {
          const base = (target as IDBOpenDBRequest).result;
          base.transaction('layouts').objectStore('layouts').getAll().onsuccess = (found) => {
            base.close();
            done((found.target as IDBRequest).result[0]);
          };
        };
      }),
  );
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: /^New empty case/ }).click();
  await expect(title(page)).not.toHaveValue('Mine');
  const [take, ...others] = demoLayout().takes;
  if (!take) throw new Error('no take');
  const theirs = { ...demoLayout(), id: 'theirs', parent: id, title: 'Theirs' };
  const link = linkTo({
    ...theirs,
    takes: [{ ...take, modules: take.modules.map((module) => ({ ...module, pinned: true })) }, ...others],
  });
  await page.evaluate((fragment) => {
    location.hash = fragment;
  }, link);
  await expect(offer(page)).toContainText('Against “Mine” in My layouts');
  await expect(offer(page).getByRole('region', { name: 'What differs' })).toContainText(
    'It is called Theirs.',
  );
  await offer(page).getByRole('button', { name: 'Keep it as a layout of its own' }).click();
  await expect(title(page)).toHaveValue('Theirs');
  await page.getByRole('button', { name: 'My layouts' }).click();
  for (const name of ['Mine', 'Theirs'])
    await expect(page.getByRole('button', { name: `Open ${name}`, exact: true })).toBeVisible();
});

test('a link made to stop the program is refused in one line while the page stays at hand', async ({
  page,
}) => {
  await openApp(page);
  const bomb = linkAroundData({ ...demoLayout(), later: new Array(1_000_000).fill(null) });
  const thread = page.waitForEvent('worker');
  await page.evaluate((fragment) => {
    const marks: number[] = [];
    const tick = (): void => {
      marks.push(performance.now());
      if (marks.length < 10_000) setTimeout(tick, 4);
    };
    tick();
    Object.assign(window, { marks });
    location.hash = fragment;
  }, bomb);
  await thread;
  await expect(page.getByRole('alert')).toContainText('Not opened: this is too large for a link');
  const longest = await page.evaluate(() => {
    const marks = Reflect.get(window, 'marks') as number[];
    return Math.max(...marks.map((at, i) => at - (marks[i - 1] ?? at)));
  });
  test.info().annotations.push({ type: 'longest wait of the page, ms', description: longest.toFixed(0) });
  await expect(title(page)).toHaveValue('Shoreline kit');
  await expect(onRails(page, /^Gull 1/)).toHaveCount(1);
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  test('handing over and being offered fit the screen', async ({ page }) => {
    await openApp(page);
    await page.getByRole('button', { name: 'Hand over…' }).tap();
    await expect(handOver(page).getByRole('button', { name: 'Copy the link' })).toBeFocused();
    expect(await barriersOn(page)).toEqual([]);
    await handOver(page).getByRole('button', { name: 'Close' }).tap();
    await page.evaluate((fragment) => {
      location.hash = fragment;
    }, linkTo(fortyModules()));
    await expect(offer(page).getByRole('button', { name: 'Leave it' })).toBeFocused();
    expect(await barriersOn(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
  });
});
