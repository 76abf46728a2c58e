import type { Kit, ModuleKind } from '../layout/layout.ts';
import { onOneLine } from '../layout/quote.ts';
import { fail, ok, type Result } from '../layout/result.ts';
import { readCell, type Value } from './cell.ts';
import { type ByHand, type Column, matchColumns } from './columns.ts';
import { kindOf, type Missing } from './kind-of.ts';
import { type DecimalMark, decimalMarkOf } from './number-text.ts';
import { type Cells, excessOf } from './table-limits.ts';

/** A cell that cannot be read, by its place in the spreadsheet. */
export interface BadCell {
  /** From 1, counted from the first row of the table. */
  readonly row: number;
  /** Absent: the row lacks a column. */
  readonly column?: Column;
  readonly text: string;
  /** What is the matter, as the end of a sentence. */
  readonly why: string;
}

/** One row of a table as a kind of module. */
export interface ReadRow {
  /** From 1, counted from the first row of the table. */
  readonly row: number;
  readonly name: string;
  /** The kind of the kit that goes by this id or name. */
  readonly before?: ModuleKind;
  /** That kind with what the table says of it; the very kind where it says nothing new. */
  readonly changed?: ModuleKind;
  /** A kind of its own; absent where the table does not say enough for one. */
  readonly made?: ModuleKind;
}

interface ReadTable {
  readonly columns: readonly Column[];
  /** Empty where anything is bad: nothing is taken by halves. */
  readonly rows: readonly ReadRow[];
  /** In the order of the table. */
  readonly bad: readonly BadCell[];
  /** Why nothing of it is read. */
  readonly refused?: string;
}

/** How a table is to be read. */
interface Reading {
  readonly hasHeadings: boolean;
  readonly byHand: ByHand;
}

/** "Row 4, column C (Width): “5,2”: it is not a width: from 0.5 HP on, in halves." */
export function badCellWords({ row, column, text, why }: BadCell): string {
  const end = why.endsWith('?') ? why : `${why}.`;
  if (!column) return onOneLine(`Row ${row}: ${end}`);
  const name = column.heading || column.field?.label;
  const place = `Row ${row}, column ${column.letter}${name ? ` (${name})` : ''}`;
  const said = text === '' ? 'empty' : `“${text.length > 60 ? `${text.slice(0, 60)}…` : text}”`;
  return onOneLine(`${place}: ${said}, ${end}`);
}

const isEmpty = (row: readonly string[]): boolean => row.every((cell) => cell.trim() === '');

/** Whether the first row that says something names facts, as headings do. */
export function seemsHeaded(kit: Kit, cells: Cells): boolean {
  const first = cells.find((row) => !isEmpty(row)) ?? [];
  return matchColumns(kit, first, first.length, new Map()).some(({ field }) => field !== undefined);
}

const nothing = (columns: readonly Column[], refused: string): ReadTable => ({
  columns,
  rows: [],
  bad: [],
  refused,
});

/** What holds of all rows of a table. */
interface Ground {
  readonly kit: Kit;
  /** Those that tell something. */
  readonly told: readonly Column[];
  readonly nameColumn: Column;
  readonly mark: DecimalMark | undefined;
  /** Ids that a new kind may not have; grows as kinds are read. */
  readonly taken: Set<string>;
  /** Rows by the kind that they tell of: two of one would undo each other. */
  readonly met: Map<unknown, number>;
}

interface Line {
  readonly cells: readonly string[];
  /** From 1. */
  readonly row: number;
}

type ReadLine = Result<ReadRow, readonly BadCell[]>;

function readLine(ground: Ground, { cells, row }: Line): ReadLine {
  const { kit, told, nameColumn, mark, taken, met } = ground;
  const badCell = (column: Column | undefined, why: string): BadCell => ({
    row,
    ...(column && { column }),
    text: column ? (cells[column.at] ?? '').trim() : '',
    why,
  });

  const bad: BadCell[] = [];
  const values = new Map<string, Value>();
  for (const column of told) {
    const read = readCell(cells[column.at] ?? '', { kit, column, mark });
    if (read.ok) values.set(column.field?.key ?? '', read.value);
    else bad.push(badCell(column, read.error));
  }
  if (bad.length > 0) return fail(bad);
  const [name, id] = [values.get('name'), values.get('id')];
  if (typeof name !== 'string') return fail([badCell(nameColumn, 'a kind needs a name')]);

  const before = kit.modules.find((kind) => kind.id === id) ?? kit.modules.find((kind) => kind.name === name);
  const changed = before && kindOf(kit, values, before, taken);
  const made = kindOf(kit, values, undefined, taken);
  const needed = changed ?? made;
  if (!needed.ok) {
    const columnOf = ({ keys }: Missing): Column | undefined =>
      keys.flatMap((key) => told.find(({ field }) => field?.key === key) ?? [])[0];
    return fail(needed.error.map((missing) => badCell(columnOf(missing), missing.why)));
  }
  if (made.ok) taken.add(made.value.id);
  const self = before ?? id ?? name;
  const first = met.get(self);
  if (first !== undefined) return fail([badCell(nameColumn, `row ${first} tells of the same kind`)]);
  met.set(self, row);
  return ok({
    row,
    name,
    ...(before && { before }),
    ...(changed?.ok && { changed: changed.value }),
    ...(made.ok && { made: made.value }),
  });
}

/** The kinds of module that a table tells of, in terms of a kit; or every cell that cannot be read. */
export function readTable(kit: Kit, cells: Cells, { hasHeadings, byHand }: Reading): ReadTable {
  const excess = excessOf(cells);
  if (excess !== undefined) return nothing([], excess);
  const top = cells.findIndex((row) => !isEmpty(row));
  if (top < 0) return nothing([], 'There is nothing in it');
  const width = Math.max(...cells.map(({ length }) => length));
  const columns = matchColumns(kit, hasHeadings ? (cells[top] ?? []) : [], width, byHand);
  const told = columns.filter(({ field }) => field !== undefined);
  const nameColumn = told.find(({ field }) => field?.key === 'name');
  if (!nameColumn) return nothing(columns, 'No column holds names: say which one does');

  const lines = cells
    .map((row, at): Line => ({ cells: row, row: at + 1 }))
    .slice(hasHeadings ? top + 1 : top)
    .filter((line) => !isEmpty(line.cells));
  if (lines.length === 0) return nothing(columns, 'There is no row under the headings');
  const numbers = told.filter(({ field }) => field?.sort.is === 'number');
  const mark = decimalMarkOf(lines.flatMap((line) => numbers.map(({ at }) => line.cells[at] ?? '')));
  const taken = new Set(kit.modules.map(({ id }) => id));
  const ground: Ground = { kit, told, nameColumn, mark, taken, met: new Map() };
  const read = lines.map((line) => readLine(ground, line));
  const bad = read
    .flatMap((each) => (each.ok ? [] : each.error))
    .sort((a, b) => a.row - b.row || (a.column?.at ?? -1) - (b.column?.at ?? -1));
  const rows = read.flatMap((each) => (each.ok ? [each.value] : []));
  return { columns, rows: bad.length > 0 ? [] : rows, bad };
}
