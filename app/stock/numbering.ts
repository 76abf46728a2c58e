/*
 * Two habits of counting the pins of a field of two rows. Ours is the first, and the one that a document is written
 * in: it is also the order of the conductors of a ribbon that is pressed on.
 */

/** zigzag: across the pair and on to the next one, as on a pin header. down: down one side and up the other, as on a chip. */
export type Numbering = 'zigzag' | 'down';

/** The number that a pin bears, both counted from 1 there and from 0 here in the order of a pin header. */
export function numberOf(pin: number, pins: number, numbering: Numbering): number {
  if (numbering === 'zigzag') return pin + 1;
  const pair = Math.floor(pin / 2);
  return pin % 2 === 0 ? pair + 1 : pins - pair;
}

/** The pin of that number; `numberOf` the other way. */
export function pinOf(number: number, pins: number, numbering: Numbering): number {
  if (numbering === 'zigzag') return number - 1;
  const pairs = pins / 2;
  return number <= pairs ? 2 * (number - 1) : 2 * (pins - number) + 1;
}

/** Lines listed in the order of a numbering, from one pin on, among those that are there; too many are left out. */
export function withListed(
  lines: readonly string[],
  listed: readonly string[],
  from: number,
  numbering: Numbering,
): readonly string[] {
  const after = [...lines];
  const first = numberOf(from, lines.length, numbering);
  listed.slice(0, lines.length - first + 1).forEach((line, i) => {
    after[pinOf(first + i, lines.length, numbering)] = line;
  });
  return after;
}
