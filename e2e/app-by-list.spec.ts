import { devices, type Locator, type Page } from 'playwright/test';
import { barriersOn } from './accessibility.ts';
import { onRails, openApp, spotOn, verdict } from './app-page.ts';
import { expect, test } from './fixtures.ts';

const CLEAR = 'No conflict found in the data entered';

const focused = (page: Page): Locator => page.locator(':focus');

/** A take with a dozen notes, each with its remedies, has as many. */
const MOST_STOPS = 200;

/** Presses Tab until something of that name has the keys. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let i = 0; i < MOST_STOPS; i++) {
    const now = await focused(page).evaluateAll(([element]) =>
      element ? (element.getAttribute('aria-label') ?? element.textContent ?? '') : '',
    );
    if (name.test(now)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`the keys never came to ${name}`);
}

/** Opens the list by the first stop of the keys. */
async function openList(page: Page): Promise<void> {
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  await tabTo(page, /^Skip to By list$/);
  await page.keyboard.press('Enter');
  await expect(focused(page)).toHaveRole('treeitem');
}

/** Goes through what shows of the list to an item of that name, from its top; opens what lies on the way. */
async function goTo(page: Page, ...names: readonly RegExp[]): Promise<void> {
  await page.keyboard.press('Home');
  for (const [i, name] of names.entries()) {
    if (i > 0) {
      if ((await focused(page).getAttribute('aria-expanded')) === 'false')
        await page.keyboard.press('ArrowRight');
      await page.keyboard.press('ArrowRight');
    }
    for (let step = 0; step < 80; step++) {
      if (name.test((await focused(page).getAttribute('aria-label')) ?? '')) break;
      await page.keyboard.press('ArrowDown');
    }
    await expect(focused(page)).toHaveAttribute('aria-label', name);
  }
}

/** Chooses by arrow keys among what can be done with the item that has the keys. */
async function choose(page: Page, ...labels: readonly RegExp[]): Promise<void> {
  await page.keyboard.press('Enter');
  for (const label of labels) {
    await expect(focused(page)).toHaveRole('menuitem');
    for (let step = 0; step < 60; step++) {
      if (label.test((await focused(page).textContent()) ?? '')) break;
      await page.keyboard.press('ArrowDown');
    }
    await expect(focused(page)).toHaveText(label);
    await page.keyboard.press('Enter');
  }
}

const said = (page: Page): Locator => page.getByRole('status');

