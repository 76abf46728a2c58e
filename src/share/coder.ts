import { type Bank, Odds } from './odds.ts';
import type { BitReader, BitWriter } from './range-coder.ts';
import { Unusable } from './unusable.ts';
import { fromBytes, toBytes } from './wide-text.ts';

/**
 * Bits, and values looked at on the way, that one layout may take: some seconds of work, and a hundred times what an
 * honest layout needs. A link can say much in few characters, so its length does not bound what it costs to read.
 */
const MOST_STEPS = 1_000_000;

export type Scalar = string | number;

/** How a value is told in few bits. */
interface Hints {
  /** What the value may well be, the likeliest first. Their places carry meaning: the third stays the third. */
  readonly guesses?: readonly (Scalar | undefined)[];
  /** What the value may hang on: what was met together before is expected again. */
  readonly with?: readonly unknown[];
  /** No value comes twice. */
  readonly unique?: true;
  /** Texts that it may resemble, told letter by letter. */
  readonly like?: readonly (string | undefined)[];
  /** A number that it may lie near. */
  readonly near?: number | undefined;
}

interface Table {
  readonly places: Map<Scalar, number>;
  readonly values: Scalar[];
}

/** Every number times one of these that gives a whole one is told as that; the others are told as text. */
const SCALES = [1, 2, 10, 100, 1000];
const LARGEST_WHOLE = 2 ** 40;

function scaleOf(value: number): number {
  if (Object.is(value, -0)) return SCALES.length;
  const at = SCALES.findIndex((scale) => {
    const whole = Math.round(value * scale);
    return Math.abs(whole) <= LARGEST_WHOLE && whole / scale === value;
  });
  return at < 0 ? SCALES.length : at;
}

const numberText = (value: number): string => (Object.is(value, -0) ? '-0' : String(value));

/** Bits of the largest whole number told: a step between two of those above. */
const LONGEST = 42;

/** Bits of a whole number below its first one that are told apart; those after them are as good as random. */
const TOLD_APART = 4;

/**
 * Writes symbols, or reads them: the same walk over a layout does both, as every method gives back what it coded.
 * While reading, what is handed in does not count.
 */
export class Coder {
  readonly #bits: BitWriter | BitReader;
  readonly #odds = new Odds();
  readonly #tables = new Map<string, Table>();
  readonly #lastOf = new Map<string, Scalar | number>();
  /** All texts so far, each behind a zero. */
  readonly #told: number[] = [0];
  /** Where in them the last three letters were met before. */
  readonly #met = new Map<number, number>();
  readonly #most: number;
  #steps = 0;

  constructor(bits: BitWriter | BitReader, most = MOST_STEPS) {
    this.#bits = bits;
    this.#most = most;
  }

