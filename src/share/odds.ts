/*
 * How likely the next bit is a one, learned from the bits before it. Every context has odds of its own; a mixer that
 * learns which contexts to trust joins them. Whole numbers only: two machines must reckon the very same odds, or what
 * one wrote the other could not read. After the method of context mixing (Mahoney 2005, "Adaptive weighing of context
 * models for lossless data compression", Florida Tech. CS-2005-16).
 */

/** Odds are counted in parts of this. */
export const WHOLE = 4096;
const HALF = WHOLE / 2;

/** 4096 / (1 + e^(−x / 256)) at every 128th x from −2048 to 2048; between them on straight lines. */
const LOGISTIC = [
  1, 2, 3, 6, 10, 16, 27, 45, 73, 120, 194, 310, 488, 747, 1101, 1546, 2047, 2549, 2994, 3348, 3607, 3785,
  3901, 3975, 4022, 4050, 4068, 4079, 4085, 4089, 4092, 4093, 4094,
];
const FARTHEST = 2047;

/** Odds from what is added up in the mixer. */
export function squash(x: number): number {
  if (x > FARTHEST) return WHOLE - 1;
  if (x < -FARTHEST) return 1;
  const at = (x >> 7) + 16;
  const share = x & 127;
  return ((LOGISTIC[at] as number) * (128 - share) + (LOGISTIC[at + 1] as number) * share + 64) >> 7;
}

/** The inverse of `squash`, by odds. */
const STRETCHED: Int16Array = (() => {
  const table = new Int16Array(WHOLE);
  let from = 0;
  for (let x = -FARTHEST; x <= FARTHEST; x++) {
    const odds = squash(x);
    for (let i = from; i <= odds; i++) table[i] = x;
    from = Math.max(from, odds + 1);
  }
  for (let i = from; i < WHOLE; i++) table[i] = FARTHEST;
  return table;
})();

/** Odds of one bit in one context, in parts of 2 to the 16th, and how often it was met. */
interface Cell {
  odds: number;
  met: number;
}

/** What was learned in one context, by the place of the bit in its symbol. */
export type Bank = Map<number, Cell>;

/** A quarter of a million is far more than an honest layout needs; a link made to fill the memory gets no more. */
const MOST_CELLS = 1 << 18;

/** How far the first meetings move the odds, in parts of 2 to the 16th; afterwards as the last one. */
const PACE = [50_000, 26_000, 18_000, 13_500, 11_000, 9_200, 8_000, 7_000, 6_200, 5_600, 5_000, 4_500, 4_000];

/** Weight of a context before the mixer has learned anything, in parts of 2 to the 16th. */
const FIRST_WEIGHT = 20_000;
const LEARNING = 20;

export class Odds {
  readonly #banks = new Map<string, Bank>();
  readonly #weights = new Map<string, Int32Array>();
  readonly #spare: Cell = { odds: HALF << 4, met: 0 };
  readonly #inputs = new Int32Array(16);
  readonly #cells: Cell[] = [];
  #count = 0;
  #weight: Int32Array = new Int32Array(0);
  #odds = HALF;

  bank(context: string): Bank {
    const known = this.#banks.get(context);
    if (known) return known;
    const bank: Bank = new Map();
    if (this.#banks.size < MOST_CELLS) this.#banks.set(context, bank);
    return bank;
  }

  /** The weights that a sort of symbol learns, one for each of its contexts. */
  weights(sort: string, contexts: number): Int32Array {
    const key = `${sort}/${contexts}`;
    let weights = this.#weights.get(key);
    if (!weights) {
      weights = new Int32Array(contexts).fill(FIRST_WEIGHT);
      this.#weights.set(key, weights);
    }
    return weights;
  }

  /** Odds that the bit at this place of a symbol is a one. */
  guess(banks: readonly Bank[], place: number, weights: Int32Array): number {
    let sum = 0;
    for (let i = 0; i < banks.length; i++) {
      const cell = this.#cell(banks[i] as Bank, place);
      const input = STRETCHED[cell.odds >> 4] as number;
      this.#cells[i] = cell;
      this.#inputs[i] = input;
      sum += input * (weights[i] as number);
    }
    this.#weight = weights;
    this.#odds = squash(Math.floor(sum / 65_536));
    return this.#odds;
  }

  /** Learns which bit it was that was last guessed. */
  learn(bit: number): void {
    const off = ((bit << 12) - this.#odds) * LEARNING;
    for (let i = 0; i < this.#weight.length; i++) {
      const input = this.#inputs[i] as number;
      this.#weight[i] = (this.#weight[i] as number) + ((input * off + 0x8000) >> 16);
      const cell = this.#cells[i] as Cell;
      const pace = PACE[Math.min(cell.met, PACE.length - 1)] as number;
      const goal = bit === 1 ? 65_535 : 0;
      cell.odds += Math.trunc(((goal - cell.odds) * pace) / 65_536);
      cell.met++;
    }
  }

  #cell(bank: Bank, place: number): Cell {
    const known = bank.get(place);
    if (known) return known;
    if (this.#count >= MOST_CELLS) {
      this.#spare.odds = HALF << 4;
      this.#spare.met = 0;
      return this.#spare;
    }
    this.#count++;
    const cell: Cell = { odds: HALF << 4, met: 0 };
    bank.set(place, cell);
    return cell;
  }
}
