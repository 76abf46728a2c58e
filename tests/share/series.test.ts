import { describe, expect, it } from 'vitest';
import { idOf, nameOf, next, nextByFirst } from '../../src/share/series.ts';

describe('how names go on', () => {
  it.each([
    ['cobble-3', 'cobble-4'],
    ['S9', 'S10'],
    ['Board 09', 'Board 10'],
    ['jetty-a', 'jetty-b'],
    ['Jetty Y', 'Jetty Z'],
    ['Jetty Z', undefined],
    ['Gull', undefined],
    ['9999999999', undefined],
    [undefined, undefined],
  ])('%s → %s', (text, after) => {
    expect(next(text)).toBe(after);
  });

  it('by the first number of several', () => {
    expect(nextByFirst('Shore, 2 at 5 HP')).toBe('Shore, 3 at 5 HP');
  });

  it('as ids and names of each other', () => {
    expect(idOf('Shore, 2 at 5 HP')).toBe('shore-2-at-5-hp');
    expect(nameOf('jetty-a')).toBe('Jetty A');
  });

  it('only with letters that every machine knows alike', () => {
    expect(idOf('Böe')).toBe('böe');
    expect(idOf('Ωmega')).toBeUndefined();
    expect(nameOf('ωmega')).toBeUndefined();
  });
});
