import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Odds, squash } from '../../src/share/odds.ts';
import { BitReader, BitWriter } from '../../src/share/range-coder.ts';
import { fromBytes, toBytes } from '../../src/share/wide-text.ts';
import { runs } from '../support/runs.ts';

describe('odds', () => {
  it('follow the logistic curve', () => {
    for (let x = -2047; x <= 2047; x += 13) {
      expect(Math.abs(squash(x) - 4096 / (1 + Math.exp(-x / 256)))).toBeLessThan(16);
    }
  });

  it('come to expect what always comes, and never for certain', () => {
    const odds = new Odds();
    const banks = [odds.bank('a'), odds.bank('b')];
    const weights = odds.weights('w', 2);
    let last = 0;
    for (let i = 0; i < 3000; i++) {
      last = odds.guess(banks, 0, weights);
      odds.learn(1);
    }
    expect(last).toBeGreaterThan(4050);
    expect(last).toBeLessThan(4096);
  });
});

describe('bits', () => {
  it('come back as they were written, whatever the odds', () => {
    const one = fc.tuple(fc.constantFrom(0, 1), fc.integer({ min: 1, max: 4095 }));
    fc.assert(
      fc.property(fc.array(one, { maxLength: 400 }), (bits) => {
        const writer = new BitWriter();
        for (const [bit, odds] of bits) writer.code(bit, odds);
        const reader = new BitReader(writer.bytes());
        expect(bits.map(([, odds]) => reader.code(0, odds))).toEqual(bits.map(([bit]) => bit));
        expect(reader.isWhole).toBe(true);
      }),
      runs(300),
    );
  });

  it('take about as much room as the odds say', () => {
    const writer = new BitWriter();
    // 1,000 bits at odds of 1 in 8 against: 1,000 × log2(8 / 7) = 193 bits.
    for (let i = 0; i < 1000; i++) writer.code(1, 3584);
    expect(writer.bytes().length).toBeGreaterThanOrEqual(24);
    expect(writer.bytes().length).toBeLessThanOrEqual(26);
  });
});

describe('text as bytes', () => {
  it('comes back to the last unit, and holds no zero byte', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 0xffff })), (units) => {
        const text = String.fromCharCode(...units);
        const bytes = toBytes(text);
        expect(bytes).not.toContain(0);
        expect(fromBytes(bytes)).toBe(text);
      }),
      runs(300),
    );
  });

  it('is UTF-8 where there is any', () => {
    expect(toBytes('Ünïcode ✓ 🥁')).toEqual([...Buffer.from('Ünïcode ✓ 🥁')]);
  });
});
