/*
 * The arch of a ribbon: the planar inextensible elastica with both ends clamped along the line between them,
 * in its first symmetric shape. With the modulus k and the complete elliptic integrals K(k) and E(k), for a
 * free length L over a distance d:
 *
 *   d/L = 2E/K − 1     height/L = k/K     smallest radius/L = 1/(8kK), at both clamps and at the crown
 *
 * Integrals and Jacobian functions by the arithmetic-geometric mean: Abramowitz & Stegun, Handbook of
 * Mathematical Functions, sections 17.6 and 16.4.
 */

/** Below this d/L the legs of the arch touch, and the formulas end. */
export const LEGS_TOUCH_RATIO = 0.15135;

/** One step of the mean: the arithmetic mean, and half the difference of the two numbers before it. */
interface Mean {
  readonly a: number;
  readonly c: number;
}

/** The next c would be its square over 4a, and vanish beside a in double precision. */
const NEGLIGIBLE = 1e-8;

/** The steps of the arithmetic-geometric mean of 1 and √(1 − k²). */
function meansOf(k: number): Mean[] {
  let a = 1;
  let b = Math.sqrt((1 - k) * (1 + k));
  let c = k;
  const means: Mean[] = [{ a, c }];
  while (c > NEGLIGIBLE * a) {
    const mean = (a + b) / 2;
    b = Math.sqrt(a * b);
    // Equal to half the difference of the two, without the cancellation.
    c = (c * c) / (4 * mean);
    a = mean;
    means.push({ a, c });
  }
  return means;
}

/** K(k) from the last mean. */
const quarterPeriod = (means: readonly Mean[]): number => Math.PI / (2 * (means[means.length - 1] as Mean).a);

/**
 * 2(1 − E/K), the slack (L − d)/L of the arch: a sum of positive terms, so that a small one keeps its digits.
 */
function slackOf(means: readonly Mean[]): number {
  let sum = 0;
  let weight = 1;
  for (const { c } of means) {
    sum += weight * c * c;
    weight *= 2;
  }
  return sum;
}

/** Complete elliptic integrals of the first and second kind, of the modulus k (not of m = k²), 0 ≤ k < 1. */
export function completeIntegrals(k: number): { readonly K: number; readonly E: number } {
  const means = meansOf(k);
  const K = quarterPeriod(means);
  return { K, E: K * (1 - slackOf(means) / 2) };
}

/** Newton's steps square the error: after one as small as this, relative to m, nothing is left to gain. */
const LAST_STEP = 1e-8;

/**
 * The modulus at which an arch takes up so much slack, 0 ≤ slack ≤ 1, to double precision.
 *
 * Newton in m = k², where slack(m) is convex with a slope of at least 1, so that no step can run away and no
 * bracket is needed. The first guess is the inverse power series, its last term fitted, good to 0.2 %.
 */
function modulusAt(slack: number): number {
  if (slack === 0) return 0;
  let m = slack * (1 - slack * (0.125 + slack * (0.03125 + slack * 0.0175)));
  let step: number;
  do {
    const reached = slackOf(meansOf(Math.sqrt(m)));
    const slope = 1 + (m - reached / 2) ** 2 / (m * (1 - m));
    step = (slack - reached) / slope;
    m += step;
  } while (Math.abs(step) > LAST_STEP * m);
  return Math.sqrt(m);
}

/** The arch of a free length of ribbon. */
interface Arch {
  /** Distance over length. */
  readonly ratio: number;
  /** Modulus. */
  readonly k: number;
  /** Height of the crown above the clamps, mm. */
  readonly heightMm: number;
  /**
   * Smallest radius of curvature, at both clamps and at the crown, mm; infinite where the ribbon is straight.
   */
  readonly radiusMm: number;
}

/**
 * The arch of `lengthMm` of free ribbon whose clamped ends lie `distanceMm` apart: length > 0 and
 * 0 ≤ distance ≤ length. Below `LEGS_TOUCH_RATIO` it is mathematical only: the legs would cross.
 */
