import { expect, test } from './fixtures.ts';

/** Takes the trouble noted so far out of the list, so that a test which provoked it on purpose still passes. */
const drain = (trouble: string[]) => trouble.splice(0);

test('a console error is trouble', async ({ page, trouble }) => {
  await page.goto('./');
  await page.evaluate(() => console.error('provoked'));
  expect(drain(trouble)).toEqual(['console error: provoked']);
});

test('an uncaught exception is trouble', async ({ page, trouble }) => {
  await page.goto('./');
  await page.evaluate(() => {
    setTimeout(() => {
      throw new Error('provoked');
    });
  });
  await expect.poll(() => drain(trouble)).toEqual(['uncaught: provoked']);
});

test('a request to another host is trouble', async ({ page, trouble }) => {
  await page.route('http://elsewhere.test/**', (route) => route.fulfill({ body: '' }));
  // The app's own page would not even ask.
  await page.goto('./licences.json');
  await page.evaluate(() => fetch('http://elsewhere.test/', { mode: 'no-cors' }));
  expect(drain(trouble)).toEqual(['request to another host: http://elsewhere.test/']);
});

test('a request for a missing file is trouble and answers 404', async ({ page, trouble }) => {
  await page.goto('./');
  const status = await page.evaluate(async () => (await fetch('./no-such-file.js')).status);
  expect(status).toBe(404);
  expect(drain(trouble)).toEqual([expect.stringContaining('404')]);
});

test('a breach of the content policy is trouble', async ({ page, trouble }) => {
  await page.goto('./');
  await page.evaluate(() => fetch('http://elsewhere.test/').catch(() => {}));
  await expect.poll(() => trouble.some((line) => line.includes('content policy: connect-src'))).toBe(true);
  drain(trouble);
});

test('unexpected trouble fails the test that saw it (so this one is meant to fail)', async ({ page }) => {
  test.fail();
  await page.goto('./');
  await page.evaluate(() => console.error('provoked'));
});
