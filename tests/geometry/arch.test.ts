import ellipe from '@stdlib/math-base-special-ellipe';
import ellipk from '@stdlib/math-base-special-ellipk';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  archShape,
  completeIntegrals,
  heldArch,
  LEGS_TOUCH_RATIO,
  solveArch,
} from '../../src/geometry/arch.ts';

/** Within an absolute tolerance. */
const within = (value: number, expected: number, tolerance: number): void =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);

/** Within a relative tolerance. */
const near = (value: number, expected: number, tolerance: number): void =>
  within(value / expected, 1, tolerance);

/** Half a unit of the last of eight printed decimals, and a little float noise. */
const EIGHT_DECIMALS = 5.1e-9;

/** Load over bending stiffness, times the length squared: (4K)². */
const loadOf = (k: number): number => (4 * completeIntegrals(k).K) ** 2;

/** Steepest slope, degrees. */
const steepestOf = (k: number): number => (2 * Math.asin(k) * 180) / Math.PI;

const ratioOf = (k: number): number => {
  const { K, E } = completeIntegrals(k);
  return (2 * E) / K - 1;
};

describe('complete elliptic integrals', () => {
  // Abramowitz & Stegun, Table 17.1, which argues by m = k²; digits from memory, recomputed with scipy and
  // mpmath.
  it.each([
    [0.1, 1.612441348720219, 1.530757636897763],
    [0.25, 1.685750354812596, 1.467462209339427],
    [0.5, 1.854074677301372, 1.350643881047675],
    [0.75, 2.156515647499643, 1.211056027568459],
    [0.8, 2.257205326820854, 1.178489924327839],
    [0.9, 2.578092113348173, 1.104774732704073],
  ])('agree with the table at m = %f', (m, expectedK, expectedE) => {
    const { K, E } = completeIntegrals(Math.sqrt(m));
    near(K, expectedK, 2e-15);
    near(E, expectedE, 2e-15);
  });

  // @stdlib/math-base-special-ellipk 0.2.4 and -ellipe 0.3.1, general-purpose library; argues by m = k².
  it('agree with a numerical library at 200 moduli', () => {
    for (let i = 0; i < 200; i++) {
      const k = i / 200;
      const { K, E } = completeIntegrals(k);
      near(K, ellipk(k * k), 1e-13);
      near(E, ellipe(k * k), 1e-13);
    }
  });

  // Legendre's relation, Abramowitz & Stegun 17.3.13.
  it("meet Legendre's relation", () => {
    for (let i = 1; i < 1000; i++) {
      const k = i / 1000;
      const { K, E } = completeIntegrals(k);
      const other = completeIntegrals(Math.sqrt((1 - k) * (1 + k)));
      within(K * other.E + E * other.K - K * other.K, Math.PI / 2, 1e-14);
    }
  });

  it('start at π/2', () => {
    expect(completeIntegrals(0)).toEqual({ K: Math.PI / 2, E: Math.PI / 2 });
  });
});

