import type { Page } from 'playwright/test';
import { onRails, openApp } from './app-page.ts';
import { expect, test } from './fixtures.ts';

/*
 * What the screens look like, against pictures that were looked at (`npm run golden` takes them anew). Letters are drawn
 * a little differently from browser to browser, so a share of the pixels may differ; each picture is taken with something
 * broken as well, and must then be refused.
 */

/** Of a screen; of a detail, in which a stripe on the wrong side is some hundred pixels. */
const SCREEN = { maxDiffPixelRatio: 0.006, threshold: 0.06 };
const DETAIL = { maxDiffPixelRatio: 0.004 };

/** The pictures were taken with the letters of Debian's `fonts-dejavu-core`. */
async function skipOtherLetters(page: Page): Promise<void> {
  const isSame = await page.evaluate(() => {
    const context = document.createElement('canvas').getContext('2d');
    const width = (font: string): number => {
      if (!context) return 0;
      context.font = `40px ${font}`;
      return context.measureText('Ribbonwright 0123456789').width;
    };
    return width('system-ui') === width('"DejaVu Sans", monospace');
  });
  test.skip(!isSame, 'the letters of this system are not those of the pictures');
}

test.beforeEach(async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await openApp(page);
  await skipOtherLetters(page);
  // What the first picture does not wait for comes in parts of its own.
  await page.waitForLoadState('networkidle');
  await expect(page.getByRole('button', { name: /^Turn/ })).toBeVisible();
});

/** All words are there; that the picture itself has come to rest is seen to where it is compared. */
const rested = (page: Page): Promise<void> => expect(page.locator('.verdict')).not.toContainText('Checking');

/** Rules over those of the page, in place of the ones before; a style element would be against its policy. */
const restyle = (page: Page, rules: string): Promise<void> =>
  page.evaluate((text) => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(text);
    document.adoptedStyleSheets = [sheet];
  }, rules);

/** The drawing of some modules with their wiring, from the upper rail to the section below. */
async function detail(page: Page, from: string, to: string) {
  const [a, b] = [
    await onRails(page, new RegExp(`^${from},`)).boundingBox(),
    await onRails(page, new RegExp(`^${to},`)).boundingBox(),
  ];
  if (!a || !b) throw new Error('not on the rails');
  const left = Math.min(a.x, b.x);
  const right = Math.max(a.x + a.width, b.x + b.width);
  return { clip: { x: left, y: a.y, width: right - left, height: a.height * 1.4 } };
}

test.describe('on a desk', () => {
  test.use({ viewport: { width: 1280, height: 720 } });

  test('rear and front look as they did; what is missing or too large is seen', async ({ page }) => {
    await rested(page);
    await expect(page).toHaveScreenshot('rear-light.png', SCREEN);
    for (const broken of [
      'canvas { visibility: hidden }',
      '.margin { display: none }',
      'body * { font-size: 15px !important }',
    ]) {
      await restyle(page, broken);
      await expect(page).not.toHaveScreenshot('rear-light.png', SCREEN);
    }
    await restyle(page, '');
    await page.keyboard.press('t');
    await rested(page);
    await expect(page).toHaveScreenshot('front-light.png', SCREEN);
    await page.emulateMedia({ colorScheme: 'dark' });
    await rested(page);
    await expect(page).not.toHaveScreenshot('front-light.png', SCREEN);
    await page.keyboard.press('t');
    await rested(page);
    await expect(page).toHaveScreenshot('rear-dark.png', SCREEN);
  });

  test('a take with notes looks as it did, and one that is missing is seen', async ({ page }) => {
    await page.keyboard.press(']');
    await rested(page);
    // Remedies are looked for between frames.
    for (const remedy of ['Move Cobble 3 to 25 HP', /^Feed it by/])
      await expect(page.getByRole('button', { name: remedy }).first()).toBeVisible();
    await expect(page).toHaveScreenshot('notes-light.png', SCREEN);
    const margin = page.locator('.margin');
    await expect(margin).toHaveScreenshot('notes-margin.png', DETAIL);
    await restyle(page, '.notes > :first-child { display: none }');
    await expect(margin).not.toHaveScreenshot('notes-margin.png', DETAIL);
  });

  test('a ribbon looks as it did; a turned one and leads that are hidden are seen', async ({ page }) => {
    await rested(page);
    const at = await detail(page, 'Boulder 1', 'Jetty A');
    const differs = (): Promise<void> =>
      expect(page).not.toHaveScreenshot('ribbon-light.png', { ...DETAIL, ...at });
    await expect(page).toHaveScreenshot('ribbon-light.png', { ...DETAIL, ...at });
    await page.keyboard.press('h');
    await rested(page);
    await differs();
    await page.keyboard.press('h');
    const { clip } = at;
    const stripe = { x: clip.x + clip.width * 0.72, y: clip.y + (clip.height / 1.4) * 0.705 };
    await page.mouse.click(stripe.x, stripe.y);
    await page.getByRole('region', { name: 'This part' }).getByRole('button', { name: /^Turn/ }).click();
    await page.keyboard.press('Escape');
    await page.mouse.move(640, 8);
    await rested(page);
    await differs();
    await page.keyboard.press('Control+z');
    await onRails(page, /^Cobble 1,/).focus();
    await rested(page);
    await expect(page).toHaveScreenshot('ribbon-light.png', { ...DETAIL, ...at });
  });
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('it looks as it did, and another look is seen', async ({ page }) => {
    await rested(page);
    await expect(page).toHaveScreenshot('phone-light.png', SCREEN);
    await page.getByRole('button', { name: 'Menu' }).tap();
    await page.getByRole('button', { name: 'Dim, for the stage' }).tap();
    await page.keyboard.press('Escape');
    await rested(page);
    await expect(page).toHaveScreenshot('phone-dim.png', SCREEN);
    await page.getByRole('button', { name: 'Menu' }).tap();
    await page.getByRole('button', { name: 'Light', exact: true }).tap();
    await page.keyboard.press('Escape');
    await page.evaluate(() => {
      document.documentElement.style.fontSize = '18px';
    });
    await rested(page);
    await expect(page).not.toHaveScreenshot('phone-light.png', SCREEN);
  });
});
