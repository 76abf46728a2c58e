import { describe, expect, it } from 'vitest';
import { areaMm2, diameterMm, ohmsPerMetre } from '../../src/electrical/wire.ts';

const FEET_PER_METRE = 1 / 0.3048;

/**
 * Ω per 1000 ft of solid annealed copper at 20 °C, as printed in Floyd, Electric Circuit Fundamentals, table of
 * American wire gauges.
 */
const PRINTED: readonly (readonly [awg: number, ohmsPer1000Feet: number])[] = [
  [18, 6.385],
  [19, 8.051],
  [20, 10.15],
  [21, 12.8],
  [22, 16.14],
  [23, 20.36],
  [24, 25.67],
  [25, 32.37],
  [26, 40.81],
  [27, 51.47],
  [28, 64.9],
  [29, 81.83],
  [30, 103.2],
];

describe('wire', () => {
  it.each(PRINTED)('AWG %i has %f Ω per 1000 ft, to 0.05 %%', (awg, printed) => {
    const ohms = (ohmsPerMetre(awg, 20) / FEET_PER_METRE) * 1000;
    expect(Math.abs(ohms / printed - 1)).toBeLessThan(0.0005);
  });

  it('is as thick as ASTM B258 defines: 0.46 in at 0000, 0.005 in at 36, steps alike between', () => {
    expect(diameterMm(-3)).toBeCloseTo(0.46 * 25.4, 9);
    expect(diameterMm(36)).toBeCloseTo(0.005 * 25.4, 12);
    expect(diameterMm(28) / diameterMm(29)).toBeCloseTo(diameterMm(18) / diameterMm(19), 12);
    expect(areaMm2(28)).toBeCloseTo(0.080976, 6);
    // Ten gauges on it is about ten times the resistance, exactly 92^(20/39).
    expect(ohmsPerMetre(28, 20) / ohmsPerMetre(18, 20)).toBeCloseTo(92 ** (20 / 39), 9);
  });

  it('has more resistance when warm: factors of NBS Handbook 100, 0.00393 per kelvin', () => {
    for (const [celsius, factor] of [
      [20, 1],
      [40, 1.0786],
      [50, 1.1179],
      [60, 1.1572],
      [70, 1.1965],
    ] as const)
      expect(ohmsPerMetre(28, celsius) / ohmsPerMetre(28, 20)).toBeCloseTo(factor, 9);
    // (234.5 + t) / 254.5, the other form of the rule (FAA AC 43.13-1B), to five digits.
    expect(ohmsPerMetre(28, 60) / ohmsPerMetre(28, 20)).toBeCloseTo((234.5 + 60) / 254.5, 4);
  });

  it('loses in 10 m of 2.5 and 1.5 mm² at 20 A what handbooks print: 1.38 and 2.3 V', () => {
    const lost = (mm2: number): number => ((ohmsPerMetre(28, 20) * areaMm2(28)) / mm2) * 10 * 20;
    expect(lost(2.5)).toBeCloseTo(1.37928, 5);
    expect(lost(1.5)).toBeCloseTo(2.2988, 5);
  });
});