describe('arch against tables', () => {
  // Closed form of the clamped elastica, computed and checked by an independent shooting integration to
  // 2.4e-14.
  it.each([
    [0.95, 0.22289802, 0.14011061, 0.35250771, 40.493971, 25.75861],
    [0.9, 0.31419362, 0.19492431, 0.24682054, 41.570256, 36.62428],
    [0.8, 0.44128377, 0.26631859, 0.17095255, 43.929164, 52.37164],
    [0.7, 0.53647718, 0.31431261, 0.13651153, 46.612121, 64.88829],
    [0.6, 0.61455211, 0.34871252, 0.11541443, 49.693815, 75.83877],
    [0.5, 0.68118267, 0.37330643, 0.10056533, 53.274113, 85.87226],
    [0.4, 0.73921035, 0.38997185, 0.0892087, 57.489634, 95.32839],
    [0.3, 0.79024076, 0.39973053, 0.08001262, 62.53227, 104.41603],
    [0.2, 0.83522187, 0.4031316, 0.07223591, 68.679958, 113.2779],
    [0.1, 0.8746942, 0.40041618, 0.06541979, 76.350035, 122.01761],
    [0.05, 0.89245246, 0.39677562, 0.06227085, 80.946897, 126.36612],
    [0, 0.90890856, 0.39159375, 0.05925232, 86.19635, 130.70991],
  ])('d/L = %f', (ratio, k, height, radius, load, steepest) => {
    const arch = solveArch(1, ratio);
    within(arch.ratio, ratio, 1e-15);
    within(arch.k, k, EIGHT_DECIMALS);
    within(arch.heightMm, height, EIGHT_DECIMALS);
    within(arch.radiusMm, radius, EIGHT_DECIMALS);
    within(loadOf(arch.k), load, 5.1e-7);
    within(steepestOf(arch.k), steepest, 5.1e-6);
  });

  // The same, by modulus.
  it.each([
    [0.1, 0.98998744, 0.06350232, 0.79377903],
    [0.2, 0.95979589, 0.12603444, 0.39385762],
    [0.3, 0.90893913, 0.18656152, 0.25911323],
    [0.4, 0.83651431, 0.24390246, 0.1905488],
    [0.5, 0.74101961, 0.29660382, 0.14830191],
    [0.6, 0.61996894, 0.34270952, 0.11899636],
    [Math.SQRT1_2, 0.45694658, 0.38137988, 0.09534497],
    [0.8, 0.27935465, 0.40094166, 0.07830892],
  ])('k = %f', (k, ratio, height, radius) => {
    within(ratioOf(k), ratio, EIGHT_DECIMALS);
    const arch = solveArch(1, ratioOf(k));
    within(arch.k, k, 1e-12);
    within(arch.heightMm, height, EIGHT_DECIMALS);
    within(arch.radiusMm, radius, EIGHT_DECIMALS);
  });

  /*
   * A cantilever under an end load is a quarter of the arch: its end lies at x_a/l = d/L and y_a/l = 2h/L,
   * its load over the buckling load is (2K/π)², and it ends at the slope α with k = sin(α/2).
   * Printed: Timoshenko & Gere, Theory of Elastic Stability, section 2.7, from memory; computed: closed form.
   */
  const CANTILEVER = [
    { slope: 20, load: [1.0154, 1.015], along: [0.9697, 0.97], across: [0.2194, 0.22] },
    { slope: 40, load: [1.0637, 1.063], along: [0.8812, 0.881], across: [0.4222, 0.422] },
    { slope: 60, load: [1.1517, 1.152], along: [0.741, 0.741], across: [0.5932, 0.593] },
    { slope: 80, load: [1.2939, 1.293], along: [0.5594, 0.56], across: [0.7195, 0.719] },
    { slope: 100, load: [1.5184, 1.518], along: [0.349, 0.349], across: [0.7915, 0.792] },
    { slope: 120, load: [1.8848, 1.884], along: [0.1232, 0.123], across: [0.8032, 0.803] },
    { slope: 140, load: [2.5423, 2.541], along: [-0.1069, -0.107], across: [0.7504, 0.75] },
    { slope: 160, load: [4.0301, 4.029], along: [-0.3403, -0.34], across: [0.6246, 0.625] },
    { slope: 176, load: [9.1162, 9.116], along: [-0.5772, -0.577], across: [0.4214, 0.421] },
  ] as const;

  it.each(CANTILEVER)('cantilever at $slope°', ({ slope, load, along, across }) => {
    const k = Math.sin((slope * Math.PI) / 360);
    const { K } = completeIntegrals(k);
    const values = [
      [((2 * K) / Math.PI) ** 2, load],
      [ratioOf(k), along],
      [(2 * k) / K, across],
    ] as const;
    for (const [value, [computed, printed]] of values) {
      within(value, computed, 1e-4);
      within(value, printed, 0.002);
    }
  });

  it.each(CANTILEVER.filter(({ along }) => along[0] > 0))('arch of four cantilevers at $slope°', (row) => {
    const k = Math.sin((row.slope * Math.PI) / 360);
    const arch = solveArch(1, ratioOf(k));
    within(arch.k, k, 1e-12);
    within(2 * arch.heightMm, row.across[0], 1e-4);
    within(2 * arch.heightMm, row.across[1], 0.002);
  });
});

const STEPS_OF_HALF = 1000;

