import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mishapOf } from '../../src/wiring/mishap.ts';
import type { Misplug } from '../../src/wiring/pin-map.ts';

/*
 * Pinouts and the truth table of reversal: common practice, no source (the 16-way case is also told in public
 * question-and-answer threads); worked out again by hand, pin i meeting pin N + 1 − i.
 */
const TEN = ['-12', '-12', 'GND', 'GND', 'GND', 'GND', 'GND', 'GND', '+12', '+12'];
const SIXTEEN = [...TEN, '+5', '+5', 'CV', 'CV', 'gate', 'gate'];

const isVoltage = (line: string): boolean => /^[+-]/.test(line);
const reversed: Misplug = { type: 'reversed' };
const shifted = (rows: number, pairs: number): Misplug => ({ type: 'shifted', rows, pairs });

describe('a power connector plugged wrongly', () => {
  it('reversed, 10 on 10: GND stays, the two voltages change places', () => {
    const mishap = mishapOf(TEN, TEN, reversed, isVoltage);
    expect(mishap.meets).toEqual([
      { ribbon: '-12', module: '+12' },
      { ribbon: '+12', module: '-12' },
    ]);
    expect(mishap).toMatchObject({ ties: [], shorts: [], openPins: 0, openContacts: 0 });
  });

  it('reversed, 16 on 16: the module’s GND ties +12, +5 and CV together', () => {
    const mishap = mishapOf(SIXTEEN, SIXTEEN, reversed, isVoltage);
    expect(mishap.shorts).toEqual([['+12', '+5', 'CV']]);
    expect(mishap.meets).toContainEqual({ ribbon: '-12', module: 'gate' });
    expect(mishap.meets).toContainEqual({ ribbon: 'gate', module: '-12' });
    for (const module of ['+12', '+5', 'CV']) expect(mishap.meets).toContainEqual({ ribbon: 'GND', module });
  });

  it('one pair towards +12 on an open 10-way header: +12 is shorted to GND', () => {
    const mishap = mishapOf(TEN, TEN, shifted(0, -1), isVoltage);
    expect(mishap.shorts).toEqual([['GND', '+12']]);
    expect(mishap).toMatchObject({ openPins: 2, openContacts: 2 });
  });

  it('one pair towards −12: −12 is shorted to GND', () => {
    expect(mishapOf(TEN, TEN, shifted(0, 1), isVoltage).shorts).toEqual([['-12', 'GND']]);
  });

  it('three pairs off: no short yet, but the module’s ground sits on a voltage', () => {
    const mishap = mishapOf(TEN, TEN, shifted(0, -3), isVoltage);
    expect(mishap.shorts).toEqual([]);
    expect(mishap.meets).toContainEqual({ ribbon: '+12', module: 'GND' });
  });

  it('one row off: half the contacts work unnoticed, half hang free', () => {
    const mishap = mishapOf(TEN, TEN, shifted(1, 0), isVoltage);
    expect(mishap).toEqual({ meets: [], ties: [], shorts: [], openPins: 5, openContacts: 5 });
  });

  it('10 on 16 from pin 1: right, with +5, CV and gate open', () => {
    const mishap = mishapOf(TEN, SIXTEEN, shifted(0, 0), isVoltage);
    expect(mishap).toEqual({ meets: [], ties: [], shorts: [], openPins: 6, openContacts: 0 });
  });
});

describe('for any pinouts', () => {
  const line = fc.constantFrom('+12', '-12', '+5', 'GND', '', 'mix', 'strike', 'pitch');
  const pinout = fc
    .array(line, { minLength: 1, maxLength: 13 })
    .map((half) => [...half, ...half.slice().reverse()]);
  const misplug: fc.Arbitrary<Misplug> = fc.oneof(
    fc.constant(reversed),
    fc
      .tuple(fc.integer({ min: -2, max: 2 }), fc.integer({ min: -14, max: 14 }))
      .map(([r, p]) => shifted(r, p)),
  );

  it('counts every contact once: touching, or open; and every pin likewise', () => {
    fc.assert(
      fc.property(pinout, pinout, misplug, (contacts, pins, how) => {
        const { openPins, openContacts } = mishapOf(contacts, pins, how, isVoltage);
        expect(contacts.length - openContacts).toBe(pins.length - openPins);
        expect(openPins).toBeGreaterThanOrEqual(0);
        expect(openContacts).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('ties are disjoint, shorts are among them, and open pins join nothing', () => {
    fc.assert(
      fc.property(pinout, pinout, misplug, (contacts, pins, how) => {
        const { ties, shorts } = mishapOf(contacts, pins, how, isVoltage);
        const lines = ties.flat();
        expect(new Set(lines).size).toBe(lines.length);
        expect(lines).not.toContain('');
        for (const short of shorts) expect(ties).toContain(short);
        for (const tie of ties) expect(tie.length).toBeGreaterThan(1);
      }),
    );
  });

  it('turning the pins end for end and plugging reversed is plugging rightly', () => {
    fc.assert(
      fc.property(pinout, (pins) => {
        const turned = [...pins].reverse();
        expect(mishapOf(pins, turned, reversed, isVoltage)).toEqual(
          mishapOf(pins, pins, shifted(0, 0), isVoltage),
        );
      }),
    );
  });
});
