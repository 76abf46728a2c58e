/** Longer words are not compared: their distance costs the product of their lengths. */
const MOST_LETTERS = 40;

/** Letters to insert, leave out, change, or swap with the next one, to make one word of the other. */
function distance(a: string, b: string): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const now = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      let least = Math.min(
        (last[j] as number) + 1,
        (now[j - 1] as number) + 1,
        (last[j - 1] as number) + change,
      );
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        least = Math.min(least, (before[j - 2] as number) + 1);
      }
      now.push(least);
    }
    before = last;
    last = now;
  }
  return last[b.length] as number;
}

/** The word that was probably meant: the nearest one, if it differs in two letters or a third of them at most. */
export function nearest(word: string, words: Iterable<string>): string | undefined {
  if (word.length > MOST_LETTERS) return undefined;
  const most = Math.max(2, Math.floor(word.length / 3));
  let best: string | undefined;
  let least = Math.min(most, Math.max(1, word.length - 1)) + 1;
  const asked = word.toLowerCase();
  for (const candidate of words) {
    if (Math.abs(candidate.length - word.length) >= least || candidate.length > MOST_LETTERS) continue;
    const d = distance(asked, candidate.toLowerCase());
    if (d < least) [best, least] = [candidate, d];
  }
  return best;
}