test('by keys alone: an empty case becomes two linked, fed groups; a note is heard and mended', async ({
  page,
}) => {
  test.slow();
  await openApp(page);
  await tabTo(page, /^Menu$/);
  await page.keyboard.press('Enter');
  await tabTo(page, /^New empty case/);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('region', { name: 'My case' })).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(onRails(page, /./)).toHaveCount(0);
  await openList(page);
  await expect(focused(page)).toHaveAttribute('aria-label', /^Row 1, 84 HP, 0 modules$/);

  // Seven modules, each placed, then carried or typed to its place.
  const place = async (kind: RegExp, name: RegExp): Promise<void> => {
    await goTo(page, /^Row 1/);
    await choose(page, /^Place a module here/, kind);
    await expect(focused(page)).toHaveAttribute('aria-label', name);
    await expect(said(page)).toContainText(/placed at/);
  };
  const typeTo = async (hp: string): Promise<void> => {
    await choose(page, /^Move to/);
    await expect(focused(page)).toHaveRole('textbox');
    await page.keyboard.type(hp);
    await page.keyboard.press('Enter');
    await expect(focused(page)).toHaveAttribute('aria-label', new RegExp(`HP at ${hp} HP from the left`));
  };
  await place(/^Harbour/, /^Harbour, 10 HP at 0 HP/);
  await place(/^Jetty/, /^Jetty, 5 HP at 10 HP/);
  await place(/^Cobble/, /^Cobble, 5 HP at 15 HP/);
  await place(/^Cobble/, /^Cobble 2, 5 HP at 20 HP/);
  await place(/^Jetty/, /^Jetty 2, 5 HP at 25 HP/);
  await typeTo('40');
  await place(/^Cobble/, /^Cobble 3, 5 HP at 25 HP/);
  await typeTo('45');
  await place(/^Cobble/, /^Cobble 4, 5 HP at 25 HP/);

  // The last one is carried: left on the rear is right on the front.
  await choose(page, /^Pick up and carry/);
  for (let hp = 25; hp < 50; hp++) await page.keyboard.press('ArrowLeft');
  await expect(said(page)).toHaveText('50 HP, Row 1.');
  await page.keyboard.press('Enter');
  await expect(focused(page)).toHaveAttribute('aria-label', /^Cobble 4, 5 HP at 50 HP/);
  await expect(onRails(page, /^Cobble 4, 5 HP at 50/)).toHaveCount(1);

  // A shore ribbon from each Jetty: what is offered first is owned and lands on all three.
  const lay = async (module: RegExp): Promise<void> => {
    await goTo(page, /^Row 1/, module, /^shore header/);
    await choose(page, /^Lay a ribbon from here/, /3 of 3 connectors would land/);
    await expect(said(page)).toContainText(/laid: 3 of 3 connectors land\./);
    await expect(focused(page)).toHaveAttribute('aria-label', /^shore header, host, taken by S\d connector/);
  };
  await lay(/^Jetty, /);
  await lay(/^Jetty 2, /);

  // A tide ribbon from the Harbour, whose free socket takes the extension.
  await goTo(page, /^Row 1/, /^Harbour/, /^tide header/);
  await choose(
    page,
    /^Lay a ribbon from here/,
    /^Tide, 3 bending2 of 3 connectors would land, on Harbour and Jetty/,
  );
  await expect(said(page)).toContainText('T1 laid: 2 of 3 connectors land');
  await goTo(page, /^Ribbons and leads/, /^T1/, /^Connector \d, free/);
  await choose(page, /^Plug a ribbon into it/, /^Tide, extension.*Jetty 2/);
  await expect(said(page)).toContainText(/T2 laid: 2 of 3 connectors land/);
  await expect(focused(page)).toHaveAttribute('aria-label', /carries connector 3 of T2/);

  // Three leads, one of them chosen at its header, the rest in one go.
  await goTo(page, /^Row 1/, /^Harbour/, /^power header/);
  await choose(page, /^Feed it from Board, header \d/);
  await expect(focused(page)).toHaveAttribute('aria-label', /^power header, .*taken by L1/);
  await goTo(page, /^Supply/);
  await choose(page, /^Feed all that need it/);
  await expect(verdict(page)).toHaveText(CLEAR);
  await expect(focused(page)).toHaveAttribute('aria-label', /^Supply/);

  // Half an HP off: heard, found with the module, and mended by its remedy.
  await goTo(page, /^Row 1/, /^Cobble 2, /);
  await typeTo('20.5');
  await expect(said(page)).toContainText(
    /^Cobble 2 at 20\.5 HP, Row 1\. New note: .* one pin row off Cobble 2/,
  );
  await expect(focused(page)).toHaveAttribute('aria-label', /^Cobble 2, .*, 1 damage/);
  await choose(page, /one pin row off Cobble 2/);
  await expect(focused(page)).toHaveAttribute('aria-label', /one pin row off Cobble 2, damage$/);
  await expect(focused(page)).toHaveAttribute('aria-level', '3');
  await page.keyboard.press('Enter');
  await expect(said(page)).toContainText(/remed(y|ies) found/);
  await page.keyboard.press('Escape');
  await choose(page, /^Move Cobble 2/);
  await expect(verdict(page)).toHaveText(CLEAR);
  // Its note has gone; the keys are on what is nearest to it.
  await expect(focused(page)).toHaveRole('treeitem');
  await page.keyboard.press('Control+z');
  await expect(focused(page)).toHaveAttribute('aria-label', /one pin row off Cobble 2, damage$/);
  await page.keyboard.press('Control+y');
  await expect(verdict(page)).toHaveText(CLEAR);
  await expect(focused(page)).toHaveRole('treeitem');
});

test('what is chosen among is shown on the drawing, and Escape takes it back, page by page', async ({
  page,
}) => {
  await openApp(page);
  await openList(page);
  await goTo(page, /^Ribbons and leads/, /^S1/, /^Connector 5/);
  await choose(page, /^Lift it/);
  await expect(verdict(page)).not.toHaveText(CLEAR);
  await page.keyboard.press('Control+z');
  await expect(verdict(page)).toHaveText(CLEAR);
  // Shown, not done.
  await page.keyboard.press('Enter');
  await page.keyboard.type('l');
  await expect(focused(page)).toHaveText('Lift it');
  await expect(verdict(page)).not.toHaveText(CLEAR);
  await page.keyboard.press('ArrowUp');
  await expect(verdict(page)).toHaveText(CLEAR);
  await page.keyboard.press('Escape');
  await goTo(page, /^Ribbons and leads/, /^L4/, /^Connector 1/);
  await page.keyboard.press('Enter');
  await expect(focused(page)).toHaveText(/^Seat it elsewhere/);
  await page.keyboard.press('ArrowRight');
  await expect(focused(page)).toHaveText(/^Board 1, \d$/);
  await page.keyboard.press('Escape');
  await expect(focused(page)).toHaveText(/^Seat it elsewhere/);
  await page.keyboard.press('Escape');
  await expect(focused(page)).toHaveAttribute('aria-label', /^Connector 1/);
  await expect(page.getByRole('button', { name: /^Undo/ })).toHaveAttribute('aria-disabled', 'true');
});

