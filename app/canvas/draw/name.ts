import type { Box } from '../../../src/index.ts';
import { type Context, LEAST_TEXT, type Lettering, write, writeUpward } from './paper.ts';
import { widthOf } from './text-width.ts';

/** A stretch of a panel, px from the top of the sheet. */
export interface Stretch {
  readonly top: number;
  readonly bottom: number;
}

/** What is left free of a box between things that lie across it, top to bottom. */
export function freeStretches({ top, bottom }: Box, blocks: readonly Stretch[]): Stretch[] {
  const free: Stretch[] = [];
  let from = top;
  for (const block of [...blocks].sort((a, b) => a.top - b.top)) {
    if (block.top > from) free.push({ top: from, bottom: Math.min(block.top, bottom) });
    from = Math.max(from, block.bottom);
  }
  if (from < bottom) free.push({ top: from, bottom });
  return free.length ? free : [{ top, bottom }];
}

const lengthOf = ({ top, bottom }: Stretch): number => bottom - top;

/** "Cobble 3" in two lines: what tells modules of a kind apart stays whole. */
function inTwo(name: string): [string, string] | undefined {
  const space = name.lastIndexOf(' ');
  return space > 0 ? [name.slice(0, space), name.slice(space + 1)] : undefined;
}

/** Shortens the first part of a name until it fits; gives up its number last. */
function shortened(name: string, fits: (text: string) => boolean): string | undefined {
  const [first, last] = inTwo(name) ?? [name, ''];
  const withLetters = (letters: number): string => `${first.slice(0, letters)}.${last && ` ${last}`}`;
  let most = 0;
  let tooMany = first.length;
  while (tooMany - most > 1) {
    const letters = (most + tooMany) >> 1;
    if (fits(withLetters(letters))) most = letters;
    else tooMany = letters;
  }
  if (most > 0) return withLetters(most);
  if (!last) return undefined;
  return fits(last) ? last : shortened(first, fits);
}

const PAD = 2;

/** Where a name may be written, and how. */
interface Place {
  readonly ctx: Context;
  readonly stretches: readonly Stretch[];
  readonly centre: number;
  /** For lines across, px. */
  readonly room: number;
  readonly lettering: Lettering;
}

const fitsAcross = ({ ctx, room, lettering }: Place, text: string, px: number): boolean =>
  widthOf(ctx, text, px, lettering.weight) <= room;

const fitsUp = ({ ctx, lettering }: Place, text: string, stretch: Stretch): boolean =>
  widthOf(ctx, text, lettering.px, lettering.weight) <= lengthOf(stretch) - 2 * PAD;

/** Writes lines at the top of the first stretch that is high enough; answers whether there is one. */
function writeAcross(place: Place, lines: readonly string[], px: number): boolean {
  if (!lines.every((text) => fitsAcross(place, text, px))) return false;
  const step = px * 1.08;
  const stretch = place.stretches.find((free) => lengthOf(free) >= lines.length * step + PAD);
  if (!stretch) return false;
  lines.forEach((text, i) => {
    const y = stretch.top + PAD + px * 0.9 + i * step;
    write(place.ctx, text, place.centre, y, { ...place.lettering, px, align: 'center' });
  });
  return true;
}

/** Writes upward to the top of the first stretch that is long enough; answers whether there is one. */
function writeUp(place: Place, text: string): boolean {
  const stretch = place.stretches.find((free) => fitsUp(place, text, free));
  if (!stretch) return false;
  const lettering = { ...place.lettering, align: 'right', baseline: 'middle' } as const;
  writeUpward(place.ctx, text, place.centre, stretch.top + PAD, lettering);
  return true;
}

/**
 * Writes a name into the free stretches of a box: across at the top, in two lines, or upward where it is
 * narrow; shortened if nothing else fits. Never mirrored. Answers whether it was written.
 */
export function writeName(
  ctx: Context,
  name: string,
  box: Box,
  blocks: readonly Stretch[],
  lettering: Lettering,
): boolean {
  const { left, right } = box;
  const stretches = freeStretches(box, blocks);
  const place: Place = {
    ctx,
    stretches,
    centre: (left + right) / 2,
    room: right - left - 1.5 * PAD,
    lettering,
  };
  if (place.room < lettering.px - PAD) return false;
  const two = inTwo(name);
  for (const px of [lettering.px, LEAST_TEXT]) {
    if (writeAcross(place, [name], px) || (two && writeAcross(place, two, px))) return true;
  }
  if (writeUp(place, name)) return true;
  const [first, ...last] = two ?? [name];
  const head = shortened(first, (text) => fitsAcross(place, text, LEAST_TEXT));
  if (head && writeAcross(place, [head, ...last], LEAST_TEXT)) return true;
  const text = shortened(name, (short) => stretches.some((free) => fitsUp(place, short, free)));
  return text !== undefined && writeUp(place, text);
}