/**
 * So many steps from the clamp along an arch of length 1, half of it if not said, by Runge and Kutta's fourth
 * order: slope and place reached.
 */
function shoot(
  load: number,
  curvature: number,
  steps = STEPS_OF_HALF,
): { slope: number; x: number; y: number } {
  const h = 0.5 / STEPS_OF_HALF;
  let [slope, bend, x, y] = [0, curvature, 0, 0];
  for (let i = 0; i < steps; i++) {
    const b1 = -load * Math.sin(slope);
    const s2 = slope + (h / 2) * bend;
    const t2 = bend + (h / 2) * b1;
    const b2 = -load * Math.sin(s2);
    const s3 = slope + (h / 2) * t2;
    const t3 = bend + (h / 2) * b2;
    const b3 = -load * Math.sin(s3);
    const s4 = slope + h * t3;
    const t4 = bend + h * b3;
    const b4 = -load * Math.sin(s4);
    x += (h / 6) * (Math.cos(slope) + 2 * Math.cos(s2) + 2 * Math.cos(s3) + Math.cos(s4));
    y += (h / 6) * (Math.sin(slope) + 2 * Math.sin(s2) + 2 * Math.sin(s3) + Math.sin(s4));
    slope += (h / 6) * (bend + 2 * t2 + 2 * t3 + t4);
    bend += (h / 6) * (b1 + 2 * b2 + 2 * b3 + b4);
  }
  return { slope, x, y };
}

/**
 * Load and curvature at the clamp that bring the crown level and the ends `ratio` apart: Newton in two
 * unknowns.
 */
function shootTo(ratio: number): { load: number; curvature: number; height: number } {
  // Start: the buckling load, and the curvature of a cosine arch with this slack.
  let load = 4 * Math.PI ** 2 * (1 + (1 - ratio) / 2);
  let curvature = 4 * Math.PI * Math.sqrt(1 - ratio);
  for (let i = 0; i < 30; i++) {
    const miss = (p: number, c: number) => {
      const { slope, x } = shoot(p, c);
      return [slope, 2 * x - ratio] as const;
    };
    const [f, g] = miss(load, curvature);
    const [dp, dc] = [load * 1e-6, curvature * 1e-6];
    const [fp, gp] = miss(load + dp, curvature);
    const [fb, gb] = miss(load, curvature + dc);
    const [a, b, c, d] = [(fp - f) / dp, (fb - f) / dc, (gp - g) / dp, (gb - g) / dc];
    const det = a * d - b * c;
    load -= (d * f - b * g) / det;
    curvature -= (a * g - c * f) / det;
    if (Math.abs(f) + Math.abs(g) < 1e-13) break;
  }
  return { load, curvature, height: shoot(load, curvature).y };
}

describe('arch against integration', () => {
  // Second method: the equation of the elastica, θ″ = −p sin θ, integrated with no elliptic function.
  it.each([0.9, 0.5, 0.2])('d/L = %f', (ratio) => {
    const { load, curvature, height } = shootTo(ratio);
    const arch = solveArch(1, ratio);
    near(height, arch.heightMm, 1e-9);
    near(1 / curvature, arch.radiusMm, 1e-9);
    near(load, loadOf(arch.k), 1e-9);
  });
});

