/** How much two tiles have in common, mm. */
export const OVERLAP_MM = 10;

/** A piece of a strip that goes on one page, from its start, mm. */
export interface Tile {
  readonly fromMm: number;
  readonly toMm: number;
  /** Letter of the join before it and after it. */
  readonly joins: { readonly before?: string; readonly after?: string };
}

/** A, B … Z, AA, AB … */
const letters = (index: number): string =>
  (index < 26 ? '' : letters(Math.floor(index / 26) - 1)) + String.fromCharCode(65 + (index % 26));

/** Cuts a strip into as few tiles as hold it; each but the last is full and begins where the one before still goes on. */
export function tilesOf(lengthMm: number, mostMm: number): readonly Tile[] {
  const stepMm = mostMm - OVERLAP_MM;
  if (stepMm <= 0) throw new Error('a tile must be longer than what it has in common with the next');
  const tiles: Tile[] = [];
  for (let i = 0, fromMm = 0; ; i++, fromMm = i * stepMm) {
    const isLast = fromMm + mostMm >= lengthMm;
    const joins = { ...(i > 0 && { before: letters(i - 1) }), ...(!isLast && { after: letters(i) }) };
    tiles.push({ fromMm, toMm: isLast ? lengthMm : fromMm + mostMm, joins });
    if (isLast) return tiles;
  }
}
