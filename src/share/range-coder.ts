import { WHOLE } from './odds.ts';
import { Unusable } from './unusable.ts';

/*
 * Bits as the place of one number between two bounds: a likely bit takes little of the space between them, an unlikely
 * one much (arithmetic coding; Witten, Neal and Cleary 1987, "Arithmetic coding for data compression", CACM 30 (6)).
 */

const MOST = 0xffffffff;

/** Bytes that are read before there is anything to be read from them, but for the one that was written at least. */
const ZEROS = 3;

/** Where between the bounds the ones end and the zeros begin. */
const middle = (low: number, high: number, odds: number): number =>
  low + Math.floor(((high - low) * odds) / WHOLE);

/** The bounds agree on their first byte, which is settled. */
const isSettled = (low: number, high: number): boolean => ((low ^ high) & 0xff000000) === 0;

const shifted = (bound: number): number => (bound << 8) >>> 0;

export class BitWriter {
  readonly #bytes: number[] = [];
  #low = 0;
  #high = MOST;

  /** @param odds - that it is a one, in parts of `WHOLE`, none of the bounds included */
  code(bit: number, odds: number): number {
    const between = middle(this.#low, this.#high, odds);
    if (bit === 1) this.#high = between;
    else this.#low = between + 1;
    while (isSettled(this.#low, this.#high)) {
      this.#bytes.push(this.#high >>> 24);
      this.#low = shifted(this.#low);
      this.#high = (shifted(this.#high) | 0xff) >>> 0;
    }
    return bit;
  }

  /** All bytes: as few as tell the place, since behind them stand zeros. */
  bytes(): Uint8Array {
    const last: number[] = [];
    for (let kept = 1; kept <= 4; kept++) {
      const step = 2 ** (32 - 8 * kept);
      const place = Math.ceil(this.#low / step) * step;
      if (place > this.#high) continue;
      for (let i = 0; i < kept; i++) last.push((place >>> (24 - 8 * i)) & 0xff);
      break;
    }
    return Uint8Array.from([...this.#bytes, ...last]);
  }
}

export class BitReader {
  readonly #bytes: Uint8Array;
  #at = 0;
  #low = 0;
  #high = MOST;
  #place = 0;

  constructor(bytes: Uint8Array) {
    this.#bytes = bytes;
    for (let i = 0; i < 4; i++) this.#place = (this.#place * 256 + this.#next()) >>> 0;
  }

  code(_bit: number, odds: number): number {
    const between = middle(this.#low, this.#high, odds);
    const bit = this.#place <= between ? 1 : 0;
    if (bit === 1) this.#high = between;
    else this.#low = between + 1;
    while (isSettled(this.#low, this.#high)) {
      this.#low = shifted(this.#low);
      this.#high = (shifted(this.#high) | 0xff) >>> 0;
      this.#place = (shifted(this.#place) | this.#next()) >>> 0;
    }
    return bit;
  }

  /** All bytes were read, and no more than there were. */
  get isWhole(): boolean {
    return this.#at >= this.#bytes.length;
  }

  /** Behind the last byte stand as many zeros as a place between bounds needs; whoever asks for more was misled. */
  #next(): number {
    if (this.#at > this.#bytes.length + ZEROS) throw new Unusable('damaged');
    return this.#bytes[this.#at++] ?? 0;
  }
}
