import { fail, ok, type Result } from '../layout/result.ts';

/** What stands before the decimals. */
export type DecimalMark = '.' | ',';

/** Why a text is no number: it is none, or it could be two. */
export type NumberFault =
  | { readonly is: 'no number' }
  | { readonly is: 'either'; readonly values: readonly [number, number] };

const NO_NUMBER = fail<NumberFault>({ is: 'no number' });

/** Digits in groups of three may stand apart. */
const GAP = /(?<=\d)[\s\u00a0\u2009\u202f'’](?=\d{3}(?!\d))/g;

const tidy = (text: string): string =>
  text
    .trim()
    .replace(/^[−–]/, '-')
    .replace(/^([+-]?)(\d*)½$/, (_, sign: string, whole: string) => `${sign}${whole || 0}.5`)
    .replace(GAP, '');

const PLAIN = /^[+-]?(?:\d+(?:[.,]\d+)?|[.,]\d+)(?:e[+-]?\d+)?$/i;
const GROUPED = /^[+-]?\d{1,3}(?:([.,])\d{3})(?:\1\d{3})+$/;
const GROUPED_AND_DECIMALS = /^[+-]?\d{1,3}(?:([.,])\d{3})(?:\1\d{3})*(?!\1)[.,]\d+$/;
/** One mark before three digits: decimals, or thousands. */
const EITHER = /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/;

const markIn = (text: string): DecimalMark => (text.includes(',') ? ',' : '.');

const other = (mark: DecimalMark): DecimalMark => (mark === ',' ? '.' : ',');

const lastMark = (text: string): DecimalMark => (text.lastIndexOf(',') > text.lastIndexOf('.') ? ',' : '.');

/** The number in a text whose decimals stand behind this mark. */
const numberWith = (text: string, mark: DecimalMark): number =>
  Number(text.replaceAll(other(mark), '').replace(mark, '.'));

/** The mark that a text alone tells for sure. */
function markToldBy(text: string): DecimalMark | undefined {
  if (GROUPED.test(text)) return other(markIn(text));
  if (GROUPED_AND_DECIMALS.test(text)) return lastMark(text);
  return PLAIN.test(text) && /[.,]/.test(text) && !EITHER.test(text) ? markIn(text) : undefined;
}

/** The mark that the numbers of a table agree on; nothing where none tells, or some tell otherwise. */
export function decimalMarkOf(texts: Iterable<string>): DecimalMark | undefined {
  const told = new Set<DecimalMark>();
  for (const text of texts) {
    const mark = markToldBy(tidy(text));
    if (mark) told.add(mark);
  }
  const [mark] = told;
  return told.size === 1 ? mark : undefined;
}

/**
 * The number that a text says. "1,250" says 1.25 or 1250: the rest of its table decides, and where that does not, nobody
 * guesses.
 */
export function numberIn(text: string, ofTable: DecimalMark | undefined): Result<number, NumberFault> {
  const plain = tidy(text);
  if (EITHER.test(plain)) {
    if (ofTable) return ok(numberWith(plain, ofTable));
    return fail({
      is: 'either',
      values: [numberWith(plain, markIn(plain)), numberWith(plain, other(markIn(plain)))],
    });
  }
  const mark = markToldBy(plain) ?? '.';
  if (!PLAIN.test(plain) && !GROUPED.test(plain) && !GROUPED_AND_DECIMALS.test(plain)) return NO_NUMBER;
  const value = numberWith(plain, mark);
  return Number.isFinite(value) ? ok(value) : NO_NUMBER;
}

/** A number as text that says the same wherever it stands: three decimals would look like thousands. */
export function numberText(value: number, mark: DecimalMark): string {
  const plain = String(value);
  const text = EITHER.test(plain) ? `${plain}0` : plain;
  return text.replace('.', mark);
}
