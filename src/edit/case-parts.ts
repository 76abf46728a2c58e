import type { Board, Row, Supply, Take } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, find, mapKept, refuse, withField } from './change.ts';

/** Fields to set; null takes away one that need not be there. What is not named stays as it is. */
export type Changes<T, K extends keyof T> = {
  readonly [F in K]?: Record<string, never> extends Pick<T, F> ? NonNullable<T[F]> | null : T[F];
};

/** Blank texts are no texts, and a negative nought is nought. */
function tidy(value: unknown): unknown {
  if (typeof value === 'string') return value.trim() || undefined;
  return value === 0 ? 0 : (value ?? undefined);
}

/** The object with some fields changed; the very object where none is. */
export function withFields<T extends object, K extends keyof T>(
  object: T,
  keys: readonly K[],
  changes: Changes<T, K>,
): T {
  const named = keys.filter((key) => changes[key] !== undefined);
  return named.reduce((changed, key) => withField(changed, key, tidy(changes[key]) as T[K]), object);
}

/** Figures by voltage with some changed; null takes one away. The very record where none changes. */
export const withFigures = (
  record: Readonly<Record<string, number>>,
  changes: Readonly<Record<string, number | null>>,
): Readonly<Record<string, number>> => withFields(record, Object.keys(changes), changes);

/** What a row is called; one without a name goes by its place. */
export const rowName = (take: Take, row: Row): string => row.name ?? `Row ${take.rows.indexOf(row) + 1}`;

export const boardsOf = (take: Take): readonly Board[] => take.supplies.flatMap(({ boards }) => boards);

/** The take with one row changed. */
export function editRow(take: Take, id: string, change: (row: Row) => Edited<Row>): Edited<Take> {
  const found = find(take.rows, id, 'row');
  const changed = found.ok ? change(found.value) : found;
  if (!found.ok || !changed.ok) return changed as Edited<Take>;
  const rows = mapKept(take.rows, (row) => (row === found.value ? changed.value : row));
  return ok(withField(take, 'rows', rows));
}

/** The take with one supply changed. */
export function editSupply(take: Take, id: string, change: (supply: Supply) => Edited<Supply>): Edited<Take> {
  const found = find(take.supplies, id, 'supply');
  const changed = found.ok ? change(found.value) : found;
  if (!found.ok || !changed.ok) return changed as Edited<Take>;
  const supplies = mapKept(take.supplies, (supply) => (supply === found.value ? changed.value : supply));
  return ok(withField(take, 'supplies', supplies));
}

/** The take with one board changed, whichever supply it hangs on. */
export function editBoard(take: Take, id: string, change: (board: Board) => Edited<Board>): Edited<Take> {
  const found = find(boardsOf(take), id, 'board');
  const changed = found.ok ? change(found.value) : found;
  if (!found.ok || !changed.ok) return changed as Edited<Take>;
  const supplies = mapKept(take.supplies, (supply) => {
    const boards = mapKept(supply.boards, (board) => (board === found.value ? changed.value : board));
    return withField(supply, 'boards', boards);
  });
  return ok(withField(take, 'supplies', supplies));
}

/** The refusal of one more where a list holds all that can be opened again. */
export const refuseIfFull = (list: readonly unknown[], most: number, what: string) =>
  list.length < most ? undefined : refuse(`A take holds no more than ${most} ${what}`);
