import { parseHp } from '../panels/figures.ts';

/*
 * What people type into the forms for kinds, as text, and what it says. A field that may stay empty says so by its
 * kind: empty means that something is not known, or not said.
 */

/** A problem for each field that has one, in words that name what is wrong. */
export type Problems<Field extends string> = Partial<Record<Field, string>>;

/** What was read from the fields of a form so far. */
export interface Reading<Field extends string> {
  readonly problems: Problems<Field>;
  /** A number within bounds; `undefined` and a problem where there is none. */
  number(field: Field, text: string, words: string, holds: (value: number) => boolean): number | undefined;
  /** The same of a field that may stay empty. */
  maybe(field: Field, text: string, words: string, holds: (value: number) => boolean): number | undefined;
  /** Notes a problem unless the field has one. */
  wrong(field: Field, words: string): undefined;
}

/** Units that people type along; HP is read by the parser. */
const UNIT = /\s*(mm|ma|u)\s*$/i;

export function startReading<Field extends string>(): Reading<Field> {
  const problems: Problems<Field> = {};
  const wrong = (field: Field, words: string): undefined => {
    problems[field] ??= words;
  };
  const number: Reading<Field>['number'] = (field, text, words, holds) => {
    const value = parseHp(text.replace(UNIT, ''));
    return value !== null && holds(value) ? value : wrong(field, words);
  };
  return {
    problems,
    number,
    maybe: (field, text, words, holds) =>
      text.trim() === '' ? undefined : number(field, text, words, holds),
    wrong,
  };
}

/** A number as it stands in a field: plain, so that it can be typed over. */
export const typed = (value: number | undefined): string => (value === undefined ? '' : String(value));

/** A text that may be empty, trimmed; as it was, where nothing but its ends differs. */
export function keptText(was: string | undefined, text: string): string | undefined {
  const now = text.trim();
  return now === (was ?? '').trim() ? was : now || undefined;
}

const MOST_OWNED = 10_000;

export const OWNED_WORDS = 'A whole number of pieces, or nothing where it is not said';
export const isCount = (value: number): boolean =>
  Number.isInteger(value) && value >= 0 && value <= MOST_OWNED;

const MOST_PRICE = 1e6;

export const PRICE_WORDS = 'A price is a number from 0, or nothing where it is not known';
export const isPrice = (value: number): boolean => value >= 0 && value <= MOST_PRICE;

/** A name that nobody in the list has yet: the wanted one, or with a number behind it. */
export function unusedName(list: readonly { readonly name: string }[], wanted: string): string {
  const names = new Set(list.map(({ name }) => name));
  let name = wanted;
  for (let number = 2; names.has(name); number++) name = `${wanted} (${number})`;
  return name;
}

const LONGEST_NAME = 100;

/** The name of a kind or bus, or what is wrong with it; one that it had already is always well. */
export function readName<Field extends string>(
  reading: Reading<Field | 'name'>,
  text: string,
  others: readonly { readonly name: string }[],
  before: string | undefined,
): string {
  const name = text.trim();
  if (name === before) return name;
  if (name === '') reading.wrong('name', 'Give it a name');
  if (name.length > LONGEST_NAME) reading.wrong('name', `At most ${LONGEST_NAME} characters`);
  if (others.some((other) => other.name === name)) reading.wrong('name', 'Another one has this name');
  return name;
}

export const hasProblems = (problems: Problems<string>): boolean => Object.keys(problems).length > 0;