  /** Counts work that is done for a value; throws where it is too much. */
  spend(steps: number): void {
    this.#steps += steps;
    if (this.#steps > this.#most) throw new Unusable('too-big');
  }

  damaged(): never {
    throw new Unusable('damaged');
  }

  flag(value: boolean | undefined, slot: string, ...more: readonly unknown[]): boolean {
    return (
      this.#bit(value ? 1 : 0, this.#banks(slot, more), 0, this.#odds.weights('flag', more.length + 1)) === 1
    );
  }

  /** How it was with a field of the last object of a sort. */
  recent(slot: string, key: string): unknown {
    return this.#lastOf.get(`${slot}.${key}`);
  }

  recall(slot: string, key: string, isThere: boolean): void {
    this.#lastOf.set(`${slot}.${key}`, isThere ? 1 : 0);
  }

  /** A whole number from 0; small ones take few bits. */
  whole(value: number | undefined, slot: string, ...more: readonly unknown[]): number {
    const banks = this.#banks(slot, more);
    const weights = this.#odds.weights('whole', banks.length);
    const goal = (value ?? 0) + 1;
    const length = bitsOf(goal) - 1;
    let bits = 0;
    while (this.#bit(bits < length ? 1 : 0, banks, bits, weights) === 1) {
      if (++bits > LONGEST) throw new Unusable('damaged');
    }
    let found = 1;
    for (let i = bits - 1; i >= 0; i--) {
      const told = bits - 1 - i;
      const place = told < TOLD_APART ? 64 + bits * 16 + found : 1024 + bits * 64 + told;
      const bit = Math.floor(goal / 2 ** i) % 2;
      found = found * 2 + this.#bit(bit, banks, place, weights);
    }
    return found - 1;
  }

  /** A place in a list of so many. */
  place(value: number | undefined, of: number, slot: string, ...more: readonly unknown[]): number {
    if (of <= 1) {
      if (of < 1) throw new Unusable('damaged');
      return 0;
    }
    const banks = this.#banks(`${slot}#${of}`, more);
    const weights = this.#odds.weights('place', banks.length);
    let found = 0;
    for (let i = bitsOf(of - 1) - 1; i >= 0; i--) {
      const bit = Math.floor((value ?? 0) / 2 ** i) % 2;
      found = found * 2 + this.#bit(bit, banks, (i << 20) | found, weights);
    }
    if (found >= of) throw new Unusable('damaged');
    return found;
  }

  /** A value of a sort that is met before any is told. */
  expect(slot: string, value: Scalar): void {
    const { places, values } = this.#table(slot);
    if (places.has(value)) return;
    places.set(value, values.length);
    values.push(value);
  }

  /** The place of a value among those of its sort that were met, from 1; 0 where it was not. */
  metAs(slot: string, value: Scalar): number {
    return (this.#table(slot).places.get(value) ?? -1) + 1;
  }

  metAt(slot: string, place: number): Scalar {
    const value = this.#table(slot).values[place - 1];
    if (value === undefined) throw new Unusable('damaged');
    return value;
  }

  /** A text or a number of one sort: as guessed, as met before, or in full. */
  scalar<T extends Scalar>(
    value: T | undefined,
    sort: 'text' | 'number',
    slot: string,
    hints: Hints = {},
  ): T {
    const { guesses = [], with: along = [], unique = false } = hints;
    const table = this.#table(slot);
    const result =
      this.#guessed(value, slot, guesses, along) ?? this.#metBefore(value, slot, table, along, unique);
    const found = (result ?? this.#inFull(value, sort, slot, hints)) as T;
    this.#remember(slot, table, found, along);
    return found;
  }

  #guessed(
    value: Scalar | undefined,
    slot: string,
    guesses: readonly (Scalar | undefined)[],
    along: readonly unknown[],
  ): Scalar | undefined {
    const byPart = along.map((part, i) => this.#lastOf.get(`${slot}~${i}~${part}`));
    const all = [...guesses, ...byPart];
    if (all.every((guess) => guess === undefined)) return undefined;
    const hit = all.findIndex((guess) => guess !== undefined && Object.is(guess, value));
    const offered = all.map((guess) => (guess === undefined ? '-' : '+')).join('');
    const last = this.#lastOf.get(`${slot}~hit`);
    // One more than the place of the hit, so that none is the zero; the first and none change places: it is likeliest.
    const told = hit < 0 ? 1 : hit === 0 ? 0 : hit + 1;
    const got = this.whole(told, `${slot}?`, `${offered}${last}`, ...along);
    this.#lastOf.set(`${slot}~hit`, got);
    if (got === 1) return undefined;
    const found = all[got === 0 ? 0 : got - 1];
    if (found === undefined) throw new Unusable('damaged');
    return found;
  }

  #metBefore(
    value: Scalar | undefined,
    slot: string,
    { places, values }: Table,
    along: readonly unknown[],
    unique: boolean,
  ): Scalar | undefined {
    if (unique || values.length === 0) return undefined;
    const place = value === undefined || Object.is(value, -0) ? undefined : places.get(value);
    const got = this.whole(
      place === undefined ? 0 : place + 1,
      `${slot}@`,
      this.#lastOf.get(`${slot}~at`),
      ...along,
    );
    if (got === 0) return undefined;
    const found = values[got - 1];
    if (found === undefined) throw new Unusable('damaged');
    return found;
  }

  #remember(slot: string, { places, values }: Table, value: Scalar, along: readonly unknown[]): void {
    if (Object.is(value, -0)) return;
    if (!places.has(value)) {
      places.set(value, values.length);
      values.push(value);
    }
    this.#lastOf.set(`${slot}~at`, places.get(value) as number);
    along.forEach((part, i) => {
      this.#lastOf.set(`${slot}~${i}~${part}`, value);
    });
  }

  #inFull(
    value: Scalar | undefined,
    sort: 'text' | 'number',
    slot: string,
    { like = [], near }: Hints,
  ): Scalar {
    return sort === 'text'
      ? this.text(value as string | undefined, slot, like)
      : this.number(value as number | undefined, slot, near);
  }

  number(value: number | undefined, slot: string, near = 0): number {
    const at = this.whole(value === undefined ? 0 : scaleOf(value), `${slot}*`, 'any');
    if (at > SCALES.length) throw new Unusable('damaged');
    if (at === SCALES.length) return this.#oddNumber(value);
    const scale = SCALES[at] as number;
    const base = Math.round(near * scale) || 0;
    const from = Math.abs(base) <= LARGEST_WHOLE ? base : 0;
    const step = value === undefined ? 0 : Math.round(value * scale) - from;
    const isLess = this.flag(step < 0, `${slot}-`, at);
    const far = this.whole(Math.abs(step), `${slot}+`, at);
    return (from + (isLess ? -far : far)) / scale || 0;
  }

