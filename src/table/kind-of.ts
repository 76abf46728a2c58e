import { freshKindId } from '../edit/fresh.ts';
import type { Header, Kit, ModuleKind } from '../layout/layout.ts';
import { PIN_ENDS } from '../layout/references.ts';
import { fail, ok, type Result } from '../layout/result.ts';
import type { Value } from './cell.ts';
import { headerKey } from './field.ts';

/** Why a row makes no kind. */
export interface Missing {
  /** Keys of the fields that it lies with, the likeliest first. */
  readonly keys: readonly string[];
  readonly why: string;
}

type Values = ReadonlyMap<string, Value>;

const KIND_FIELDS = [
  'name',
  'widthHp',
  'heightU',
  'depthMm',
  'depthIs',
  'owned',
  'price',
  'color',
  'notes',
  'known',
] as const satisfies readonly (keyof ModuleKind)[];

const HEADER_FIELDS = [
  'name',
  'bus',
  'role',
  'xMm',
  'yMm',
  'zMm',
  'axis',
  'pin1',
  'keyed',
  'passes',
  'isolated',
  'counts',
] as const satisfies readonly (keyof Header)[];

/** The fields that a table tells, in place of those of the thing as it was; what it leaves empty is not known. */
function withTold<T extends object>(
  before: Partial<T>,
  fields: readonly (keyof T & string)[],
  values: Values,
  keyOf: (field: string) => string,
): Partial<T> {
  const result: Record<string, unknown> = { ...before };
  for (const field of fields) {
    if (!values.has(keyOf(field))) continue;
    const value = values.get(keyOf(field));
    if (value === undefined) delete result[field];
    else result[field] = value;
  }
  return result as Partial<T>;
}

/** Of a voltage that has no column nothing is said: a new kind draws none of it. */
function drawsOf(kit: Kit, values: Values, before: ModuleKind['draws']): ModuleKind['draws'] {
  const draws: Record<string, number | null> = { ...before };
  for (const { id } of kit.voltages) {
    const value = values.get(`draws ${id}`);
    if (value === 'none') delete draws[id];
    else if (typeof value === 'number' || value === null) draws[id] = value;
  }
  return draws;
}

/** Numbers of the headers that a table has columns for, rising. */
function headersTold(values: Values): number[] {
  const numbers = [...values.keys()].flatMap((key) => /^header (\d+) /.exec(key)?.[1] ?? []);
  return [...new Set(numbers.map(Number))].sort((a, b) => a - b);
}

/** The header that a row tells anew: the one of its id, or of its place and bus. */
function partnerOf(before: readonly Header[], at: number, id: Value, bus: Value): Header | undefined {
  if (typeof id === 'string') return before.find((header) => header.id === id);
  const same = before[at];
  return same && (bus === undefined || same.bus === bus) ? same : undefined;
}

function freshHeaderId(taken: ReadonlySet<string>, bus: string): string {
  for (let number = 1; ; number++) {
    const id = number === 1 ? bus : `${bus}-${number}`;
    if (!taken.has(id)) return id;
  }
}

function headersOf(values: Values, before: readonly Header[]): Result<readonly Header[], readonly Missing[]> {
  const numbers = headersTold(values);
  if (numbers.length === 0) return ok(before);
  const missing: Missing[] = [];
  const headers: Header[] = [];
  const own = numbers.map((number) => values.get(headerKey(number, 'id')));
  const partners = numbers.map((number, at) =>
    partnerOf(before, at, values.get(headerKey(number, 'id')), values.get(headerKey(number, 'bus'))),
  );
  const taken = new Set(
    [...own, ...partners.map((partner) => partner?.id)].filter((id) => typeof id === 'string'),
  );
  const given = new Set<string>();
  numbers.forEach((number, at) => {
    const key = (field: string): string => headerKey(number, field as keyof Header);
    if (['id', ...HEADER_FIELDS].every((field) => values.get(key(field)) === undefined)) return;
    const partner = partners[at];
    const told = withTold<Header>(partner ?? {}, HEADER_FIELDS, values, key);
    for (const [field, words] of [
      ['bus', 'bus'],
      ['xMm', 'x'],
      ['yMm', 'y'],
    ] as const) {
      if (told[field] !== undefined) continue;
      missing.push({
        keys: [key(field), key('bus'), key('xMm'), key('yMm')],
        why: `header ${number} needs its ${words}`,
      });
    }
    const { pin1 } = told;
    const axis = told.axis ?? (pin1 === 'left' || pin1 === 'right' ? 'horizontal' : undefined);
    if (pin1 && !PIN_ENDS[axis ?? 'vertical'].includes(pin1)) {
      const ends = PIN_ENDS[axis ?? 'vertical'].join(' or ');
      missing.push({
        keys: [key('pin1'), key('axis')],
        why: `pin 1 of a ${axis ?? 'vertical'} header is ${ends}`,
      });
    }
    const { bus = '', xMm = 0, yMm = 0 } = told;
    const stated = values.get(key('id'));
    const id = typeof stated === 'string' ? stated : (partner?.id ?? freshHeaderId(taken, bus));
    if (given.has(id))
      missing.push({ keys: [key('id'), key('bus')], why: `another header has the id “${id}”` });
    taken.add(id);
    given.add(id);
    headers.push({ ...told, id, bus, role: told.role ?? 'member', xMm, yMm, ...(axis && { axis }) });
  });
  return missing.length > 0 ? fail(missing) : ok(headers);
}

/**
 * The kind of module that a row tells of: one of the kit with what the row says of it, or a new one. Facts that the
 * table has no column for stay as they are.
 *
 * @param taken - ids that a new kind may not have
 */
export function kindOf(
  kit: Kit,
  values: Values,
  before: ModuleKind | undefined,
  taken: ReadonlySet<string>,
): Result<ModuleKind, readonly Missing[]> {
  const told = withTold<ModuleKind>(before ?? {}, KIND_FIELDS, values, (field) => field);
  const headers = headersOf(values, before?.headers ?? []);
  const { name = '', widthHp } = told;
  const noWidth: Missing[] =
    widthHp === undefined ? [{ keys: ['widthHp'], why: `${name} needs a width` }] : [];
  if (widthHp === undefined || !headers.ok) return fail([...noWidth, ...(headers.ok ? [] : headers.error)]);
  const wanted = values.get('id');
  const isFree = typeof wanted === 'string' && !taken.has(wanted);
  const ids = [...taken].map((id) => ({ id }));
  const id = before?.id ?? (isFree ? wanted : freshKindId(ids, name));
  const draws = drawsOf(kit, values, before?.draws ?? {});
  return ok({ ...told, id, name, widthHp, draws, headers: headers.value });
}
