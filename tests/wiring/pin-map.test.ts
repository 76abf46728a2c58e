import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { joinLines } from '../../src/wiring/joined-lines.ts';
import { mishapOf } from '../../src/wiring/mishap.ts';
import { type Misplug, pinMap } from '../../src/wiring/pin-map.ts';

/*
 * Numbers of pins (IEC 60603-13, as quoted in secondary texts): they run in pairs along the long side, pin
 * 2 · i + r + 1 in row r of pair i. Everything here counts from 1, as on a header; the program from 0.
 */
const touched = (contacts: number, pins: number, misplug: Misplug): (number | undefined)[] =>
  pinMap(contacts, pins, misplug).map((pin) => (pin === undefined ? undefined : pin + 1));

const reversed: Misplug = { type: 'reversed' };
const ways = fc.integer({ min: 1, max: 25 }).map((pairs) => 2 * pairs);
const offset = { rows: fc.integer({ min: -2, max: 2 }), pairs: fc.integer({ min: -26, max: 26 }) };

describe('which pin a contact touches', () => {
  it('displaced: contact (r, i) touches pin (r + rows, i + pairs), where there is one', () => {
    fc.assert(
      fc.property(ways, ways, fc.record(offset), (contacts, pins, by) => {
        const map = touched(contacts, pins, { type: 'shifted', ...by });
        for (let r = 0; r < 2; r++) {
          for (let i = 0; i < contacts / 2; i++) {
            const [row, pair] = [r + by.rows, i + by.pairs];
            const isThere = row >= 0 && row < 2 && pair >= 0 && pair < pins / 2;
            expect(map[2 * i + r]).toBe(isThere ? 2 * pair + row + 1 : undefined);
          }
        }
      }),
    );
  });

  it('turned end for end: contact k touches pin N + 1 − k', () => {
    fc.assert(
      fc.property(ways, ways, (contacts, pins) => {
        touched(contacts, pins, reversed).forEach((pin, i) => {
          const k = i + 1;
          expect(pin).toBe(k <= pins ? pins + 1 - k : undefined);
        });
      }),
    );
  });

  it('turned and displaced: as turned, and each from there by so many rows and pairs', () => {
    // On a header of three pairs contact 1 comes to pin 6; one pair towards pin 1 to pin 4, one row to pin 3.
    expect(touched(6, 6, { type: 'reversed', pairs: -1 })).toEqual([4, 3, 2, 1, undefined, undefined]);
    expect(touched(6, 6, { type: 'reversed', rows: -1, pairs: -1 })).toEqual([
      3,
      undefined,
      1,
      undefined,
      undefined,
      undefined,
    ]);
  });

  it('turning twice is the identity', () => {
    fc.assert(
      fc.property(ways, (pins) => {
        const once = pinMap(pins, pins, reversed) as number[];
        expect(once.map((pin) => once[pin])).toEqual(once.map((_, contact) => contact));
      }),
    );
  });

  it('agrees with the mishap told of it, and with what is tied', () => {
    const line = fc.constantFrom('+12', '-12', '+5', 'GND', '', 'mix', 'strike');
    const pinout = fc
      .array(line, { minLength: 1, maxLength: 13 })
      .map((half) => half.flatMap((l, i) => [l, half[half.length - 1 - i] as string]));
    const misplug: fc.Arbitrary<Misplug> = fc.record({
      type: fc.constantFrom('shifted' as const, 'reversed' as const),
      ...offset,
    });
    fc.assert(
      fc.property(pinout, pinout, misplug, (contacts, pins, how) => {
        const map = pinMap(contacts.length, pins.length, how);
        const mishap = mishapOf(contacts, pins, how, (l) => /^[+-]/.test(l));
        const touching = map.filter((pin) => pin !== undefined) as number[];
        expect(new Set(touching).size).toBe(touching.length);
        expect(mishap.openContacts).toBe(contacts.length - touching.length);
        expect(mishap.openPins).toBe(pins.length - touching.length);
        const foreign = contacts.flatMap((ribbon, contact) => {
          const pin = map[contact];
          return pin === undefined || pins[pin] === ribbon ? [] : [`${ribbon} on ${pins[pin]}`];
        });
        expect(new Set(mishap.meets.map(({ ribbon, module }) => `${ribbon} on ${module}`))).toEqual(
          new Set(foreign),
        );
        const joined = joinLines(contacts, pins, map);
        expect(joined.map(({ ribbon }) => ribbon).filter((lines) => lines.length > 1)).toEqual(mishap.ties);
        // Whatever touches is in one set, from both sides.
        contacts.forEach((ribbon, contact) => {
          const module = pins[map[contact] ?? -1];
          if (ribbon === '' || module === undefined || module === '') return;
          expect(joined.find((set) => set.ribbon.includes(ribbon))?.module).toContain(module);
        });
      }),
    );
  });
});

/*
 * The truth table of reversal. Pinouts: common practice, no source; what a turned plug does: calculated from pin i
 * meeting pin N + 1 − i, and worked out again by hand (the 16-way case is told in public question-and-answer
 * threads too). From the header's pin to the line of the ribbon that meets it.
 */
describe('the truth table of reversal', () => {
  const TEN = ['-12', '-12', 'GND', 'GND', 'GND', 'GND', 'GND', 'GND', '+12', '+12'];
  const SIXTEEN = [...TEN, '+5', '+5', 'CV', 'CV', 'gate', 'gate'];

  it.each([
    ['2 × 5', TEN, ['+12', '+12', 'GND', 'GND', 'GND', 'GND', 'GND', 'GND', '-12', '-12']],
    [
      '2 × 8',
      SIXTEEN,
      [
        ...['gate', 'gate', 'CV', 'CV', '+5', '+5', '+12', '+12'],
        ...['GND', 'GND', 'GND', 'GND', 'GND', 'GND', '-12', '-12'],
      ],
    ],
  ])('%s', (_, pinout, met) => {
    const map = pinMap(pinout.length, pinout.length, reversed);
    const byPin: string[] = [];
    map.forEach((pin, contact) => {
      if (pin !== undefined) byPin[pin] = pinout[contact] as string;
    });
    expect(byPin).toEqual(met);
  });
});
