import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseMeasure } from '../../../app/panels/case/parse-measure.ts';

describe('a measure that someone typed', () => {
  test.each([
    ['56', 'mm', 56],
    [' 56 mm ', 'mm', 56],
    ['5,6 cm', 'mm', 56],
    // 1 in = 25.4 mm exactly (international yard and pound agreement, 1959; from memory).
    ['2 in', 'mm', 50.8],
    ['2"', 'mm', 50.8],
    ['1.6 A', 'mA', 1600],
    ['800mA', 'mA', 800],
    ['104 HP', 'HP', 104],
    ['42½', 'HP', 42.5],
    ['1U', 'U', 1],
    ['−3', 'AWG', -3],
    ['.5', 'mm', 0.5],
  ] as const)('%s in %s is %d', (text, unit, value) => {
    expect(parseMeasure(text, unit)).toBe(value);
  });

  test.each(['', ' ', 'wide', '5 HP', '1e9', '0x10', '5 5', 'NaN', '--5', '5 constructor', '1.2.3'])(
    '%j is none',
    (text) => expect(parseMeasure(text, 'mm')).toBeNull(),
  );

  test('whatever is typed, it is a number or none', () => {
    const property = fc.property(fc.string(), (text) => {
      const value = parseMeasure(text, 'mm');
      expect(value === null || Number.isFinite(value)).toBe(true);
    });
    fc.assert(property);
  });
});
