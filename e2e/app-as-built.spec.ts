import { devices, type Locator, type Page } from 'playwright/test';
import { demoLayout } from '../src/layout/demo.ts';
import { barriersOn } from './accessibility.ts';
import { openApp, spotOn, verdict } from './app-page.ts';
import { expect, test } from './fixtures.ts';

const panel = (page: Page): Locator => page.getByRole('region', { name: 'As built', exact: true });
const changes = (page: Page): Locator => page.getByRole('region', { name: 'Change sheet' });

/** Passes all tests of every harness. */
async function testAll(page: Page): Promise<void> {
  const left = panel(page).getByRole('button', { name: /^All three tests of / });
  for (let more = await left.count(); more > 0; more--) {
    await left.first().click();
    await expect(left).toHaveCount(more - 1);
  }
}

test('every test ticked makes it built and tested; ½ HP names what to test again, and undo takes that back', async ({
  page,
}) => {
  await openApp(page);
  await page.keyboard.press('a');
  await expect(panel(page)).toBeFocused();
  const ofS1 = panel(page).getByRole('group', { name: 'Tests of S1', exact: true });
  for (const name of ['Stripe', 'Continuity', 'No short']) await ofS1.getByRole('checkbox', { name }).check();
  await expect(verdict(page)).toHaveText('No conflict found in the data entered');
  await testAll(page);
  await expect(verdict(page)).toHaveText('Built and tested');
  await expect(panel(page).getByRole('status')).toContainText('12 of 12 harnesses tested');
  expect(await barriersOn(page)).toEqual([]);

  await page.keyboard.press('Escape');
  const { x, y } = await spotOn(page, /^Foghorn/);
  await page.mouse.click(x, y);
  await page.keyboard.press('Alt+ArrowLeft');
  await expect(verdict(page)).toHaveText(/^Changed since test: test \S+ again$/);
  const [, ribbon = ''] = /test (\S+) again/.exec((await verdict(page).textContent()) ?? '') ?? [];
  await expect(page.getByText(new RegExp(`Test again: ${ribbon}\\.`))).toBeAttached();
  await page.keyboard.press('a');
  const again = panel(page).getByRole('listitem').filter({ hasText: 'changed since test: test again' });
  await expect(again).toHaveCount(1);
  await again.getByRole('button', { name: ribbon, exact: true }).click();
  await page.keyboard.press('a');
  await expect(page.getByText('Changed since test: test again', { exact: true })).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(verdict(page)).toHaveText('Built and tested');
  await expect(page.getByText('Tested as built')).toBeVisible();
});

test('what the meter shows is told against what is expected, and adopted as a fact', async ({ page }) => {
  await openApp(page);
  await page.keyboard.press('a');
  const alone = panel(page).getByRole('group', { name: 'Measured at Supply' }).first();
  const volts = alone.getByLabel(/^\+12 V measured at Supply, V$/);
  await volts.fill('11,95');
  await volts.press('Enter');
  await expect(alone).toContainText('as expected');
  await volts.fill('10.9');
  await volts.press('Enter');
  await expect(alone).toContainText('1.1 V too little: power off, look why');

  const foghorn = panel(page).getByRole('group', { name: 'Measured at Foghorn' });
  const current = foghorn.getByLabel(/^\+12 V measured at Foghorn, mA$/);
  const expected = demoLayout().kit.modules.find(({ name }) => name === 'Foghorn')?.draws['+12'] ?? 0;
  await expect(current).toHaveAttribute('placeholder', String(expected));
  await current.fill(`${expected + 50} mA`);
  await current.press('Enter');
  await expect(foghorn).toContainText('50 mA more than expected');
  await expect(page.getByText(`+12 V ${expected} → ${expected + 50} mA`)).toBeVisible();
  await panel(page).getByRole('button', { name: 'Adopt for Foghorn' }).click();
  await expect(current).toHaveAttribute('placeholder', String(expected + 50));
  await expect(page.getByRole('button', { name: /980\/1600/ })).toBeVisible();
  await page.getByRole('button', { name: /^Undo adopt what was measured of Foghorn/ }).click();
  await expect(page.getByRole('button', { name: /930\/1600/ })).toBeVisible();
});

test('one take is in the case, and a change sheet leads from it to another', async ({ page }) => {
  await openApp(page);
  await page.keyboard.press('a');
  await panel(page).getByRole('button', { name: 'Mark this take as in the case' }).click();
  await expect(panel(page)).toContainText('This take is what is in the case.');
  await page.getByRole('tab', { name: 'One long jetty' }).click();
  await expect(panel(page)).toContainText('“Three jetties” is what is in the case.');
  await panel(page).getByRole('button', { name: 'From what is in the case to this take' }).click();
  const stages = changes(page).getByRole('heading', { level: 3 });
  await expect(stages.first()).toHaveText(/^(Before you begin, have these|Power off first)$/);
  await expect(stages.last()).toHaveText('Power up');
  const off = changes(page).getByRole('checkbox', { name: /^Switch off and unplug/ });
  await off.check();
  await expect(off).toBeChecked();
  expect(await barriersOn(page)).toEqual([]);
  await changes(page).getByRole('button', { name: 'Mark this take as in the case' }).click();
  await expect(changes(page)).toContainText('This take is what is in the case.');
  await page.keyboard.press('Control+z');
  await expect(off).toBeChecked();
  await page.keyboard.press('Control+z');
  await expect(off).not.toBeChecked();
});

test.describe('phone in hand', () => {
  const { defaultBrowserType: _, ...phone } = devices['Pixel 7'];
  test.use({ ...phone, viewport: { width: 390, height: 844 } });

  test('everything is large enough for a thumb and nothing wider than the screen', async ({ page }) => {
    await openApp(page);
    await page.getByRole('button', { name: 'Menu' }).tap();
    await page.getByRole('button', { name: /^As built/ }).tap();
    await panel(page).getByRole('button', { name: 'All three tests of S1' }).tap();
    await expect(panel(page).getByRole('status')).toContainText('1 of 12 harnesses tested');
    await panel(page).getByText('Meter: expected').nth(1).tap();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    const small = await panel(page).evaluate((root) =>
      [...root.querySelectorAll('button, summary, .bench-tick, .field')]
        .map((element) => ({ element, box: element.getBoundingClientRect() }))
        .filter(({ box }) => box.width > 0 && (box.height < 44 || box.width < 44))
        .map(({ element }) => element.getAttribute('aria-label') || element.textContent),
    );
    expect(small).toEqual([]);
    expect(await barriersOn(page)).toEqual([]);
  });
});