describe('special arches', () => {
  // Closed form: with upright legs, Legendre's relation at k = √½ gives d/L = π/(2K²).
  it('has upright legs at k = √½', () => {
    const { K } = completeIntegrals(Math.SQRT1_2);
    within(Math.PI / (2 * K * K), 0.456946581, 5.1e-11);
    const arch = solveArch(1, Math.PI / (2 * K * K));
    within(arch.k, Math.SQRT1_2, 1e-14);
    within(steepestOf(arch.k), 90, 1e-11);
  });

  /**
   * Free width between the legs at their narrowest, in the first quarter; negative where they would cross.
   */
  function neckOf(ratio: number): number {
    const firstQuarter = archShape(1, ratio, 8001).slice(0, 2001);
    return ratio - 2 * Math.max(...firstQuarter.map(({ alongMm }) => alongMm));
  }

  // Computed in closed form and by integration.
  it('has its legs touching at 0.15134849', () => {
    const arch = solveArch(1, 0.15134849);
    within(arch.k, 0.85509241, 1e-8);
    within(arch.heightMm, 0.40256906, EIGHT_DECIMALS);
    within(arch.radiusMm, 0.06882153, EIGHT_DECIMALS);
    within(steepestOf(arch.k), 117.5399, 5.1e-5);
    within(neckOf(0.15134849), 0, 1e-7);
    within(neckOf(0.1514), 4.3e-5, 1e-6);
    within(neckOf(0.1513), -4e-5, 1e-6);
    within(LEGS_TOUCH_RATIO, 0.15134849, 5e-6);
    expect(neckOf(LEGS_TOUCH_RATIO)).toBeGreaterThanOrEqual(0);
  });

  // The well-known 0.90891; further digits computed.
  it('has its ends meeting at k = 0.9089', () => {
    const arch = solveArch(1, 0);
    within(arch.k, 0.9089085575, 5.1e-11);
    within(steepestOf(arch.k), 130.7099, 5.1e-5);
    within(arch.heightMm, 0.3915937452, 5.1e-11);
    within(arch.radiusMm, 0.059252322, 5.1e-11);
  });

  // Computed: the height is not monotone in the distance.
  it('is highest at d/L = 0.1947, not with the ends together', () => {
    const highest = solveArch(1, 0.19469016);
    within(highest.heightMm, 0.40314019, EIGHT_DECIMALS);
    within(highest.k, 0.83745295, 2e-8);
    for (let ratio = 0; ratio <= 1; ratio += 0.001) {
      expect(solveArch(1, ratio).heightMm).toBeLessThanOrEqual(highest.heightMm + 1e-15);
    }
    for (const aside of [-0.01, 0.01]) {
      expect(solveArch(1, 0.19469016 + aside).heightMm).toBeLessThan(highest.heightMm - 1e-6);
    }
  });

  it('is straight without slack', () => {
    expect(solveArch(37, 37)).toEqual({ ratio: 1, k: 0, heightMm: 0, radiusMm: Number.POSITIVE_INFINITY });
  });
});

describe('arch of small slack', () => {
  // Computed in closed form; limits (2/π)√ε and 1/(4π√ε).
  it('is near its limit at a slack of 1e-4', () => {
    const { heightMm, radiusMm } = solveArch(1, 1 - 1e-4);
    within(heightMm, 0.006366, EIGHT_DECIMALS);
    within(radiusMm, 7.95759794, EIGHT_DECIMALS);
  });

  // One millimetre of slack on a whole number of them: 1 − d/L would lose it in rounding, (L − d)/L keeps it.
  it.each([1e3, 1e6, 1e9, 1e12, 1e15])('approaches its limit at a slack of 1 in %f', (length) => {
    const slack = 1 / length;
    const { heightMm, radiusMm } = solveArch(length, length - 1);
    near(heightMm / length, (2 / Math.PI) * Math.sqrt(slack), slack / 3 + 1e-14);
    near(radiusMm / length, 1 / (4 * Math.PI * Math.sqrt(slack)), slack / 2 + 1e-14);
  });

  // Timoshenko & Gere, from memory: Euler load of a strut clamped at both ends, 4π².
  it('carries the buckling load', () => {
    near(loadOf(solveArch(1e9, 1e9 - 1).k), 4 * Math.PI ** 2, 1e-9);
  });
});

/** Radius of the circle through three points. */
function circleRadius(a: Point, b: Point, c: Point): number {
  const [ab, bc, ca] = [gap(a, b), gap(b, c), gap(c, a)];
  const twiceArea = Math.abs(
    (b.alongMm - a.alongMm) * (c.heightMm - a.heightMm) - (c.alongMm - a.alongMm) * (b.heightMm - a.heightMm),
  );
  return (ab * bc * ca) / (2 * twiceArea);
}

type Point = ReturnType<typeof archShape>[number];

const gap = (a: Point, b: Point): number => Math.hypot(b.alongMm - a.alongMm, b.heightMm - a.heightMm);

