import { font } from '../theme.ts';
import type { Context } from './paper.ts';

/** The signs of ASCII, a blank to a tilde: they stand beside one another as wide as each stands alone. */
const [FIRST, LAST] = [0x20, 0x7e];

/** What is known of a font. */
interface Widths {
  /** By code of the sign. */
  readonly signs: (number | undefined)[];
  readonly texts: Map<string, number>;
}

/** By size and weight; of each context, since each may have other fonts. */
const known = new WeakMap<Context, Map<number, Widths>>();

const MOST_TEXTS = 2000;

function widthsIn(ctx: Context, px: number, weight: number): Widths {
  const fonts = known.get(ctx) ?? new Map<number, Widths>();
  const key = px * 10_000 + weight;
  const widths = fonts.get(key);
  if (widths) return widths;
  const none: Widths = { signs: [], texts: new Map() };
  known.set(ctx, fonts.set(key, none));
  return none;
}

function measured(ctx: Context, text: string, px: number, weight: number): number {
  ctx.font = font(px, weight);
  return ctx.measureText(text).width;
}

/**
 * How wide a text is, px. Measuring is dear and fitting a name asks for the width of each of its beginnings: a text in
 * ASCII is as wide as its signs together, each measured once. Kerning, a fraction of a px, is left out.
 */
export function widthOf(ctx: Context, text: string, px: number, weight = 400): number {
  const { signs, texts } = widthsIn(ctx, px, weight);
  let sum = 0;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code < FIRST || code > LAST) {
      const width = texts.get(text) ?? measured(ctx, text, px, weight);
      if (texts.size >= MOST_TEXTS) texts.clear();
      texts.set(text, width);
      return width;
    }
    sum += signs[code] ??= measured(ctx, text.charAt(i), px, weight);
  }
  return sum;
}
