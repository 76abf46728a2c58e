import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  HP_MM,
  holePitchMm,
  hpToMm,
  mmToHp,
  panelHeightMm,
  panelHoles,
  panelWidthMm,
  U_MM,
  uToMm,
} from '../../src/geometry/rack.ts';

const columnsOf = (widthHp: number): number[] => [...new Set(panelHoles(widthHp, 3).map(({ xMm }) => xMm))];
const distance = (a: number, b: number): number => Math.abs(a - b);

describe('units', () => {
  // IEC 60297-3-101 (HP) and IEC 60297-3-100 / EIA-310 (U), as quoted in secondary texts: exact.
  it('are 0.2 in and 1.75 in', () => {
    expect(HP_MM).toBe(5.08);
    expect(U_MM).toBe(44.45);
    expect(HP_MM).toBeCloseTo(0.2 * 25.4, 12);
    expect(U_MM).toBeCloseTo(1.75 * 25.4, 12);
  });

  // Usable width of a subrack and 3U subrack module, IEC 60297-3-101 as quoted in secondary texts.
  it('give 426.72 mm for 84 HP and 133.35 mm for 3U, to the last bit', () => {
    expect(hpToMm(84)).toBe(426.72);
    expect(uToMm(3)).toBe(133.35);
  });

  it('give the nearest float to the exact decimal for whole numbers', () => {
    for (let n = 0; n <= 1000; n++) {
      expect(hpToMm(n)).toBe(Number(decimal(n * 508)));
      expect(uToMm(n)).toBe(Number(decimal(n * 4445)));
    }
  });

  it('convert back', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1000, noNaN: true }), (hp) => {
        expect(distance(mmToHp(hpToMm(hp)), hp)).toBeLessThanOrEqual(1e-12);
      }),
    );
  });

  // Threaded strip and rail for 84 HP, secondary texts on 19-inch subracks: 83 and 85 pitches.
  it('give the end-hole span and the rail of 84 HP', () => {
    expect(hpToMm(83)).toBe(421.64);
    expect(hpToMm(84) + HP_MM).toBeCloseTo(431.8, 10);
  });

  // Width of a 21-slot backplane, secondary text: 21 × 20.32 − 1.44.
  it('give the 21-slot backplane', () => {
    expect(21 * hpToMm(4) - 1.44).toBeCloseTo(425.28, 10);
  });
});

/** Hundredths as decimal text, without any float in between. */
const decimal = (hundredths: number): string =>
  `${Math.floor(hundredths / 100)}.${String(hundredths % 100).padStart(2, '0')}`;

describe('19-inch panels and racks', () => {
  // Full-width panel heights, EIA-310 as quoted in secondary texts: 1.75 in increments less 1/32 in.
  it.each([
    [1, 43.66],
    [2, 88.11],
    [3, 132.56],
    [4, 177.01],
  ])('%i U panel is %f mm high', (units, heightMm) => {
    expect(distance(uToMm(units) - 25.4 / 32, heightMm)).toBeLessThanOrEqual(0.05);
  });

  // EIA universal hole pattern, EIA-310 as quoted in secondary texts: 5/8, 5/8 and 1/2 in.
  it('repeat their hole pattern every U', () => {
    expect(15.875 + 15.875 + 12.7).toBeCloseTo(uToMm(1), 12);
    for (let n = 1; n <= 12; n++) expect(n * (5 / 8 + 5 / 8 + 1 / 2) * 25.4).toBeCloseTo(uToMm(n), 10);
  });

  // Opening between uprights 450.85 mm and panel width 482.6 mm, EIA-310 as quoted in secondary texts.
  it('take 84 HP with their rail between the uprights, not 90 HP; 95 HP make the 19 in over all', () => {
    expect(hpToMm(84) + HP_MM).toBeLessThan(450.85);
    expect(hpToMm(90)).toBeGreaterThan(450.85);
    expect(hpToMm(95)).toBeCloseTo(482.6, 10);
  });
});

describe('plug-in front panels', () => {
  // Printed panel table, a subrack panel catalogue as quoted in secondary texts; ±0.1 mm covers both of its
  // rules.
  it.each([
    [4, 20.0],
    [8, 40.3],
    [12, 60.6],
    [16, 80.9],
  ])('%i HP is printed as %f mm', (hp, widthMm) => {
    expect(distance(panelWidthMm(hp), widthMm)).toBeLessThanOrEqual(0.1);
  });

  // The rule n × 5.08 − 0.30 mm, secondary text ("20.02 mm for 1 module" of 4 HP); the set computed from it.
  it.each([
    [2, 9.86],
    [4, 20.02],
    [6, 30.18],
    [8, 40.34],
    [10, 50.5],
    [12, 60.66],
    [14, 70.82],
    [16, 80.98],
    [18, 91.14],
    [20, 101.3],
    [21, 106.38],
    [22, 111.46],
    [28, 141.94],
    [34, 172.42],
    [42, 213.06],
    [60, 304.5],
    [84, 426.42],
  ])('%i HP is %f mm wide by the rule', (hp, widthMm) => {
    expect(panelWidthMm(hp)).toBe(widthMm);
  });

  // The other rule in use, n × 5.08 − 0.34 mm, secondary text.
  it('agrees with the other rule in use to 0.1 mm', () => {
    for (let hp = 1; hp <= 104; hp++) {
      expect(distance(panelWidthMm(hp), hp * 5.08 - 0.34)).toBeLessThanOrEqual(0.1);
    }
  });

  // Computed from the rule: 21 panels of 4 HP leave 21 gaps of 0.30 mm in 84 HP.
  it('leaves 6.30 mm of play in a row of 21 panels', () => {
    expect(21 * panelWidthMm(4)).toBeCloseTo(420.42, 10);
    expect(hpToMm(84) - 21 * panelWidthMm(4)).toBeCloseTo(6.3, 10);
  });

  // IEC 60297-3-101 as quoted in secondary texts, which print 128.4, 128.5 and 128.55 mm: no one exact value.
  it('is 128.3 to 128.6 mm high at 3U', () => {
    expect(panelHeightMm(3)).toBeGreaterThanOrEqual(128.3);
    expect(panelHeightMm(3)).toBeLessThanOrEqual(128.6);
  });

  // Computed by the deduction of 3U, as no standard was found: 39.50 (4.95 off) to 39.65 mm (4.80 off).
  it('takes the same off a 1U panel', () => {
    expect(panelHeightMm(1)).toBeGreaterThanOrEqual(39.5);
    expect(panelHeightMm(1)).toBeLessThanOrEqual(39.65);
  });

  it('grows by one unit for each unit, whole or not', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 12, noNaN: true }), (units) => {
        expect(panelHeightMm(units + 1) - panelHeightMm(units)).toBeCloseTo(44.45, 9);
      }),
    );
  });
});

