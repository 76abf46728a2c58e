/** Which way the rack is looked at. The document is as seen from the front; the rear only mirrors x. */
export type Side = 'front' | 'rear';

/** A place along a row of that width from its left end as seen from a side, mm; and back. */
export const seenFrom = (side: Side, xMm: number, widthMm: number): number =>
  side === 'front' ? xMm : widthMm - xMm;