export function solveArch(lengthMm: number, distanceMm: number): Arch {
  const k = modulusAt((lengthMm - distanceMm) / lengthMm);
  const K = quarterPeriod(meansOf(k));
  return {
    ratio: distanceMm / lengthMm,
    k,
    heightMm: (lengthMm * k) / K,
    radiusMm: lengthMm / (8 * k * K),
  };
}

/** A point of an arch: along the line between the clamps from the first, and height above it, mm. */
interface ArchPoint {
  readonly alongMm: number;
  readonly heightMm: number;
}

/** Jacobi's amplitude am(u) and zeta function Z(u) of the modulus that the means belong to. */
function amplitudeAndZeta(means: readonly Mean[], u: number): { amplitude: number; zeta: number } {
  const last = means.length - 1;
  let amplitude = 2 ** last * (means[last] as Mean).a * u;
  let zeta = 0;
  for (let n = last; n > 0; n--) {
    const { a, c } = means[n] as Mean;
    const lift = c * Math.sin(amplitude);
    zeta += lift;
    amplitude = (amplitude + Math.asin(lift / a)) / 2;
  }
  return { amplitude, zeta };
}

/**
 * The shape of the arch of `lengthMm` of free ribbon over `distanceMm` (as for `solveArch`), for drawing: so
 * many points (at least 2) evenly spaced along the ribbon, clamps included; an odd number puts one on the
 * crown. Exact at each point, from sin(θ/2) = k·sn(4Ks/L) for the slope θ at the length s.
 */
export function archShape(lengthMm: number, distanceMm: number, points: number): ArchPoint[] {
  const { ratio, k, heightMm } = solveArch(lengthMm, distanceMm);
  const means = meansOf(k);
  const K = quarterPeriod(means);
  return Array.from({ length: points }, (_, index) => {
    const share = index / (points - 1);
    const { amplitude, zeta } = amplitudeAndZeta(means, 4 * K * share);
    return {
      alongMm: lengthMm * (ratio * share + zeta / (2 * K)),
      heightMm: heightMm * Math.sin(amplitude / 2) ** 2,
    };
  });
}

/** The arch between two seated connectors, or what is known of it once its legs touch. */
export type HeldArch =
  | { readonly kind: 'arch'; readonly ratio: number; readonly heightMm: number; readonly radiusMm: number }
  | { readonly kind: 'legs-touch'; readonly ratio: number; readonly heightMm: number };

/** Height over free length of the arch whose legs just touch. */
const LEGS_TOUCH_HEIGHT = solveArch(1, LEGS_TOUCH_RATIO).heightMm;

/**
 * The arch of a ribbon between two connectors that are `lengthMm` apart on it and seated `distanceMm` apart.
 * It is held straight over half of each body, so that the free length L − c arches over d − c, with c =
 * `bodyMm`.
 *
 * - `ratio` is (d − c)/(L − c): negative where the bodies overlap, 0 where they leave no free length (L ≤ c).
 * - `legs-touch` where the ratio is below `LEGS_TOUCH_RATIO`, L ≤ c included: no radius is known, and the
 *   height is that of the same free length with its legs just touching.
 * - d ≥ L > c gives a flat arch: ratio 1, height 0, infinite radius.
 */
export function heldArch(lengthMm: number, distanceMm: number, bodyMm: number): HeldArch {
  const freeMm = Math.max(0, lengthMm - bodyMm);
  const overMm = Math.min(distanceMm - bodyMm, freeMm);
  const ratio = freeMm === 0 ? 0 : overMm / freeMm;
  if (ratio < LEGS_TOUCH_RATIO) return { kind: 'legs-touch', ratio, heightMm: freeMm * LEGS_TOUCH_HEIGHT };
  const { heightMm, radiusMm } = solveArch(freeMm, overMm);
  return { kind: 'arch', ratio, heightMm, radiusMm };
}