describe('mounting holes', () => {
  // IEC 60297-3-101 (H6 = H9), three independent secondary texts.
  it('lie 122.50 mm apart at 3U', () => {
    expect(holePitchMm(3)).toBe(122.5);
  });

  // Computed by the deduction of 3U, as no standard was found: 44.45 − 10.85.
  it('lie 33.60 mm apart at 1U', () => {
    expect(holePitchMm(1)).toBe(33.6);
  });

  // Computed from the panel heights that secondary texts print: 2.95 to 3.025 mm.
  it.each([1, 3, 6])('lie 3.0 mm from the lower and the upper edge at %i U', (units) => {
    const heights = [...new Set(panelHoles(8, units).map(({ yMm }) => yMm))];
    expect(heights).toHaveLength(2);
    const [lower, upper] = heights as [number, number];
    expect(distance(lower, 3)).toBeLessThanOrEqual(0.05 + 1e-9);
    expect(distance(panelHeightMm(units) - upper, 3)).toBeLessThanOrEqual(0.05 + 1e-9);
    expect(upper - lower).toBeCloseTo(holePitchMm(units), 10);
  });

  // Secondary text: horizontally centred in the second HP from the left, 7.45 mm from the panel's own edge.
  it('lie 7.62 mm into the place, 7.45 mm into the panel', () => {
    for (const hp of [3, 4, 5, 7.5, 8, 14, 84]) {
      const [left] = columnsOf(hp) as [number];
      expect(left).toBe(7.62);
      const panelEdge = (hpToMm(hp) - panelWidthMm(hp)) / 2;
      expect(distance(left - panelEdge, 7.45)).toBeLessThanOrEqual(0.05);
    }
  });

  // Secondary text: 2 screws for one module of 4 HP, 4 for 8 HP and wider.
  it('are two on narrow panels and four from 8 HP', () => {
    expect(panelHoles(4, 3)).toHaveLength(2);
    expect(panelHoles(7.5, 3)).toHaveLength(2);
    expect(panelHoles(8, 3)).toHaveLength(4);
    expect(panelHoles(84, 3)).toHaveLength(4);
  });

  // Common practice, no source.
  it('lie in the middle of panels under 3 HP', () => {
    expect(columnsOf(1)).toEqual([2.54]);
    expect(columnsOf(2)).toEqual([5.08]);
    expect(columnsOf(2.5)).toEqual([6.35]);
  });

  // Secondary text: also centred in the second HP from the right; span computed, 11 × 5.08 = 55.88 mm at 14
  // HP.
  it('span (n − 3) HP on wide panels', () => {
    const [left, right] = columnsOf(14) as [number, number];
    expect(right - left).toBeCloseTo(55.88, 10);
    for (let hp = 8; hp <= 104; hp++) {
      const [first, second] = columnsOf(hp) as [number, number];
      expect(second - first).toBeCloseTo((hp - 3) * 5.08, 9);
    }
  });

  // Secondary texts: threaded strips carry one hole for each HP.
  it('of panels on whole HP fall on one grid of 5.08 mm', () => {
    const place = fc.record({
      atHp: fc.integer({ min: 0, max: 100 }),
      widthHp: fc.integer({ min: 3, max: 84 }),
    });
    fc.assert(
      fc.property(place, place, (a, b) => {
        const [first, second] = [a, b].map(({ atHp, widthHp }) =>
          columnsOf(widthHp).map((xMm) => hpToMm(atHp) + xMm),
        ) as [number[], number[]];
        for (const x of first) {
          for (const y of second) {
            const pitches = (x - y) / 5.08;
            expect(distance(pitches, Math.round(pitches))).toBeLessThanOrEqual(1e-9);
          }
        }
      }),
    );
  });

  it('are listed from below, from the left', () => {
    const [a, b, c, d] = panelHoles(10, 3) as { xMm: number; yMm: number }[];
    expect([a, b, c, d].map((hole) => hole?.xMm)).toEqual([7.62, 43.18, 7.62, 43.18]);
    expect(a?.yMm).toBe(b?.yMm);
    expect(c?.yMm).toBe(d?.yMm);
    expect(a?.yMm).toBeLessThan(c?.yMm as number);
  });
});