test('the case turns to its rear for what lies there; Space selects, Del removes, F2 labels, focus stays', async ({
  page,
}) => {
  await openApp(page);
  await page.keyboard.press('t');
  await expect(page.getByText('FRONT', { exact: true })).toBeVisible();
  await openList(page);
  await goTo(page, /^Upper row/, /^Gull 1/);
  await expect(page.getByText('FRONT', { exact: true })).toBeVisible();
  await page.keyboard.press(' ');
  await expect(focused(page)).toHaveAttribute('aria-selected', 'true');
  await expect(onRails(page, /^Gull 1/)).toHaveAttribute('aria-selected', 'true');
  await page.keyboard.press('F2');
  await expect(focused(page)).toHaveRole('textbox');
  await expect(focused(page)).toHaveValue('Gull 1');
  await page.keyboard.type('Herring');
  await page.keyboard.press('Enter');
  await expect(focused(page)).toHaveAttribute('aria-label', /^Herring, 8 HP at 72/);
  await page.keyboard.press('Delete');
  await expect(focused(page)).toHaveAttribute('aria-label', /^Foghorn/);
  await expect(said(page)).toContainText(/^Herring removed\./);
  await page.keyboard.press('Control+z');
  await expect(focused(page)).toHaveAttribute('aria-label', /^Herring/);
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await expect(focused(page)).toHaveAttribute('aria-label', /^power header/);
  await expect(page.getByText('REAR', { exact: true })).toBeVisible();
  await expect(page.locator('.list-frame')).toBeVisible();
});

test('what is selected on the drawing is where the list stands', async ({ page }) => {
  await openApp(page);
  await page.getByRole('button', { name: 'By list', exact: true }).click();
  await expect(focused(page)).toHaveRole('treeitem');
  const { x, y } = await spotOn(page, /^Kelp/);
  await page.mouse.click(x, y);
  await expect(page.locator('[role=treeitem][tabindex="0"]')).toHaveAttribute('aria-label', /^Kelp/);
  await expect(page.locator('.by-list')).toBeFocused();
  await page.getByRole('treeitem', { name: /^Boulder 1/ }).click();
  await expect(onRails(page, /^Boulder 1/)).toHaveAttribute('aria-selected', 'true');
  await page.mouse.click(x, y, { button: 'right' });
  await expect(page.getByRole('menu', { name: 'Kelp' })).toBeVisible();
  await expect(page.getByRole('menuitem', { name: /^Pick up and carry/ })).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('menu')).toHaveCount(0);
});

for (const scheme of ['light', 'dark'] as const) {
  test(`nobody is shut out of the list and its choices, ${scheme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme: scheme });
    await openApp(page);
    await page.getByRole('tab', { name: 'One long jetty' }).click();
    await openList(page);
    await page.keyboard.press('*');
    expect(await barriersOn(page)).toEqual([]);
    await goTo(page, /^Upper row/, /^Cobble 3/);
    await page.keyboard.press('Enter');
    await expect(page.getByRole('menu')).toBeVisible();
    expect(await barriersOn(page)).toEqual([]);
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await expect(page.getByRole('dialog')).toBeVisible();
    expect(await barriersOn(page)).toEqual([]);
  });
}

test.describe('on a phone', () => {
  const { defaultBrowserType: _, ...phone } = devices['Pixel 7'];
  test.use({ ...phone, viewport: { width: 390, height: 844 } });

  test('the list folds to the bottom; a long press asks what can be done, in targets for fingers', async ({
    page,
  }) => {
    await openApp(page);
    await page.getByRole('button', { name: 'By list', exact: true }).last().tap();
    await expect(page.getByRole('tree')).toBeVisible();
    expect(await barriersOn(page)).toEqual([]);
    await page.getByRole('button', { name: 'Done', exact: true }).tap();
    await expect(page.getByRole('tree')).toHaveCount(0);
    const { x, y } = await spotOn(page, /^Harbour/);
    const session = await page.context().newCDPSession(page);
    const send = (type: 'touchStart' | 'touchEnd', points: { x: number; y: number }[]) =>
      session.send('Input.dispatchTouchEvent', { type, touchPoints: points });
    await send('touchStart', [{ x, y }]);
    await page.waitForTimeout(600);
    await send('touchEnd', []);
    const menu = page.getByRole('menu', { name: 'Harbour' });
    await expect(menu).toBeVisible();
    expect(await barriersOn(page)).toEqual([]);
    const heights = await menu
      .getByRole('menuitem')
      .evaluateAll((items) => items.map((item) => item.getBoundingClientRect().height));
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(44);
    await menu.getByRole('menuitem', { name: 'Pin in place' }).tap();
    await expect(onRails(page, /^Harbour, .*pinned/)).toHaveCount(1);
  });
});
