/** A limit counts as exceeded beyond this, so that float noise is no finding. */
export const EPSILON = 1e-6;

export const exceeds = (value: number, limit: number): boolean => value > limit + EPSILON;
