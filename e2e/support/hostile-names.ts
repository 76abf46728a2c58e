import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout } from '../../src/layout/layout.ts';

/** Names as nobody should type them, and somebody will; each ends in a tag by which it is found again. */
const NASTY = [
  (tag: string) => `</td></svg><script>alert(1)</script> ${tag}`,
  (tag: string) => `${'Donaudampfschiff'.repeat(9)} ${tag}`,
  (tag: string) => `"><img src=x onerror=alert(1)> & 'quoted' ${tag}`,
  (tag: string) => `\u202eurnwor drawkcab \u202d ${tag}`,
  (tag: string) => `${'W'.repeat(120)} ${tag}`,
  (tag: string) => `日本語の長い名前を持つモジュール 🥁🥁🥁 ${tag}`,
  (tag: string) => `many short words that go on and on until no panel has room for them any more ${tag}`,
  (tag: string) => `a\u0000b\ud800c e${'\u0301'.repeat(30)} ${tag}`,
];

const nasty = (i: number, tag: string): string => (NASTY[i % NASTY.length] as (tag: string) => string)(tag);

/** The demo with names that try to break out of a page, or off it. */
export function hostileNames(): Layout {
  const layout = demoLayout();
  return {
    ...layout,
    title: nasty(0, 'the-title'),
    takes: layout.takes.map((take) => ({
      ...take,
      name: nasty(2, 'the-take'),
      rows: take.rows.map((row, i) => ({ ...row, name: nasty(i + 4, `row-${i}`) })),
      modules: take.modules.map((module, i) => ({ ...module, label: nasty(i, `mod-${i}.`) })),
      ribbons: take.ribbons.map((ribbon, i) => ({ ...ribbon, label: nasty(i + 3, `rib-${i}.`) })),
      supplies: take.supplies.map((supply) => ({
        ...supply,
        name: nasty(1, 'the-supply'),
        boards: supply.boards.map((board, i) => ({ ...board, name: nasty(i + 1, `board-${i}.`) })),
      })),
    })),
  };
}
