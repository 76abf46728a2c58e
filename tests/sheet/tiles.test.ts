import fc from 'fast-check';
import { expect, test } from 'vitest';
import { OVERLAP_MM, tilesOf } from '../../src/sheet/tiles.ts';

test('a strip that fits is one tile, and one that does not is joined by letters', () => {
  expect(tilesOf(120, 265)).toEqual([{ fromMm: 0, toMm: 120, joins: {} }]);
  // 265, then from 255 on, 10 mm of which are on both.
  expect(tilesOf(435, 265)).toEqual([
    { fromMm: 0, toMm: 265, joins: { after: 'A' } },
    { fromMm: 255, toMm: 435, joins: { before: 'A' } },
  ]);
});

test('tiles cover the strip, none is too long, and neighbours have 10 mm in common under one letter', () => {
  const holds = (lengthMm: number, mostMm: number): void => {
    const tiles = tilesOf(lengthMm, mostMm);
    expect(tiles[0]?.fromMm).toBe(0);
    expect(tiles.at(-1)?.toMm).toBe(lengthMm);
    for (const [i, { fromMm, toMm, joins }] of tiles.entries()) {
      expect(toMm - fromMm).toBeLessThanOrEqual(mostMm + 1e-9);
      const next = tiles[i + 1];
      if (next) expect(toMm - next.fromMm).toBeCloseTo(OVERLAP_MM, 9);
      expect(next?.joins.before).toBe(joins.after);
    }
    const names = tiles.flatMap(({ joins }) => joins.after ?? []);
    expect(new Set(names).size).toBe(tiles.length - 1);
  };
  fc.assert(fc.property(fc.integer({ min: 1, max: 9000 }), fc.integer({ min: 60, max: 300 }), holds));
});
