import { quote } from './quote.ts';

/** Longer words are not compared, as their distance costs the product of their lengths. */
const MOST_LETTERS = 40;
/** A document with more names than these may be made to be slow. */
const MOST_WORDS = 2_000;

/**
 * The word that was probably meant: the nearest one, if it differs in two letters or a third of them at most.
 * Upper and lower case count as the same.
 */
export function nearest(word: string, words: Iterable<string>): string | undefined {
  if (word.length > MOST_LETTERS) return undefined;
  const asked = word.toLowerCase();
  let best: string | undefined;
  let most = Math.min(Math.max(2, Math.floor(word.length / 3)), Math.max(1, word.length - 1));
  let compared = 0;
  for (const candidate of words) {
    if (++compared > MOST_WORDS) break;
    const slips = slipsBetween(asked, candidate.toLowerCase(), most);
    if (slips <= most) [best, most] = [candidate, slips - 1];
  }
  return best;
}

/** `; did you mean "cobble"?`, or nothing. */
export function didYouMean(word: string, words: Iterable<string>): string {
  const near = nearest(word, words);
  return near === undefined ? '' : `; did you mean ${quote(near)}?`;
}

/**
 * Letters to insert, leave out, change, or swap with the next one, to make one word of the other (optimal string
 * alignment); some number above `most` where that takes more.
 */
function slipsBetween(a: string, b: string, most: number): number {
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const now = [i];
    let least = i;
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      const slips = Math.min(
        (last[j] as number) + 1,
        (now[j - 1] as number) + 1,
        (last[j - 1] as number) + change,
        swapped ? (before[j - 2] as number) + 1 : Number.POSITIVE_INFINITY,
      );
      now.push(slips);
      least = Math.min(least, slips);
    }
    if (least > most) return most + 1;
    before = last;
    last = now;
  }
  return last[b.length] as number;
}
