const QUOTE = 0x22;
const BACKSLASH = 0x5c;
const COMMA = 0x2c;
const OPENING: ReadonlySet<number> = new Set([0x5b, 0x7b]);
const CLOSING: ReadonlySet<number> = new Set([0x5d, 0x7d]);

/** How large the value of a JSON text would be, found without making it. */
export interface JsonSize {
  readonly depth: number;
  /** No fewer than there are values; empty lists and objects count twice. */
  readonly values: number;
}

export function sizeOfJson(text: string): JsonSize {
  let depth = 0;
  let deepest = 0;
  let values = 1;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === QUOTE) at = endOfText(text, at);
    else if (code === COMMA) values++;
    else if (OPENING.has(code)) {
      values++;
      deepest = Math.max(deepest, ++depth);
    } else if (CLOSING.has(code)) depth--;
  }
  return { depth: deepest, values };
}

/** Where the quote stands that closes the text opened here; the end where none does. */
function endOfText(text: string, opened: number): number {
  for (let at = opened + 1; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === BACKSLASH) at++;
    else if (code === QUOTE) return at;
  }
  return text.length;
}

/** A place in a text, counted from 1 as editors do. */
export interface TextPlace {
  readonly line: number;
  readonly column: number;
  /** The character that cannot stand there; absent: the text ends too early. */
  readonly found?: string;
}

/** The first place where a text stops being JSON; undefined where it does not. */
export function faultOfJson(text: string): TextPlace | undefined {
  const at = new JsonReader(text).fault();
  if (at === undefined) return undefined;
  const before = text.slice(0, at);
  const line = before.split('\n').length;
  const column = at - before.lastIndexOf('\n');
  const found = text.codePointAt(at);
  return found === undefined ? { line, column } : { line, column, found: String.fromCodePoint(found) };
}

const BLANK = /[ \t\n\r]*/y;
const NUMBER = /-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?/y;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;
const WORDS: Readonly<Record<string, string>> = { t: 'true', f: 'false', n: 'null' };
const CLOSERS: Readonly<Record<string, string>> = { '[': ']', '{': '}' };

type Expected = 'value' | 'key' | 'colon' | 'comma';

/** Reads JSON without making a value, and without calling itself: no text is too deep for it. */
class JsonReader {
  readonly #text: string;
  readonly #closers: string[] = [];
  #at = 0;
  #expected: Expected = 'value';
  /** Nothing stands yet in the list or object that was opened last. */
  #fresh = false;

  constructor(text: string) {
    this.#text = text;
  }

  fault(): number | undefined {
    for (;;) {
      this.#skip(BLANK);
      const done = this.#expected === 'comma' && this.#closers.length === 0;
      if (this.#at === this.#text.length) return done ? undefined : this.#at;
      if (done || !this.#step(this.#text[this.#at] as string)) return this.#at;
    }
  }

  /** Reads on past one token; false, and at the character that is amiss, where it does not fit. */
  #step(character: string): boolean {
    if (character === this.#closers.at(-1) && this.#mayClose()) return this.#close();
    switch (this.#expected) {
      case 'colon':
        return character === ':' && this.#pass('value');
      case 'comma':
        return character === ',' && this.#pass(this.#closers.at(-1) === '}' ? 'key' : 'value');
      case 'key':
        return character === '"' && this.#string() && this.#now('colon');
      case 'value':
        return this.#value(character);
    }
  }

  #mayClose(): boolean {
    return this.#fresh || this.#expected === 'comma';
  }

  #close(): boolean {
    this.#closers.pop();
    return this.#pass('comma');
  }

  #value(character: string): boolean {
    const closer = CLOSERS[character];
    if (closer !== undefined) {
      this.#closers.push(closer);
      this.#pass(closer === '}' ? 'key' : 'value');
      this.#fresh = true;
      return true;
    }
    if (character === '"') return this.#string() && this.#now('comma');
    const word = WORDS[character];
    return (word === undefined ? this.#skip(NUMBER) : this.#word(word)) && this.#now('comma');
  }

  #pass(expected: Expected): boolean {
    this.#at++;
    return this.#now(expected);
  }

  #now(expected: Expected): boolean {
    this.#expected = expected;
    this.#fresh = false;
    return true;
  }

  /** Reads on past what the pattern matches, if anything. */
  #skip(pattern: RegExp): boolean {
    pattern.lastIndex = this.#at;
    const [match = ''] = pattern.exec(this.#text) ?? [];
    this.#at += match.length;
    return match.length > 0;
  }

  #word(word: string): boolean {
    for (const character of word) {
      if (this.#text[this.#at] !== character) return false;
      this.#at++;
    }
    return true;
  }

  #string(): boolean {
    this.#at++;
    for (;;) {
      const code = this.#text.charCodeAt(this.#at);
      if (code === QUOTE) {
        this.#at++;
        return true;
      }
      // Past the end the code is no number, and no larger than a control character.
      if (!(code >= 0x20)) return false;
      if (code !== BACKSLASH) this.#at++;
      else if (!this.#skip(ESCAPE)) return false;
    }
  }
}