describe('shape of the arch', () => {
  const CASES = [
    [64, 60.8],
    [64, 44.8],
    [33, 16.5],
    [100, 20],
    [100, 15.135],
  ] as const;

  it.each(CASES)(
    'of %f mm over %f mm is as long as the ribbon and runs from clamp to clamp',
    (length, distance) => {
      const shape = archShape(length, distance, 2001);
      expect(shape).toHaveLength(2001);
      const [first, last] = [shape[0], shape[2000]] as [Point, Point];
      expect(first).toEqual({ alongMm: 0, heightMm: 0 });
      within(last.alongMm, distance, 1e-10);
      within(last.heightMm, 0, 1e-10);
      let chords = 0;
      for (let i = 1; i < shape.length; i++) chords += gap(shape[i - 1] as Point, shape[i] as Point);
      near(chords, length, 1e-5);
      expect(chords).toBeLessThan(length);
    },
  );

  it.each(CASES)('of %f mm over %f mm has its crown in the middle, at the height', (length, distance) => {
    const { heightMm } = solveArch(length, distance);
    const shape = archShape(length, distance, 2001);
    const crown = shape[1000] as Point;
    within(crown.alongMm, distance / 2, 1e-10);
    within(crown.heightMm, heightMm, 1e-10);
    expect(Math.max(...shape.map((point) => point.heightMm))).toBe(crown.heightMm);
  });

  it.each(CASES)('of %f mm over %f mm leaves along the panel and mirrors itself', (length, distance) => {
    const shape = archShape(length, distance, 2001);
    const second = shape[1] as Point;
    expect(second.heightMm / second.alongMm).toBeLessThan(0.01);
    shape.forEach((point, index) => {
      const mirrored = shape[2000 - index] as Point;
      within(point.alongMm + mirrored.alongMm, distance, 1e-10);
      within(point.heightMm, mirrored.heightMm, 1e-10);
    });
  });

  it.each(CASES)('of %f mm over %f mm bends no tighter than the smallest radius', (length, distance) => {
    const { radiusMm } = solveArch(length, distance);
    const shape = archShape(length, distance, 2001);
    const radii = shape
      .slice(1, -1)
      .map((point, index) => circleRadius(shape[index] as Point, point, shape[index + 2] as Point));
    near(Math.min(...radii), radiusMm, 1e-4);
    near(radii[999] as number, radiusMm, 1e-4);
    near(radii[0] as number, radiusMm, 1e-4);
    near(radii.at(-1) as number, radiusMm, 1e-4);
  });

  // Second method: the equation of the elastica integrated from the clamp.
  it.each([0.95, 0.5, 0.2])('agrees with integration all along, d/L = %f', (ratio) => {
    const shape = archShape(1, ratio, 2 * STEPS_OF_HALF + 1);
    const { load, curvature } = shootTo(ratio);
    for (let steps = 100; steps <= STEPS_OF_HALF; steps += 100) {
      const { x, y } = shoot(load, curvature, steps);
      const point = shape[steps] as Point;
      within(x, point.alongMm, 1e-9);
      within(y, point.heightMm, 1e-9);
    }
  });

  it('is a straight line without slack', () => {
    expect(archShape(80, 80, 3)).toEqual([
      { alongMm: 0, heightMm: 0 },
      { alongMm: 40, heightMm: 0 },
      { alongMm: 80, heightMm: 0 },
    ]);
  });
});

