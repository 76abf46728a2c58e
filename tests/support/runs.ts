/**
 * How often a property is tried: so many times in the gate, `RIBBONWRIGHT_TIMES` as often in the long sweep
 * (npm run long). The library prints the seed of each failure.
 */
export const runs = (inGate: number): { readonly numRuns: number } => ({
  numRuns: inGate * Number(process.env.RIBBONWRIGHT_TIMES ?? 1),
});
