import { type Markup, type MarkupPart, markup } from '../sheet/markup.ts';
import { at, SVG_FONT } from '../sheet/svg.ts';

/** A small drawing beside the drawing of an example, of what a plan of the case cannot show. */
export interface Inset {
  /** A document of its own. */
  readonly svg: string;
  /** What is seen, in words. */
  readonly seen: string;
}

/** What an inset draws, for a width of `WIDE`. */
export interface InsetBody {
  readonly high: number;
  readonly body: MarkupPart;
  readonly seen: string;
}

/** All insets are as wide as this: as many px as they get in a window of usual width. */
export const WIDE = 400;
export const LETTERS = 13;
export const MARGIN = 10;

/** Insets one under the other, as one. */
export function insetOf(bodies: readonly InsetBody[]): Inset {
  let y = 0;
  const parts: Markup[] = bodies.map(({ high, body }) => {
    y += high;
    return markup`<g transform="translate(0 ${at(y - high)})">${body}</g>`;
  });
  const { text } =
    markup`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDE} ${at(y)}" width="${WIDE}" height="${at(y)}" font-family="${SVG_FONT}">${parts}</svg>`;
  return { svg: text, seen: bodies.map(({ seen }) => seen).join(' ') };
}