  #oddNumber(value: number | undefined): number {
    const text = this.text(value === undefined ? undefined : numberText(value), 'odd number');
    const read = Number(text);
    if (numberText(read) !== text || !Number.isFinite(read)) throw new Unusable('damaged');
    return read;
  }

  /** @param like - texts that it may resemble: where they ran along with it so far, their next letter is likely */
  text(value: string | undefined, slot: string, like: readonly (string | undefined)[] = []): string {
    const bytes = value === undefined ? [] : [...toBytes(value), 0];
    const guides = like.flatMap((other) =>
      other === undefined ? [] : [{ bytes: [...toBytes(other), 0], at: 0, run: 0 }],
    );
    while (guides.length < 2) guides.push({ bytes: [], at: 0, run: 0 });
    const told = this.#told;
    const start = told.length;
    let word = '';
    for (let i = 0; ; i++) {
      const [a = 0, b = 0, c = 0] = [told[told.length - 1], told[told.length - 2], told[told.length - 3]];
      const key = (((a << 8) | b) << 8) | c;
      const match = this.#match(key);
      const contexts = [
        'text',
        `t1 ${a}`,
        `t2 ${a} ${b}`,
        `t3 ${key}`,
        `tw ${word}`,
        `ts ${slot} ${Math.min(i, 3)}`,
        `tm ${match}`,
        ...guides
          .slice(0, 2)
          .map(({ bytes: letters, at, run }, g) => `tg${g} ${letters[at] ?? -1} ${Math.min(run, 4)}`),
      ];
      const banks = contexts.map((context) => this.#odds.bank(context));
      const weights = this.#odds.weights('text', banks.length);
      const byte = bytes[i] ?? 0;
      let found = 1;
      for (let bit = 7; bit >= 0; bit--)
        found = found * 2 + this.#bit((byte >> bit) & 1, banks, found, weights);
      found -= 256;
      told.push(found);
      this.#met.set((((found << 8) | a) << 8) | b, told.length);
      if (found === 0) break;
      word = isLetter(found) ? (word + String.fromCharCode(found | 32)).slice(-LONGEST_WORD) : '';
      for (const guide of guides) follow(guide, found);
    }
    const read = fromBytes(told.slice(start, -1));
    if (read === undefined) throw new Unusable('damaged');
    return read;
  }

  /** The letter that came after the last three where they were met before, and how long it had been right. */
  #match(key: number): string {
    const at = this.#met.get(key);
    if (at === undefined) return '';
    let run = 3;
    while (run < 12 && this.#told[at - 1 - run] === this.#told[this.#told.length - 1 - run]) run++;
    return `${this.#told[at]} ${run}`;
  }

  #table(slot: string): Table {
    const known = this.#tables.get(slot);
    if (known) return known;
    const table: Table = { places: new Map(), values: [] };
    this.#tables.set(slot, table);
    return table;
  }

  #banks(slot: string, more: readonly unknown[]): Bank[] {
    return [this.#odds.bank(slot), ...more.map((part, i) => this.#odds.bank(`${slot}|${i}|${part}`))];
  }

  #bit(value: number, banks: readonly Bank[], place: number, weights: Int32Array): number {
    this.spend(1);
    const bit = this.#bits.code(value, this.#odds.guess(banks, place, weights));
    this.#odds.learn(bit);
    return bit;
  }
}

/** How many binary digits a whole number from 1 has; reckoned without logarithms, which differ from machine to machine. */
function bitsOf(value: number): number {
  let bits = 1;
  while (2 ** bits <= value) bits++;
  return bits;
}

/** Letters of a word that the next one hangs on. */
const LONGEST_WORD = 20;

const isLetter = (byte: number): boolean =>
  (byte >= 0x61 && byte <= 0x7a) || (byte >= 0x41 && byte <= 0x5a) || byte >= 0x80;

interface Guide {
  readonly bytes: readonly number[];
  at: number;
  run: number;
}

/** Small and capital letters count as the same here. */
const fold = (byte: number): number => (byte >= 0x41 && byte <= 0x5a ? byte | 32 : byte);

/** Goes along a text by one letter; where it differs, looks for the letter a little further on. */
function follow(guide: Guide, byte: number): void {
  if (guide.bytes[guide.at] !== undefined && fold(guide.bytes[guide.at] as number) === fold(byte)) {
    guide.at++;
    guide.run++;
    return;
  }
  guide.run = 0;
  for (let ahead = 1; ahead <= 12; ahead++) {
    if (guide.bytes[guide.at + ahead] === byte) {
      guide.at += ahead + 1;
      return;
    }
  }
  guide.at++;
}
