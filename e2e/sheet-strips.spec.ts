import { readFileSync } from 'node:fs';
import { demoLayout } from '../src/layout/demo.ts';
import { benchSheet } from '../src/sheet/bench-sheet.ts';
import type { Paper } from '../src/sheet/sheet-page.ts';
import { expect, test } from './fixtures.ts';
import { readWords, type Word } from './support/read-pdf.ts';

/** Figures along each ruler: figures that stand at one height. */
function rulersOf(words: readonly Word[]): Map<number, { mm: number; xMm: number }[]> {
  const rulers = new Map<number, { mm: number; xMm: number }[]>();
  for (const { text, xMm, yMm } of words) {
    if (!/^\u2212?\d+0$|^0$/.test(text)) continue;
    const height = Math.round(yMm * 2) / 2;
    const ruler = rulers.get(height) ?? [];
    ruler.push({ mm: Number(text.replace('\u2212', '-')), xMm });
    rulers.set(height, ruler);
  }
  return rulers;
}

for (const [paper, barMm] of [
  ['a4', 100],
  ['letter', 98],
] as const satisfies readonly (readonly [Paper, number])[]) {
  test(`strips on ${paper} for a printer that makes ${barMm} mm of 100 are right to 0.2 mm`, async ({
    page,
  }, info) => {
    const options = { paper, barMm, everyPiece: true, pages: new Set(['strips'] as const) };
    await page.setContent(benchSheet(demoLayout(), 'three-jetties', options));
    const file = info.outputPath('strips.pdf');
    await page.pdf({ path: file, preferCSSPageSize: true, printBackground: true });
    expect(readFileSync(file).length).toBeGreaterThan(1000);
    let measured = 0;
    for (const words of readWords(file)) {
      for (const ruler of rulersOf(words).values()) {
        const [first, last] = [ruler[0], ruler.at(-1)];
        if (!first || !last || ruler.length < 5) continue;
        for (const { mm, xMm } of ruler) {
          const printedMm = ((xMm - first.xMm) * barMm) / 100;
          expect(Math.abs(printedMm - (mm - first.mm))).toBeLessThan(0.2);
        }
        measured++;
      }
    }
    // Ten kinds of ribbon are used, some on two tiles.
    expect(measured).toBeGreaterThanOrEqual(10);
  });
}

test('nothing on the pages stands out of its page', async ({ page }) => {
  for (const paper of ['a4', 'letter'] as const) {
    await page.setContent(benchSheet(demoLayout(), 'one-long-jetty', { paper, everyPiece: true }));
    const over = await page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>('.page > .body')]
        .filter(
          (body) => body.scrollHeight > body.clientHeight + 1 || body.scrollWidth > body.clientWidth + 1,
        )
        .map((body) => body.parentElement?.getAttribute('aria-label')),
    );
    expect(over).toEqual([]);
  }
});
