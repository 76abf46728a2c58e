import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimalMarkOf, numberIn, numberText } from '../../src/table/number-text.ts';
import { runs } from '../support/runs.ts';

const read = (text: string, ...others: string[]) => {
  const found = numberIn(text, decimalMarkOf([text, ...others]));
  return found.ok ? found.value : found.error.is;
};

/* How numbers are written in spreadsheets of different countries: common practice, no source. */
describe('a number in a cell', () => {
  it.each([
    ['12', 12],
    ['12.5', 12.5],
    ['12,5', 12.5],
    ['-3,25', -3.25],
    ['−3', -3],
    ['+4', 4],
    [' 7 ', 7],
    [',5', 0.5],
    ['7½', 7.5],
    ['½', 0.5],
    ['0,125', 0.125],
    ['1,2345', 1.2345],
    ['1 200', 1200],
    ['1\u202f200,5', 1200.5],
    ['1’200.50', 1200.5],
    ['1.234,5', 1234.5],
    ['1,234.5', 1234.5],
    ['1.234.567', 1_234_567],
    ['1e-7', 1e-7],
    ['1,5e3', 1500],
  ])('%j is %d', (text, value) => {
    expect(read(text)).toBe(value);
  });

  it.each(['', 'five', '1,2,3', '12 5', '1.2.3,4', '0x10', 'Infinity', '1e999', '--3', '1,23,456'])(
    '%j is none',
    (text) => {
      expect(read(text)).toBe('no number');
    },
  );

  it('may be two where one mark stands before three digits; the rest of the table tells', () => {
    expect(read('1,250')).toBe('either');
    expect(read('1.250')).toBe('either');
    expect(read('1,250', '3,5')).toBe(1.25);
    expect(read('1,250', '3.5')).toBe(1250);
    expect(read('1.250', '3,5')).toBe(1250);
    expect(read('1,250', '3.5', '3,5')).toBe('either');
  });

  it('is written so that it says the same alone, by either mark', () => {
    const numbers = fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 });
    const rounded = fc.integer({ min: -2e6, max: 2e6 }).map((n) => n / 1000);
    fc.assert(
      fc.property(fc.oneof(numbers, rounded), fc.constantFrom('.' as const, ',' as const), (value, mark) => {
        expect(read(numberText(value, mark))).toBe(value + 0);
      }),
      runs(300),
    );
  });
});
