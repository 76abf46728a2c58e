import type { Header, Kit, ModuleKind } from '../layout/layout.ts';
import { type Field, fieldsFor, headingOf } from './field.ts';
import { neutralised } from './neutral.ts';
import { type DecimalMark, numberText } from './number-text.ts';

/** A bus as a cell that is read as that bus and no other: its name where that is its own, else its id. */
function busText(kit: Kit, id: string): string {
  const name = kit.buses.find((bus) => bus.id === id)?.name ?? id;
  const isOwn = !kit.buses.some((bus) => bus.id !== id && (bus.id === name || bus.name === name));
  return isOwn && name.trim() === name && name !== '' && name !== '?' ? name : id;
}

function factOf(kind: ModuleKind, { fact }: Field): unknown {
  if (fact.of === 'kind') return kind[fact.field];
  if (fact.of === 'header') return kind.headers[fact.number - 1]?.[fact.field];
  const ma = kind.draws[fact.voltage];
  if (ma === undefined) return 'none';
  return ma ?? '?';
}

function cellOf(kit: Kit, kind: ModuleKind, field: Field, mark: DecimalMark): string {
  const value = factOf(kind, field);
  if (value === undefined) return '';
  if (typeof value === 'number') return numberText(value, mark);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (field.sort.is === 'choice') return field.sort.choices[String(value)]?.[0] ?? '';
  return neutralised(field.sort.is === 'bus' ? busText(kit, String(value)) : String(value));
}

/** Facts that a table has a column for even where no kind has them: those that everybody looks for. */
const ALWAYS: ReadonlySet<string> = new Set(['name', 'widthHp', 'depthMm', 'owned', 'price', 'known', 'id']);
const ALWAYS_OF_HEADER: ReadonlySet<string> = new Set<keyof Header>(['bus', 'role', 'xMm', 'yMm', 'pin1']);

const isAlways = ({ key, fact }: Field): boolean =>
  fact.of === 'draw' || (fact.of === 'header' ? ALWAYS_OF_HEADER.has(fact.field) : ALWAYS.has(key));

/**
 * Kinds of module as a table, headings first. Read again it gives the same kinds, as far as this program knows their
 * facts. Text that a spreadsheet would carry out has an apostrophe before it.
 */
export function writeTable(
  kit: Kit,
  kinds: readonly ModuleKind[],
  mark: DecimalMark,
): readonly (readonly string[])[] {
  const headers = Math.max(0, ...kinds.map((kind) => kind.headers.length));
  const fields = fieldsFor(kit, headers).filter(
    (field) => isAlways(field) || kinds.some((kind) => factOf(kind, field) !== undefined),
  );
  return [
    fields.map((field) => neutralised(headingOf(field))),
    ...kinds.map((kind) => fields.map((field) => cellOf(kit, kind, field, mark))),
  ];
}

/** A table to fill in: the headings for kinds with so many headers, and one row that shows how. */
export function templateTable(kit: Kit, headers: number, mark: DecimalMark): readonly (readonly string[])[] {
  const fields = fieldsFor(kit, headers).filter((field) => isAlways(field) && field.key !== 'id');
  const [bus] = kit.buses;
  const example: ModuleKind = {
    id: 'cobble',
    name: 'Cobble',
    widthHp: 5,
    depthMm: 32.5,
    draws: Object.fromEntries(kit.voltages.slice(0, 2).map(({ id }, i) => [id, i === 0 ? 35 : null])),
    headers: bus ? [{ id: bus.id, bus: bus.id, role: 'member', xMm: 12.7, yMm: 38, pin1: 'down' }] : [],
    owned: 6,
    known: 'measured',
  };
  return [fields.map(headingOf), fields.map((field) => cellOf(kit, example, field, mark))];
}
