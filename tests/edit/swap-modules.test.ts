import { describe, expect, it } from 'vitest';
import type { Module } from '../../src/layout/layout.ts';
import { applied, littleLayout, module, refusalOf, takeOf } from '../support/little-layout.ts';

const swap = (a: string, b: string) => ({ type: 'swap-modules', take: 'take', modules: [a, b] }) as const;

const placesAfter = (...modules: readonly Module[]) =>
  takeOf(applied(littleLayout({ modules }), swap('a', 'b'))).modules.map(({ row, atHp }) => [row, atHp]);

describe('swap-modules', () => {
  it('keeps the outer ends of two that touch, whichever is named first', () => {
    const expected = [
      ['top', 18],
      ['top', 3],
    ];
    expect(placesAfter(module('a', 'cobble', 3), module('b', 'boulder', 8))).toEqual(expected);
    expect(placesAfter(module('b', 'cobble', 3), module('a', 'boulder', 8))).toEqual(expected);
  });

  it('exchanges left edges otherwise, also across rows', () => {
    expect(placesAfter(module('a', 'cobble', 3), module('b', 'boulder', 8.5))).toEqual([
      ['top', 8.5],
      ['top', 3],
    ]);
    expect(placesAfter(module('a', 'cobble', 3), module('b', 'boulder', 8, { row: 'low' }))).toEqual([
      ['low', 8],
      ['top', 3],
    ]);
  });

  it('gives back what was when done twice', () => {
    const layout = littleLayout({ modules: [module('a', 'gull', 3), module('b', 'boulder', 7.5)] });
    expect(applied(applied(layout, swap('a', 'b')), swap('b', 'a'))).toEqual(layout);
  });

  it('changes nothing for a module and itself', () => {
    const layout = littleLayout({ modules: [module('a', 'cobble', 3)] });
    expect(applied(layout, swap('a', 'a'))).toBe(layout);
  });

  it('is refused where one is pinned', () => {
    const modules = [module('a', 'cobble', 3), module('b', 'gull', 8, { pinned: true, label: 'Beak' })];
    expect(refusalOf(littleLayout({ modules }), swap('a', 'b'))).toBe('Beak is pinned');
    expect(refusalOf(littleLayout({ modules }), swap('b', 'a'))).toBe('Beak is pinned');
  });
});
