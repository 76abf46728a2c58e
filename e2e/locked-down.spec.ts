import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { linkOf } from '../src/share/link.ts';
import { barriersOn } from './accessibility.ts';
import { openApp } from './app-page.ts';
import { expect, test } from './fixtures.ts';
import { hostileNames } from './support/hostile-names.ts';

test('the page refuses what is not its own: scripts in the text, eval, foreign addresses, plain text as HTML', async ({
  page,
  trouble,
}) => {
  const asked: (string | undefined)[] = [];
  const elsewhere = createServer(({ url }, response) => {
    asked.push(url);
    response.end();
  });
  await new Promise<void>((resolve) => elsewhere.listen(0, '127.0.0.1', resolve));
  await openApp(page);
  const outcome = await page.evaluate(
    async (foreign) => {
      const mark = window as { hacked?: number };
      const said: string[] = [];
      addEventListener('securitypolicyviolation', ({ effectiveDirective }) => said.push(effectiveDirective));
      /** From a timer of the page's own: what the test runner evaluates itself is not under the policy. */
      const tried = (work: () => unknown): Promise<string> =>
        new Promise((resolve) => {
          setTimeout(async () => {
            try {
              await work();
              resolve('allowed');
            } catch (error) {
              resolve((error as Error).name);
            }
          });
        });
      const put = <K extends keyof HTMLElementTagNameMap>(
        name: K,
        with_: Partial<HTMLElementTagNameMap[K]>,
      ) =>
        new Promise<void>((resolve, reject) => {
          const element = Object.assign(document.createElement(name), with_);
          element.onload = () => resolve();
          element.onerror = () => reject(new Error('refused'));
          document.body.append(element);
          setTimeout(() => reject(new Error('nothing')), 500);
        });
      const outcome = {
        text: await tried(() => put('script', { textContent: 'window.hacked = 1' })),
        attribute: await tried(() => document.body.setAttribute('onclick', 'window.hacked = 2')),
        html: await tried(() => {
          document.createElement('p').innerHTML = '<b>x</b>';
        }),
        eval: await tried(() =>
          (window as unknown as { eval: (text: string) => void }).eval('window.hacked = 3'),
        ),
        function: await tried(() => new Function('window.hacked = 4')()),
        timer: await tried(() => setTimeout('window.hacked = 5' as unknown as () => void)),
        fetch: await tried(() => fetch(foreign)),
        beacon: await tried(() => {
          if (!navigator.sendBeacon(foreign)) throw new Error('refused');
        }),
        picture: await tried(() => put('img', { src: `${foreign}x.png` })),
        dataPicture: await tried(() => put('img', { src: 'data:image/png;base64,AAAA' })),
        sheet: await tried(() => put('link', { rel: 'stylesheet', href: `${foreign}x.css` })),
        style: await tried(() => {
          const style = document.createElement('style');
          style.textContent = 'body { color: red }';
          document.head.append(style);
          if (style.sheet === null) throw new Error('refused');
        }),
        frame: await tried(() => put('iframe', { src: foreign })),
        thread: await tried(() => new Worker(`${foreign}x.js`)),
        blobThread: await tried(() => new Worker(URL.createObjectURL(new Blob(['self.x = 1'])))),
        wasm: await tried(() => WebAssembly.compile(new Uint8Array([0, 97, 115, 109, 1, 0, 0, 0]))),
      };
      await new Promise((resolve) => setTimeout(resolve, 100));
      return { outcome, hacked: mark.hacked, said };
    },
    `http://127.0.0.1:${(elsewhere.address() as AddressInfo).port}/`,
  );
  elsewhere.close();
  expect(
    Object.entries(outcome.outcome)
      .filter(([, how]) => how === 'allowed')
      .map(([what]) => what),
  ).toEqual(
    // The browser takes these without a word, and does nothing with them.
    ['beacon', 'frame'],
  );
  expect(outcome.hacked).toBeUndefined();
  expect(new Set(outcome.said)).toEqual(
    new Set([
      'connect-src',
      'frame-src',
      'img-src',
      'require-trusted-types-for',
      'script-src',
      'style-src-elem',
    ]),
  );
  expect(asked).toEqual([]);
  expect(trouble.length).toBeGreaterThan(0);
  trouble.splice(0);
});

// The tracer of the test runner puts a script of its own into the frame, which is told as trouble.
test.use({ trace: 'off' });

test('the sheet of a hostile layout runs nothing, and its preview looks as it is printed', async ({
  page,
}) => {
  // By a link: a picker that the test can answer would put a script into the frame.
  const link = linkOf(hostileNames());
  await openApp(page, link.ok ? `./${link.value}` : '');
  await page.getByRole('button', { name: 'Keep it' }).click();
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: /^Bench sheet/ }).click();
  const frame = page.frameLocator('.bench-sheet iframe');
  await expect(frame.locator('.page').first()).toBeVisible();
  // Laid out by the sheet's own style, which the policy knows by heart, on either paper.
  for (const [paper, size] of [
    ['A4', 'size: 210mm'],
    ['Letter', 'size: 215.9mm'],
  ] as const) {
    await page.getByRole('radio', { name: paper }).check();
    await expect.poll(() => frame.locator('style').textContent()).toContain(size);
    const look = await page.evaluate(() => {
      const sheet = document.querySelector('iframe')?.contentDocument;
      const style = sheet && getComputedStyle(sheet.documentElement);
      const cells = sheet?.querySelector('tr[style]');
      return [
        style?.backgroundColor,
        cells?.getAttribute('style') && getComputedStyle(cells).height !== 'auto',
      ];
    });
    expect(look).toEqual(['rgb(207, 211, 214)', true]);
  }
  expect(await frame.locator('script, img, [onerror]').count()).toBe(0);
});

test('all packages that are in the program are named with their terms', async ({ page }) => {
  await openApp(page);
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'Licences' }).click();
  const desk = page.getByRole('dialog', { name: 'Licences' });
  for (const name of ['Ribbonwright', 'react', 'konva', 'zustand', 'valibot', 'uqr', 'papaparse'])
    await expect(desk.locator('summary b', { hasText: new RegExp(`^${name}$`) })).toBeVisible();
  await desk.getByText('zustand').click();
  await expect(desk.locator('details[open] pre')).toContainText('Permission is hereby granted');
  expect(await barriersOn(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(desk).toBeHidden();
});
