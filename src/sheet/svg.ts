import type { Box, Point } from '../drawing/sheet.ts';
import { type Markup, type MarkupPart, markup } from './markup.ts';
import { linesOf, textMm } from './text-lines.ts';

/** Inks of a drawing on paper. Red belongs to the stripe, which is ticked so that it is known without colour too. */
export const INK = '#111';
export const SOFT = '#555';
export const FAINT = '#999';
export const PALE = '#e4e6e8';
export const STRIPE = '#c4161c';

export const SVG_FONT = 'Helvetica Neue, Helvetica, Arial, Liberation Sans, DejaVu Sans, sans-serif';

/** Three decimals: a thousandth of a millimetre. */
export const at = (value: number): number => Math.round(value * 1000) / 1000 + 0;

interface Look {
  readonly fill?: string;
  readonly line?: string;
  readonly width?: number;
  readonly dash?: string;
}

const look = ({ fill = 'none', line = 'none', width = 0.3, dash }: Look): Markup =>
  markup`fill="${fill}" stroke="${line}" stroke-width="${at(width)}"${dash && markup` stroke-dasharray="${dash}"`}`;

const pathOf = (points: readonly Point[]): string =>
  points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${at(x)} ${at(y)}`).join('');

export const line = (points: readonly Point[], style: Look): Markup =>
  markup`<path d="${pathOf(points)}" stroke-linejoin="round" ${look(style)}/>`;

export const polygon = (points: readonly Point[], style: Look): Markup =>
  markup`<path d="${pathOf(points)}Z" ${look(style)}/>`;

export const rect = ({ left, top, right, bottom }: Box, style: Look): Markup =>
  markup`<rect x="${at(left)}" y="${at(top)}" width="${at(Math.max(0, right - left))}" height="${at(Math.max(0, bottom - top))}" ${look(style)}/>`;

export const dot = (x: number, y: number, radius: number, style: Look): Markup =>
  markup`<circle cx="${at(x)}" cy="${at(y)}" r="${at(radius)}" ${look(style)}/>`;

/** Many short strokes or squares as one path. */
export const strokes = (d: string, style: Look): Markup | '' =>
  d === '' ? '' : markup`<path d="${d}" ${look(style)}/>`;

interface Lettering {
  readonly size: number;
  readonly ink?: string;
  readonly bold?: boolean;
  readonly anchor?: 'start' | 'middle' | 'end';
  /** Reads from the right-hand side of the sheet. */
  readonly upward?: boolean;
  /** What it lies on is kept off it. */
  readonly clear?: boolean;
}

export function text(content: string, x: number, y: number, lettering: Lettering): Markup {
  const { size, ink = INK, bold, anchor = 'start', upward, clear } = lettering;
  const [tx, ty] = [at(x), at(y)];
  return markup`<text x="${tx}" y="${ty}" font-size="${at(size)}" fill="${ink}"${anchor !== 'start' && markup` text-anchor="${anchor}"`}${bold && markup` font-weight="700"`}${upward && markup` transform="rotate(-90 ${tx} ${ty})"`}${clear && markup` stroke="#fff" stroke-width="${at(size * 0.3)}" stroke-linejoin="round" paint-order="stroke"`}>${content}</text>`;
}

const LEADING = 1.15;

/** As many lines as there is room for; what has none is hinted at. */
function cut(lines: readonly string[], most: number): readonly string[] {
  if (lines.length <= most) return lines;
  return lines.slice(0, most).map((each, i) => (i === most - 1 ? `${each.slice(0, -1)}…` : each));
}

/** A text on one line; the end of one that has no room is hinted at. */
export const oneLine = (content: string, widthMm: number, size: number): string =>
  cut(linesOf(content, widthMm, { sizeMm: size, bold: true }), 1)[0] ?? '';

/** A name in lines of whole words, if these have room. */
export function linesAcross(content: string, widthMm: number, size: number): readonly string[] | undefined {
  const lines = linesOf(content, widthMm - size * 0.4, { sizeMm: size, bold: true });
  const words = content.split(/\s+/u).filter(Boolean);
  return lines.join(' ') === words.join(' ') ? lines : undefined;
}

/**
 * A name in a box: across it where its words have room, else upward.
 * @param upwardMm - room for a name that stands upright, which may reach beyond the box
 */
export function nameIn(content: string, box: Box, size: number, upwardMm = box.bottom - box.top): MarkupPart {
  const bold = true;
  const [width, height] = [box.right - box.left, box.bottom - box.top];
  const letters = { sizeMm: size, bold };
  const pad = size * 0.4;
  const step = size * LEADING;
  const across = linesAcross(content, width, size);
  const x = (box.left + box.right) / 2;
  if (across && across.length * step <= height)
    return across.map((each, i) =>
      text(each, x, box.top + step * (i + 0.85), { size, bold, anchor: 'middle', clear: true }),
    );
  const most = Math.max(1, Math.floor(width / step));
  const upward = cut(linesOf(content, upwardMm - pad, letters), most);
  const start = x - ((upward.length - 1) * step) / 2 + size * 0.35;
  return upward.map((each, i) =>
    text(each, start + i * step, box.top, { size, bold, anchor: 'end', upward: true, clear: true }),
  );
}

/** A small plate with a name in its middle. */
export function plate(content: string, middle: Point, size: number): Markup {
  const shown = oneLine(content, size * 22, size);
  const half = textMm(shown, { sizeMm: size, bold: true }) / 2 + size * 0.35;
  const box = {
    left: middle.x - half,
    right: middle.x + half,
    top: middle.y - size * 0.7,
    bottom: middle.y + size * 0.7,
  };
  return markup`${rect(box, { fill: '#fff', line: INK, width: size * 0.08 })}${text(shown, middle.x, middle.y + size * 0.36, { size, bold: true, anchor: 'middle' })}`;
}
