import type { PinEnd } from '../layout/layout.ts';

/** Which way the rack is looked at. The document is as seen from the front; the rear only mirrors x. */
export type Side = 'front' | 'rear';

/** A place along a row of that width from its left end as seen from a side, mm; and back. */
export const seenFrom = (side: Side, xMm: number, widthMm: number): number =>
  side === 'front' ? xMm : widthMm - xMm;

const MIRRORED: Readonly<Record<PinEnd, PinEnd>> = { left: 'right', right: 'left', up: 'up', down: 'down' };

/** The end of a header with pin 1 as it looks from a side; the document says it as seen from the front. */
export const endSeenFrom = (side: Side, end: PinEnd | undefined): PinEnd | undefined =>
  end && side === 'rear' ? MIRRORED[end] : end;
