import type { PlacedRow } from '../../src/index.ts';
import { sheetMm } from '../../src/index.ts';
import type { Size, Viewport } from './model.ts';

/** CSS px at each edge of the canvas that panels cover. */
export interface Insets {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}

const NO_INSETS: Insets = { top: 0, right: 0, bottom: 0, left: 0 };

/** CSS px per mm. */
export const SCALES = { least: 0.2, most: 16 } as const;

/** Below this a panel of 4 HP has no room for its name. */
const LEGIBLE = 1;

/** So much more than legible is not given up to get the whole height on the screen. */
const COMFORTABLE = 1.3;

/** Fitted no larger than this, so that a small case does not fill the screen with one module. */
const ROOMY = 3;

/** Share of the free area that the sheet may be pushed out of it, but never by more than half of the sheet. */
const PUSH = 0.25;

const clampTo = (value: number, least: number, most: number): number =>
  Math.min(Math.max(value, least), most);

interface Span {
  readonly start: number;
  readonly length: number;
}

const freeSpan = (size: number, before: number, after: number): Span => ({
  start: before,
  length: Math.max(1, size - before - after),
});

const acrossOf = ({ width }: Size, { left, right }: Insets): Span => freeSpan(width, left, right);
const downOf = ({ height }: Size, { top, bottom }: Insets): Span => freeSpan(height, top, bottom);

/** Keeps some of the sheet in sight along one axis. */
function clampAlong(at: number, sheet: number, { start, length }: Span): number {
  const slack = Math.min(PUSH * length, sheet / 2);
  const end = start + length - sheet;
  return clampTo(at, Math.min(start, end) - slack, Math.max(start, end) + slack);
}

/** Moves a viewport back so that the rack cannot get lost; keeps its scale within bounds. */
export function clampViewport(
  viewport: Viewport,
  rows: readonly PlacedRow[],
  size: Size,
  insets: Insets = NO_INSETS,
): Viewport {
  const scale = clampTo(viewport.scale, SCALES.least, SCALES.most);
  const sheet = sheetMm(rows);
  return {
    scale,
    x: clampAlong(viewport.x, sheet.width * scale, acrossOf(size, insets)),
    y: clampAlong(viewport.y, sheet.height * scale, downOf(size, insets)),
  };
}

export const panBy = ({ scale, x, y }: Viewport, dx: number, dy: number): Viewport => ({
  scale,
  x: x + dx,
  y: y + dy,
});

/** Zooms by a factor; what lies under the point of the screen stays there. */
export function zoomAbout(viewport: Viewport, factor: number, x: number, y: number): Viewport {
  const scale = clampTo(viewport.scale * factor, SCALES.least, SCALES.most);
  const ratio = scale / viewport.scale;
  return { scale, x: x - (x - viewport.x) * ratio, y: y - (y - viewport.y) * ratio };
}

/** Keeps in the middle what is there when the case is turned round. */
export function turnViewport(
  { scale, x, y }: Viewport,
  rows: readonly PlacedRow[],
  size: Size,
  insets: Insets = NO_INSETS,
): Viewport {
  const { start, length } = acrossOf(size, insets);
  return { scale, x: 2 * start + length - sheetMm(rows).width * scale - x, y };
}

/** Starts at the edge if there is too little room, else in the middle. */
const centred = (sheet: number, { start, length }: Span): number => start + Math.max(0, (length - sheet) / 2);

/**
 * Fits the rows to the free width; where that would be too small to read, to the free height instead, and
 * the rest is a pan away. A fitted sheet starts at its top, and at the front's left end if it is too wide.
 */
export function fitViewport(
  rows: readonly PlacedRow[],
  side: 'front' | 'rear',
  size: Size,
  insets: Insets = NO_INSETS,
): Viewport {
  const sheet = sheetMm(rows);
  const across = acrossOf(size, insets);
  const down = downOf(size, insets);
  const byWidth = across.length / sheet.width;
  const byHeight = down.length / sheet.height;
  const whole = Math.min(byWidth, Math.max(byHeight, LEGIBLE * COMFORTABLE), ROOMY);
  const scale = whole < LEGIBLE ? clampTo(byHeight, LEGIBLE, LEGIBLE * COMFORTABLE) : whole;
  const overhang = sheet.width * scale - across.length;
  const x = side === 'rear' && overhang > 0 ? across.start - overhang : centred(sheet.width * scale, across);
  const y = Math.min(centred(sheet.height * scale, down), down.start + 24);
  return { scale, x, y };
}
