/**
 * How often a property is tried, and from which seed: so many times in the gate and always from the same one, so
 * that one commit has one verdict; `RIBBONWRIGHT_TIMES` as often and from a seed of its own, which it prints, in
 * the long sweep (npm run long).
 */
export const runs = (inGate: number): { readonly numRuns: number; readonly seed: number } => ({
  numRuns: Math.ceil(inGate * Number(process.env.RIBBONWRIGHT_TIMES ?? 1)),
  seed: Number(process.env.RIBBONWRIGHT_SEED ?? 1),
});
