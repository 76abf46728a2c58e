import { describe, expect, it } from 'vitest';
import { nearest } from '../../src/layout/nearest.ts';

describe('nearest', () => {
  it.each([
    ['cobbel', ['boulder', 'cobble', 'gull'], 'cobble'],
    ['widthHp', ['name', 'widthHP'], 'widthHP'],
    ['s9', ['s1', 's2'], 's1'],
    ['three-jettys', ['one-jetty', 'three-jetties'], 'three-jetties'],
    ['shore', ['tide', 'power'], undefined],
    ['x', ['y', ''], 'y'],
    ['', ['a'], 'a'],
    ['a'.repeat(41), ['a'.repeat(41)], undefined],
  ])('%s', (word, words, expected) => {
    expect(nearest(word, words)).toBe(expected);
  });

  it('gives the first of several as near', () => {
    expect(nearest('cobble', ['cobbls', 'cobblt', 'gobble'])).toBe('cobbls');
  });
});
