import { describe, expect, it } from 'vitest';
import { markup } from '../../src/sheet/markup.ts';
import { type Block, stack, type Table, tablesOnPages } from '../../src/sheet/paginate.ts';

const table = (rows: number, text = 'cell'): Table => ({
  heading: 'Things',
  columns: [
    { head: 'Name', widthMm: 40 },
    { head: 'Figure', widthMm: 20, align: 'right' },
  ],
  rows: Array.from({ length: rows }, (_, i) => ({ cells: [`${text} ${i}`, '1'] })),
});

const rowsIn = (text: string): number => text.match(/<tr style/g)?.length ?? 0;
const heights = (text: string): number[] =>
  Array.from(text.matchAll(/<(?:tr|h2|p) style="height:([\d.]+)mm/g), ([, mm]) => Number(mm));

describe('tables on pages', () => {
  it('are cut so that no page is too high, and every row stands once', () => {
    const pages = tablesOnPages([table(100)], { widthMm: 60, heightMm: 120 });
    expect(pages.length).toBeGreaterThan(4);
    for (const { text } of pages) expect(heights(text).reduce((a, b) => a + b, 0)).toBeLessThanOrEqual(120);
    const all = pages.map(({ text }) => text).join('');
    for (let i = 0; i < 100; i++) expect(all.split(`>cell ${i}<`)).toHaveLength(2);
    expect(pages[1]?.text).toContain('Things, continued');
  });

  it('follow one another while there is room', () => {
    expect(tablesOnPages([table(2), table(2)], { widthMm: 60, heightMm: 120 })).toHaveLength(1);
    expect(tablesOnPages([table(0)], { widthMm: 60, heightMm: 120 })).toEqual([]);
  });

  it('are not parted where they are short', () => {
    const pages = tablesOnPages([table(14), table(3)], { widthMm: 60, heightMm: 120 });
    expect(pages.map(({ text }) => rowsIn(text))).toEqual([15, 4]);
    expect(pages[1]?.text).not.toContain('continued');
  });

  it('cut a row that is higher than a page', () => {
    const pages = tablesOnPages([table(1, 'word '.repeat(900))], { widthMm: 60, heightMm: 100 });
    expect(pages.length).toBeGreaterThan(3);
    expect(
      pages
        .map(({ text }) => text)
        .join('')
        .match(/word/g),
    ).toHaveLength(900);
    for (const { text } of pages) expect(rowsIn(text)).toBeLessThan(4);
  });
});

describe('blocks', () => {
  const block = (heightMm: number): Block => ({ heightMm, body: markup`<i>${heightMm}</i>` });

  it('go on the next page where they have no room', () => {
    const pages = stack([block(40), block(40), block(40)], 100).map(({ text }) => text);
    expect(pages).toEqual(['<i>40</i><i>40</i>', '<i>40</i>']);
  });
});
