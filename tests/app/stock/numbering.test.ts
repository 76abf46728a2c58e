import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { numberOf, pinOf, withListed } from '../../../app/stock/numbering.ts';
import { runs } from '../../support/runs.ts';

const pairs = fc.integer({ min: 1, max: 64 });

describe('the numbers of pins', () => {
  it('go across and on as on a pin header, down one side and up the other as on a chip (common practice, no source)', () => {
    const numbers = (numbering: 'zigzag' | 'down') =>
      Array.from({ length: 10 }, (_, pin) => numberOf(pin, 10, numbering));
    expect(numbers('zigzag')).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    // Row by row: 1 10, 2 9, 3 8, 4 7, 5 6.
    expect(numbers('down')).toEqual([1, 10, 2, 9, 3, 8, 4, 7, 5, 6]);
  });

  it('are each borne by one pin, and lead back to it', () => {
    const property = fc.property(pairs, fc.constantFrom('zigzag', 'down' as const), (half, numbering) => {
      const count = half * 2;
      const numbers = Array.from({ length: count }, (_, pin) => numberOf(pin, count, numbering));
      expect([...numbers].sort((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, i) => i + 1));
      expect(numbers.map((number) => pinOf(number, count, numbering))).toEqual(numbers.map((_, pin) => pin));
    });
    fc.assert(property, runs(100));
  });
});

describe('a list of lines', () => {
  it('fills the pins from one on, in the order of the numbers', () => {
    const none = ['', '', '', '', '', ''];
    expect(withListed(none, ['a', 'b', 'c'], 0, 'zigzag')).toEqual(['a', 'b', 'c', '', '', '']);
    expect(withListed(none, ['a', 'b', 'c', 'd', 'e', 'f', 'g'], 0, 'down')).toEqual([
      'a',
      'f',
      'b',
      'e',
      'c',
      'd',
    ]);
    expect(withListed(none, ['x', 'y', 'z'], 4, 'zigzag')).toEqual(['', '', '', '', 'x', 'y']);
  });

  it('said in one order means the same pins as its reading in the other', () => {
    const lines = fc.array(fc.string({ maxLength: 3 }), { minLength: 2, maxLength: 40 });
    const property = fc.property(lines, (some) => {
      const ours = some.slice(0, some.length - (some.length % 2));
      const chip = ours.map((_, i) => ours[pinOf(i + 1, ours.length, 'down')] as string);
      expect(
        withListed(
          ours.map(() => ''),
          chip,
          0,
          'down',
        ),
      ).toEqual(ours);
    });
    fc.assert(property, runs(100));
  });
});
