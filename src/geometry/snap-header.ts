import { PIN_MM } from './connector.ts';
import type { PanelPlace, PanelSize } from './edges.ts';

/** A line that a header has caught on: upright at x, or level at y, mm. */
export interface Guide {
  readonly along: 'x' | 'y';
  readonly atMm: number;
}

/** Where a header comes to lie, and the lines that hold it there. */
export interface Snapped extends PanelPlace {
  readonly guides: readonly Guide[];
}

/** Half a pin's pitch, mm: what is not held by a line lies on this grid. */
export const SNAP_GRID_MM = PIN_MM / 2;

const onGrid = (mm: number, fromMm: number): number =>
  Math.round((fromMm + Math.round((mm - fromMm) / SNAP_GRID_MM) * SNAP_GRID_MM) * 1000) / 1000;

const nearest = (mm: number, lines: readonly number[], reachMm: number): number | undefined =>
  lines
    .filter((line) => Math.abs(line - mm) <= reachMm)
    .sort((a, b) => Math.abs(a - mm) - Math.abs(b - mm))[0];

/**
 * Holds a header that is moved to the panel's centre line and to the middles of other headers, where it comes as near
 * as that; else to the grid of half pins, counted from the centre line and from the bottom edge.
 */
export function snapHeader(
  { xMm, yMm }: PanelPlace,
  others: readonly PanelPlace[],
  { widthMm }: PanelSize,
  reachMm: number,
): Snapped {
  const middle = Math.round(widthMm * 500) / 1000;
  const x = nearest(xMm, [middle, ...others.map((other) => other.xMm)], reachMm);
  const y = nearest(
    yMm,
    others.map((other) => other.yMm),
    reachMm,
  );
  return {
    xMm: x ?? onGrid(xMm, middle),
    yMm: y ?? onGrid(yMm, 0),
    guides: [
      ...(x === undefined ? [] : [{ along: 'x' as const, atMm: x }]),
      ...(y === undefined ? [] : [{ along: 'y' as const, atMm: y }]),
    ],
  };
}
