import { describe, expect, it } from 'vitest';
import {
  CONDUCTOR_MM,
  headerBodyMm,
  NOTCH_MM,
  PIN_MM,
  pinFieldMm,
  pinOffsets,
  ribbonWidthMm,
  socketBodyMm,
} from '../../src/geometry/connector.ts';

const PINS = [10, 14, 16, 20, 26, 34, 40, 50] as const;

const within = (value: number, expected: number, tolerance: number): void =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);

describe('grid', () => {
  // IEC 60603-13, as quoted in secondary texts: basic grid of 2.54 mm; ribbon pitch 0.050 in.
  it('is 2.54 mm, and 1.27 mm on the ribbon', () => {
    expect(PIN_MM).toBe(2.54);
    expect(CONDUCTOR_MM).toBe(1.27);
    expect(PIN_MM).toBe(2 * CONDUCTOR_MM);
  });

  // Public footprints for 10 and 16 pins, the rest computed: 2.54 (N/2 − 1).
  it.each([
    [10, 10.16],
    [14, 15.24],
    [16, 17.78],
    [20, 22.86],
    [26, 30.48],
    [34, 40.64],
    [40, 48.26],
    [50, 60.96],
  ])('puts the first and last of %i pins %f mm apart', (pins, fieldMm) => {
    expect(pinFieldMm(pins)).toBe(fieldMm);
  });
});

describe('ribbons', () => {
  // Computed from the pitch: N × 1.27 mm.
  it.each([
    [10, 12.7],
    [14, 17.78],
    [16, 20.32],
    [20, 25.4],
    [26, 33.02],
    [34, 43.18],
    [40, 50.8],
    [50, 63.5],
  ])('of %i conductors are %f mm wide', (conductors, widthMm) => {
    expect(ribbonWidthMm(conductors)).toBe(widthMm);
  });

  // Printed for ribbon of half this pitch (0.635 mm), secondary text: B = N × pitch, twice that at 1.27 mm.
  it.each([
    [20, 12.7],
    [50, 31.75],
    [100, 63.5],
  ])('follow the printed rule: %i conductors at half the pitch are %f mm', (conductors, printedMm) => {
    expect(ribbonWidthMm(conductors) / 2).toBeCloseTo(printedMm, 10);
  });
});

describe('headers', () => {
  // Box headers after DIN 41651 / IEC 60603-13, as quoted in public footprints for 10 and 16 pins, the rest
  // computed.
  it.each([
    [10, 20.36],
    [14, 25.44],
    [16, 27.98],
    [20, 33.06],
    [26, 40.68],
    [34, 50.84],
    [40, 58.46],
    [50, 71.16],
  ])('with %i pins in a box are %f mm long', (pins, longMm) => {
    within(headerBodyMm(pins, true).longMm, longMm, 0.3);
  });

  // The same footprints 8.90 mm, another 9.10 mm; makers differ.
  it('in a box are 8.9 to 9.1 mm wide', () => {
    for (const pins of PINS) {
      within(headerBodyMm(pins, true).wideMm, 8.9, 0.3);
      within(headerBodyMm(pins, true).wideMm, 9.1, 0.3);
    }
  });

  // An independent public model of a 2 × 10 box header: 33.00 × 9.10 mm.
  it('agree with an independent model of 20 pins', () => {
    const { longMm, wideMm } = headerBodyMm(20, true);
    within(longMm, 33.0, 0.3);
    within(wideMm, 9.1, 0.3);
  });

  // Common practice, no source: a bare header is one cell of the grid for each pin.
  it('without a box cover the cells of their pins', () => {
    for (const pins of PINS) {
      const { longMm, wideMm } = headerBodyMm(pins, false);
      expect(longMm).toBeCloseTo((pins / 2) * 2.54, 10);
      expect(wideMm).toBe(5.08);
      expect(longMm).toBeLessThan(headerBodyMm(pins, true).longMm);
    }
  });

  // Public footprints: notch 4.10 mm, in the middle of the odd-pin side.
  it('have a notch of 4.1 mm that even the shortest box has room for', () => {
    within(NOTCH_MM, 4.1, 1e-12);
    expect(NOTCH_MM).toBeLessThan(headerBodyMm(6, true).longMm);
  });
});

describe('sockets', () => {
  // Typical cable sockets, from memory.
  it.each([
    [10, 17.3],
    [16, 24.9],
    [20, 30.0],
    [26, 37.6],
    [34, 47.8],
    [40, 55.4],
    [50, 68.1],
  ])('with %i ways are about %f mm long', (ways, longMm) => {
    within(socketBodyMm(ways).longMm, longMm, 0.5);
  });

  // Inside of the box: 2.54 (N/2 − 1) + 7.82 mm by 6.50 mm, public footprints.
  it('fit inside the box of a header with as many pins', () => {
    for (const pins of PINS) {
      expect(socketBodyMm(pins).longMm).toBeLessThan(pinFieldMm(pins) + 7.82);
      expect(socketBodyMm(pins).wideMm).toBeLessThan(6.5);
    }
  });

  it('take the pairs of their contacts, the last one half empty when odd', () => {
    expect(socketBodyMm(9)).toEqual(socketBodyMm(10));
    expect(pinFieldMm(9)).toBe(pinFieldMm(10));
  });
});

describe('pins', () => {
  it('run in pairs from the pin-1 end: pin = 2 × pair + row + 1', () => {
    pinOffsets(16).forEach(({ pair, row }, index) => {
      expect(2 * pair + row + 1).toBe(index + 1);
    });
  });

  it('start and end on the ends of the field', () => {
    for (const pins of PINS) {
      const offsets = pinOffsets(pins);
      expect(offsets).toHaveLength(pins);
      expect(offsets[0]?.alongMm).toBeCloseTo(-pinFieldMm(pins) / 2, 10);
      expect(offsets.at(-1)?.alongMm).toBeCloseTo(pinFieldMm(pins) / 2, 10);
    }
  });

  it('lie about the middle of the field, one step of the grid apart both ways', () => {
    for (const pins of PINS) {
      const offsets = pinOffsets(pins);
      offsets.forEach((pin, index) => {
        const opposite = offsets[pins - 1 - index];
        expect(pin.alongMm + (opposite?.alongMm ?? Number.NaN)).toBeCloseTo(0, 10);
        expect(pin.acrossMm + (opposite?.acrossMm ?? Number.NaN)).toBeCloseTo(0, 10);
        const nextPair = offsets[index + 2];
        if (nextPair) expect(nextPair.alongMm - pin.alongMm).toBeCloseTo(2.54, 10);
      });
      expect((offsets[1]?.acrossMm ?? Number.NaN) - (offsets[0]?.acrossMm ?? Number.NaN)).toBeCloseTo(
        2.54,
        10,
      );
    }
  });

  it('of a 2 × 5 header are these', () => {
    expect(pinOffsets(10).slice(0, 3)).toEqual([
      { pair: 0, row: 0, alongMm: -5.08, acrossMm: -1.27 },
      { pair: 0, row: 1, alongMm: -5.08, acrossMm: 1.27 },
      { pair: 1, row: 0, alongMm: -2.54, acrossMm: -1.27 },
    ]);
  });
});