describe('properties of the arch', () => {
  const ratio = fc.double({ min: 0, max: 1, noNaN: true });
  const length = fc.double({ min: 1, max: 2000, noNaN: true });

  it('is the root of its equation', () => {
    fc.assert(
      fc.property(ratio, (r) => {
        within(ratioOf(solveArch(1, r).k), r, 1e-14);
      }),
    );
  });

  it('finds the modulus it was made from, at small slack as well', () => {
    fc.assert(
      fc.property(fc.double({ min: -4.5, max: Math.log10(0.9), noNaN: true }), (exponent) => {
        const k = 10 ** exponent;
        // Where 1 − d/L cancels: series of 2(1 − E/K) in m = k², by Abramowitz & Stegun 17.3.11 and 17.3.12.
        const m = k * k;
        const slack = m < 1e-3 ? m + m ** 2 / 8 + m ** 3 / 16 + (41 / 1024) * m ** 4 : 1 - ratioOf(k);
        near(solveArch(1 / slack, 1 / slack - 1).k, k, 1e-12 + 1e-15 / slack);
      }),
    );
  });

  it('has the larger modulus and the tighter bend the closer its ends', () => {
    fc.assert(
      fc.property(ratio, ratio, (a, b) => {
        fc.pre(Math.abs(a - b) > 1e-12);
        const [close, wide] = [solveArch(1, Math.min(a, b)), solveArch(1, Math.max(a, b))];
        expect(close.k).toBeGreaterThan(wide.k);
        expect(close.radiusMm).toBeLessThan(wide.radiusMm);
      }),
    );
  });

  it('scales with the ribbon', () => {
    fc.assert(
      fc.property(
        length,
        fc.double({ min: 0, max: 0.999, noNaN: true }),
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        (l, r, times) => {
          const one = solveArch(l, l * r);
          const doubled = solveArch(2 * l, 2 * l * r);
          expect(doubled).toEqual({ ...one, heightMm: 2 * one.heightMm, radiusMm: 2 * one.radiusMm });
          const scaled = solveArch(times * l, times * l * r);
          near(scaled.heightMm, times * one.heightMm, 1e-11);
          near(scaled.radiusMm, times * one.radiusMm, 1e-11);
        },
      ),
    );
  });
});

describe('arch between two connectors', () => {
  it('is that of the length and distance between their bodies', () => {
    const { ratio, heightMm, radiusMm } = solveArch(57, 40);
    expect(heldArch(63, 46, 6)).toEqual({ kind: 'arch', ratio, heightMm, radiusMm });
  });

  // Computed from the closed form: 9 mm of radius take 89.5 mm of ribbon at d/L = 0.5, and 130.8 mm where the
  // legs touch.
  it('keeps 9 mm of radius with enough ribbon', () => {
    const half = heldArch(95.5, 6 + 89.5 / 2, 6);
    const touching = heldArch(136.8, 6 + 130.8 * 0.15135, 6);
    for (const arch of [half, touching]) {
      expect(arch.kind === 'arch' && Math.abs(arch.radiusMm - 9) < 0.01).toBe(true);
    }
  });

  it('has legs that touch from the limit down, at the height of the limit', () => {
    const above = heldArch(106, 6 + 15.136, 6);
    const below = heldArch(106, 6 + 15.134, 6);
    expect(above.kind).toBe('arch');
    expect(below.kind).toBe('legs-touch');
    within(below.ratio, 0.15134, 1e-12);
    within(below.heightMm, above.heightMm, 1e-3);
    expect(heldArch(106, 10, 6).heightMm).toBe(below.heightMm);
  });

  it('has legs that touch where the bodies do', () => {
    expect(heldArch(40, 6, 6)).toMatchObject({ kind: 'legs-touch', ratio: 0 });
    const overlapping = heldArch(40, 2.6, 6);
    expect(overlapping.kind).toBe('legs-touch');
    within(overlapping.ratio, -0.1, 1e-12);
    expect(overlapping.heightMm).toBe(heldArch(40, 6, 6).heightMm);
  });

  it('has legs that touch, and no height, without free length', () => {
    for (const length of [6, 5, 0]) {
      for (const distance of [0, 4, 6, 8]) {
        expect(heldArch(length, distance, 6)).toEqual({ kind: 'legs-touch', ratio: 0, heightMm: 0 });
      }
    }
  });

  it('is flat where the distance takes the whole ribbon or more', () => {
    const flat = { kind: 'arch', ratio: 1, heightMm: 0, radiusMm: Number.POSITIVE_INFINITY };
    expect(heldArch(40, 40, 6)).toEqual(flat);
    expect(heldArch(40, 41, 6)).toEqual(flat);
  });

  it('is never higher than 0.4032 of its free length', () => {
    const size = fc.double({ min: 0, max: 500, noNaN: true });
    fc.assert(
      fc.property(size, size, fc.double({ min: 0, max: 20, noNaN: true }), (l, d, body) => {
        const { heightMm } = heldArch(l, d, body);
        expect(heightMm).toBeGreaterThanOrEqual(0);
        expect(heightMm).toBeLessThanOrEqual(0.40315 * Math.max(0, l - body));
      }),
    );
  });
});
