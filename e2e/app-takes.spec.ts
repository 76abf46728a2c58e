import type { Locator, Page } from 'playwright/test';
import { demoLayout } from '../src/layout/demo.ts';
import { linkOf } from '../src/share.ts';
import { barriersOn } from './accessibility.ts';
import { openApp } from './app-page.ts';
import { expect, test } from './fixtures.ts';

const panel = (page: Page): Locator => page.getByRole('region', { name: 'Takes compared' });
const takes = (page: Page): Locator => page.getByRole('navigation', { name: 'Takes' }).getByRole('tab');
const figure = (page: Page, what: string): Locator =>
  panel(page)
    .getByRole('row')
    .filter({ has: page.getByRole('rowheader', { name: what, exact: true }) });

test('takes are put in order and compared, also with a bandmate’s', async ({ page }) => {
  await openApp(page);
  await page.keyboard.press('g');
  await expect(panel(page)).toBeFocused();
  await expect(figure(page, 'Ribbons and leads').getByRole('cell')).toHaveText(['14', '13 (better)']);
  await expect(panel(page).getByRole('region', { name: 'Modules elsewhere' })).toContainText('Foghorn moved');
  await expect(panel(page).getByRole('region', { name: 'Notes it has besides' })).toContainText(
    'no power lead',
  );
  expect(await barriersOn(page)).toEqual([]);

  const name = panel(page).getByLabel('Name of the take');
  await name.fill('Evening');
  await name.press('Enter');
  await expect(takes(page)).toHaveText(['Evening', 'One long jetty']);
  await page.keyboard.press('Control+z');
  await expect(takes(page)).toHaveText(['Three jetties', 'One long jetty']);
  await panel(page).getByRole('button', { name: 'Add a take like this one' }).click();
  await expect(takes(page)).toHaveCount(3);
  await panel(page)
    .getByRole('button', { name: /^Delete|^Remove/ })
    .click();
  await expect(takes(page)).toHaveText(['Three jetties', 'One long jetty']);
  await page.keyboard.press('Control+z');
  await expect(takes(page)).toHaveCount(3);
  await page.keyboard.press('Control+z');
  await page.keyboard.press('[');
  await expect(takes(page).first()).toHaveAttribute('aria-selected', 'true');

  await panel(page).getByRole('button', { name: 'Later' }).click();
  await expect(takes(page)).toHaveText(['One long jetty', 'Three jetties']);
  await page.keyboard.press('Control+z');
  await expect(takes(page)).toHaveText(['Three jetties', 'One long jetty']);

  const [first] = demoLayout().takes;
  const theirs = {
    ...demoLayout(),
    title: 'By a bandmate',
    takes: first ? [{ ...first, name: 'Without leads', ribbons: first.ribbons.slice(0, 6) }] : [],
  };
  const link = linkOf(theirs, '');
  if (!link.ok) throw new Error('no link');
  const field = panel(page).getByLabel('A bandmate’s link');
  await field.fill(link.value);
  await field.press('Enter');
  await expect(panel(page).getByRole('columnheader', { name: 'Without leads' })).toBeVisible();
  await expect(figure(page, 'Ribbons and leads')).toContainText('6');
});

test('a proposed wiring arrives as a take of its own, explained, and one undo takes it back', async ({
  page,
}) => {
  await openApp(page);
  await page.keyboard.press(']');
  await page.keyboard.press('g');
  await panel(page).getByRole('button', { name: 'Propose wiring' }).press('Enter');
  await expect(panel(page).getByRole('button', { name: 'Cancel' })).toBeFocused();
  await expect(takes(page)).toHaveText(['Three jetties', 'One long jetty', 'One long jetty, proposed'], {
    timeout: 45_000,
  });
  await expect(takes(page).nth(2)).toHaveAttribute('aria-selected', 'true');
  const told = panel(page).getByRole('region', { name: 'Propose', exact: true });
  await expect(told).toContainText('Boulder 1 Not linked');
  await expect(told).toContainText('Proven to be the best there is in what stays unlinked');
  await expect(told.getByRole('region', { name: 'What was found' })).toBeFocused();
  await expect(told).toContainText('Damage and faults6 → becomes 1');
  await told.getByText('What changes, and why').click();
  await expect(told).toContainText('S1 taken out: because S1, connector 4 lands one pin row off Cobble 3');
  await expect(figure(page, 'Damage and faults').getByRole('cell')).toHaveText(['1 (better)', '6']);
  await page.keyboard.press('Control+z');
  await expect(takes(page)).toHaveText(['Three jetties', 'One long jetty']);

  await page.keyboard.press('[');
  await panel(page).getByRole('button', { name: 'Propose an arrangement' }).click();
  await panel(page).getByRole('button', { name: 'Cancel' }).click();
  await expect(panel(page).getByRole('button', { name: 'Propose an arrangement' })).toBeVisible();
  await expect(takes(page)).toHaveCount(2);
});
