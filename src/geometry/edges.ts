import { hpToMm, panelHeightMm } from './rack.ts';
import { seenFrom } from './side.ts';

/**
 * The edges from which places on a panel are measured. Left is said of the side that is looked at: the left edge seen
 * from the rear is the right one seen from the front.
 */
export interface Edges {
  readonly across: 'front-left' | 'rear-left';
  readonly up: 'bottom' | 'top';
}

/** As the document has it. */
export const DOCUMENT_EDGES: Edges = { across: 'front-left', up: 'bottom' };

/** A place on a panel, or the distances to two of its edges, mm. */
export interface PanelPlace {
  readonly xMm: number;
  readonly yMm: number;
}

/** The place that a module takes on the rail, and the height of its panel, mm. */
export interface PanelSize {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Lower than its own play a panel cannot be; a hair of it is left to be drawn, mm. */
const LEAST_MM = 0.1;

export const panelSizeMm = (widthHp: number, heightU: number): PanelSize => ({
  widthMm: hpToMm(widthHp),
  heightMm: Math.max(LEAST_MM, panelHeightMm(heightU)),
});

/** Without the noise of float arithmetic: a millionth of a millimetre is beyond all measuring. */
const tidyMm = (mm: number): number => Math.round(mm * 1e6) / 1e6 + 0;

/**
 * Distances from these edges of a place that the document has, mm, and back: measuring from the other edge twice gives
 * the place again.
 */
export const measuredFrom = (
  { across, up }: Edges,
  { widthMm, heightMm }: PanelSize,
  { xMm, yMm }: PanelPlace,
): PanelPlace => ({
  xMm: across === 'front-left' ? xMm : tidyMm(seenFrom('rear', xMm, widthMm)),
  yMm: up === 'bottom' ? yMm : tidyMm(heightMm - yMm),
});
