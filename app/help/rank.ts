/** Something that can be found by its name. */
export interface Findable {
  readonly id: string;
  readonly label: string;
  /** Other words for it. */
  readonly words?: string;
  /** What fits as well comes before it. */
  readonly isLater?: true;
}

const plain = (text: string): string => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();

const WORST = 9;

function lettersInOrder(word: string, text: string): boolean {
  let at = -1;
  return [...word].every((letter) => {
    at = text.indexOf(letter, at + 1);
    return at >= 0;
  });
}

/** How well one typed word fits, 0 the best; at the start of a word of the label, of its other words, inside, and letters in order. */
function howWell(word: string, label: string, others: string): number {
  const starts = (text: string) => text.split(/[^\p{L}\p{N}+-]+/u).some((part) => part.startsWith(word));
  if (label.startsWith(word)) return 0;
  if (starts(label)) return 1;
  if (starts(others)) return 2;
  if (label.includes(word)) return 3;
  return word.length >= 3 && lettersInOrder(word, label) ? 4 : WORST;
}

/** Those that every typed word fits, the best first; of equals the most recent, then as listed. With nothing typed: the recent first. */
export function rank<T extends Findable>(all: readonly T[], typed: string, recent: readonly string[]): T[] {
  const words = plain(typed).split(/\s+/).filter(Boolean);
  const age = ({ id }: T): number => {
    const at = recent.indexOf(id);
    return at < 0 ? recent.length : at;
  };
  return all
    .map((one, i) => {
      const [label, others] = [plain(one.label), plain(one.words ?? '')];
      const fits = words.map((word) => howWell(word, label, others));
      return {
        one,
        i,
        worst: Math.max(0, ...fits),
        sum: fits.reduce((sum, each) => sum + each, one.isLater ? 1.5 : 0),
      };
    })
    .filter(({ worst }) => worst < WORST)
    .sort((a, b) => a.sum - b.sum || age(a.one) - age(b.one) || a.i - b.i)
    .map(({ one }) => one);
}
