import type { Kit } from '../layout/layout.ts';
import { didYouMean } from '../layout/nearest.ts';
import { fail, ok, type Result } from '../layout/result.ts';
import type { Column } from './columns.ts';
import type { CellSort } from './field.ts';
import { restored } from './neutral.ts';
import { type DecimalMark, numberIn } from './number-text.ts';

/** What a cell says: `undefined` where that is not known, or not said; `null` of a current: unknown, `'none'`: none is drawn. */
export type Value = string | number | boolean | null | undefined;

interface Asked {
  readonly kit: Kit;
  readonly column: Column;
  readonly mark: DecimalMark | undefined;
}

const UNKNOWN = new Set(['', '?']);
const NONE = new Set(['none', '-', '–', '—', 'no']);
const YES = new Set(['yes', 'y', 'true', '1', 'x']);
const NO = new Set(['no', 'n', 'false', '0']);

const figure = (value: number): string => String(Number(value.toFixed(6)));

const simple = (text: string): string => text.toLowerCase().replace(/[\s_-]+/g, ' ');

function readNumber(
  text: string,
  sort: Extract<CellSort, { is: 'number' }>,
  { column, mark }: Asked,
): Result<number, string> {
  const isPrice = sort.unit === undefined;
  const [, digits = text, own = ''] =
    /^(.*?[\d½])\s*(["″]|\p{L}+)$/u.exec(isPrice ? text.replace(/\p{Sc}/gu, '').trim() : text) ?? [];
  const bare = isPrice && own === '' ? text.replace(/\p{Sc}/gu, '').trim() : digits;
  const unit = (own || column.unit) ?? '';
  const factor = unit === '' ? 1 : sort.units[unit.toLowerCase()];
  if (factor === undefined) return fail(`the unit “${unit}” is not understood here; ${unitWords(sort)}`);
  const read = numberIn(bare, mark);
  if (!read.ok && read.error.is === 'either') {
    const [decimal, thousands] = read.error.values;
    return fail(
      `it could be ${figure(decimal)} or ${figure(thousands)}; write it so that it can be one only`,
    );
  }
  if (!read.ok) return fail(`it is not ${sort.must}`);
  const value = factor === 1 ? read.value : Math.round(read.value * factor * 1e6) / 1e6;
  return sort.holds(value) ? ok(value) : fail(`it is not ${sort.must}`);
}

const unitWords = ({ units, unit }: Extract<CellSort, { is: 'number' }>): string =>
  unit === undefined
    ? 'a bare number is'
    : `${[...new Set([unit, ...Object.keys(units)])].slice(0, 4).join(', ')} are`;

function readBus(text: string, { kit }: Asked): Result<string, string> {
  const named = (holds: (name: string) => boolean) => kit.buses.filter(({ name }) => holds(name));
  const found =
    kit.buses.find(({ id }) => id === text) ??
    only(named((name) => name === text)) ??
    only(named((name) => simple(name) === simple(text)));
  if (found) return ok(found.id);
  const names = kit.buses.map(({ name }) => name);
  if (names.length === 0) return fail('there is no bus yet; make it first');
  return fail(`no bus has this name${didYouMean(text, names) || '; make it first, under Buses'}`);
}

const only = <T>(list: readonly T[]): T | undefined => (list.length === 1 ? list[0] : undefined);

function readChoice(text: string, { choices }: Extract<CellSort, { is: 'choice' }>): Result<string, string> {
  const found = Object.entries(choices).find(([value, spellings]) =>
    [value, ...spellings].some((spelling) => simple(spelling) === simple(text)),
  );
  if (found) return ok(found[0]);
  const words = Object.values(choices).map(([first]) => `“${first}”`);
  return fail(`it is not ${words.slice(0, -1).join(', ')} or ${words.at(-1)}`);
}

function readYesNo(text: string): Result<boolean, string> {
  const word = text.toLowerCase();
  if (YES.has(word)) return ok(true);
  return NO.has(word) ? ok(false) : fail('it is not “yes” or “no”');
}

/** What a cell says, or why it says nothing that can be kept. */
export function readCell(cell: string, asked: Asked): Result<Value, string> {
  const { field } = asked.column;
  const text = restored(cell).trim();
  if (!field) return ok(undefined);
  const { sort, fact } = field;
  if (sort.is === 'text') {
    if (text.length > sort.most) return fail(`it holds more than ${sort.most} characters`);
    return ok(text === '' ? undefined : text);
  }
  if (fact.of === 'draw') {
    if (UNKNOWN.has(text)) return ok(null);
    if (NONE.has(text.toLowerCase())) return ok('none');
  }
  if (UNKNOWN.has(text)) return ok(undefined);
  switch (sort.is) {
    case 'number':
      return readNumber(text, sort, asked);
    case 'choice':
      return readChoice(text, sort);
    case 'yes or no':
      return readYesNo(text);
    case 'bus':
      return readBus(text, asked);
  }
}
