/** Whether this is no run of the gate but one of `npm run long`, which has the time to try every pair. */
export const isLongSweep = Number(process.env.RIBBONWRIGHT_TIMES ?? 1) > 1;
