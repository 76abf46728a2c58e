import type { Box, PlacedModule, Point, Run, Sheet } from '../../../src/index.ts';
import type { Hidden } from '../layer-keys.ts';
import { font, type Theme } from '../theme.ts';

/** What every drawing needs: the sheet, its colours, and the part of it that is worth drawing. */
export interface Paper {
  readonly sheet: Sheet;
  readonly theme: Theme;
  readonly view: Box;
  /** Layers that are not drawn, or only hinted at. */
  readonly hidden?: Hidden;
  /** Left out while something moves: its figures are those of what stands in the document. */
  readonly heat?: Heat;
}

/** What a line loses, laid over what it runs through. It comes with the functions that draw it, which load late. */
export interface Heat {
  /** Over modules, before what stands on them. */
  tint(ctx: Context, paper: Paper, modules: readonly PlacedModule[]): void;
  /** On ribbons, after their labels. */
  currents(ctx: Context, paper: Paper, runs: readonly Run[], labels: readonly Box[]): void;
  /** On modules, above everything that stands still. */
  figures(ctx: Context, paper: Paper, modules: readonly PlacedModule[]): void;
}

export type Context = CanvasRenderingContext2D;

/** How a path is painted: filled, then outlined. */
interface Look {
  readonly fill?: string;
  readonly line?: string;
  /** Of the line, px. */
  readonly width?: number;
  readonly dash?: readonly number[];
}

/** Paints many things as one path, since each painting call costs; nothing for no things. */
export function paint<T>(
  ctx: Context,
  { fill, line, width = 1, dash }: Look,
  things: readonly T[],
  add: (thing: T) => void,
): void {
  if (things.length === 0) return;
  ctx.beginPath();
  things.forEach(add);
  if (fill) {
    ctx.fillStyle = fill;
    ctx.fill();
  }
  if (!line) return;
  ctx.strokeStyle = line;
  ctx.lineWidth = width;
  ctx.setLineDash(dash ? [...dash] : []);
  ctx.stroke();
}

/** Width of the outline of a small thing, px. */
export const thinLine = (scale: number): number => Math.min(1.6, Math.max(0.8, scale / 2));

export const addBox = (ctx: Context, { left, top, right, bottom }: Box, inset = 0): void =>
  ctx.rect(left + inset, top + inset, right - left - 2 * inset, bottom - top - 2 * inset);

export function addLine(ctx: Context, points: readonly Point[]): void {
  points.forEach(({ x, y }, i) => {
    if (i === 0) ctx.moveTo(x, y);
    else ctx.lineTo(x, y);
  });
}

export function addPolygon(ctx: Context, points: readonly Point[]): void {
  addLine(ctx, points);
  ctx.closePath();
}

export function addDot(ctx: Context, x: number, y: number, radius: number): void {
  ctx.moveTo(x + radius, y);
  ctx.arc(x, y, radius, 0, 2 * Math.PI);
}

export const boxAround = ({ x, y }: Point, halfWidth: number, halfHeight: number): Box => ({
  left: x - halfWidth,
  top: y - halfHeight,
  right: x + halfWidth,
  bottom: y + halfHeight,
});

/** No text is smaller than this, px. */
export const LEAST_TEXT = 11;

/** Size of a text that grows with the scale, but less than it. */
export const textPx = (scale: number, most = 17): number =>
  Math.round(Math.min(most, Math.max(LEAST_TEXT, 8.5 + 1.9 * scale)) * 2) / 2;

export interface Lettering {
  readonly px: number;
  readonly colour: string;
  readonly weight?: number;
  readonly align?: CanvasTextAlign;
  readonly baseline?: CanvasTextBaseline;
  /** The colour of the ground, to part the letters from what they are written over. */
  readonly halo?: string;
}

/** Width of a halo, all of it, px. */
const HALO_PX = 5;

/** Of text that stands in the middle of something. */
export const CENTRED = { align: 'center', baseline: 'middle' } as const;

export function write(ctx: Context, text: string, x: number, y: number, lettering: Lettering): void {
  const { px, colour, weight = 400, align = 'left', baseline = 'alphabetic', halo } = lettering;
  ctx.font = font(px, weight);
  ctx.fillStyle = colour;
  ctx.textAlign = align;
  ctx.textBaseline = baseline;
  if (halo) {
    ctx.lineJoin = 'round';
    ctx.lineWidth = HALO_PX;
    ctx.strokeStyle = halo;
    ctx.strokeText(text, x, y);
    ctx.lineJoin = 'miter';
  }
  ctx.fillText(text, x, y);
}

/** Reads from the right-hand side of the sheet, as on a drawing. */
export function writeUpward(ctx: Context, text: string, x: number, y: number, lettering: Lettering): void {
  ctx.save();
  ctx.translate(x, y);
  ctx.rotate(-Math.PI / 2);
  write(ctx, text, 0, 0, lettering);
  ctx.restore();
}
