import type { Page } from 'playwright/test';
import { applyEdit } from '../src/edit/apply.ts';
import type { Edit } from '../src/edit/edit.ts';
import { demoLayout } from '../src/layout/demo.ts';
import type { Layout } from '../src/layout/layout.ts';
import { linkOf } from '../src/share/link.ts';
import { barriersOn } from './accessibility.ts';
import { onRails, openApp } from './app-page.ts';
import { expect, test } from './fixtures.ts';
import { withPlainPicker } from './support/open-layout.ts';

const take = 'three-jetties';
const title = (page: Page) => page.getByLabel('Title of the layout', { exact: true });

/** The id under which the layout on the screen is kept. */
const idHere = (page: Page) =>
  page.evaluate(() => JSON.parse(sessionStorage.getItem('ribbonwright.layout') ?? '""') as string);

/** What a bandmate made of my layout. */
function theirsOf(parent: string, ...edits: readonly Edit[]): Layout {
  const mine: Layout = { ...demoLayout(), id: 'theirs', parent };
  return edits.reduce<Layout>((before, edit) => {
    const done = applyEdit(before, edit);
    if (!done.ok) throw new Error(done.error.message);
    return done.value;
  }, mine);
}

test('of a bandmate’s changes some are taken over, with what they need, as one step', async ({ page }) => {
  await withPlainPicker(page);
  await openApp(page);
  await title(page).fill('Mine');
  await title(page).press('Enter');
  await expect(page.locator('.kept-line')).toContainText('Saved');
  const theirs = theirsOf(
    await idHere(page),
    { type: 'remove-modules', take, modules: ['kelp'] },
    { type: 'rename-layout', title: 'Theirs' },
    { type: 'move-modules', take, moves: [{ module: 'gull-1', row: 'upper', atHp: 71 }] },
  );

  await test.step('by a link', async () => {
    const link = linkOf(theirs);
    await page.evaluate(
      (fragment) => {
        location.hash = fragment;
      },
      link.ok ? link.value : '',
    );
    const offer = page.getByRole('dialog', { name: 'A layout came with this link' });
    await expect(offer).toContainText('Against the layout that you have open');
    await expect(offer.getByRole('button', { name: 'Nothing of theirs is ticked' })).toBeVisible();
    await offer.getByRole('checkbox', { name: 'Kelp removed.' }).check();
    await expect(offer.getByRole('status').first()).toContainText(
      'Theirs comes along here as well, as it must: L7 taken out.',
    );
    await offer.getByRole('checkbox', { name: 'L7 taken out.' }).uncheck();
    await expect(offer.getByRole('checkbox', { name: 'Kelp removed.' })).not.toBeChecked();
    await offer.getByRole('checkbox', { name: 'Kelp removed.' }).check();
    await expect(offer).toContainText(/note.? would (come|go)|No note comes or goes/);
    expect(await barriersOn(page)).toEqual([]);
    await offer.getByRole('button', { name: 'Put 2 changes into mine' }).click();
    await expect(onRails(page, /^Kelp/)).toHaveCount(0);
    await expect(onRails(page, /^Gull 1/)).toHaveCount(1);
    await expect(title(page)).toHaveValue('Mine');
    await page.keyboard.press('Control+z');
    await expect(onRails(page, /^Kelp/)).toHaveCount(1);
  });

  await test.step('by a file, into a layout that is not open', async () => {
    await page.getByRole('button', { name: 'Menu' }).click();
    await page.getByRole('button', { name: /^New empty case/ }).click();
    await expect(title(page)).not.toHaveValue('Mine');
    const chooser = page.waitForEvent('filechooser');
    await page.keyboard.press('Control+o');
    const file = {
      name: 'a.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(theirs)),
    };
    await (await chooser).setFiles(file);
    const offer = page.getByRole('dialog', { name: 'The layout in this file comes from one of yours' });
    await expect(offer).toContainText('Against “Mine” in My layouts');
    await offer.getByRole('button', { name: 'All theirs' }).click();
    await offer.getByRole('button', { name: /^Put \d+ changes into mine$/ }).click();
    await expect(title(page)).toHaveValue('Theirs');
    await expect(onRails(page, /^Kelp/)).toHaveCount(0);
    await expect(page.getByRole('alert')).toContainText('of “Theirs” are in yours');
    await page.keyboard.press('Control+z');
    await expect(title(page)).toHaveValue('Mine');
  });
});
