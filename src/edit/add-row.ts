import type { Layout, Row } from '../layout/layout.ts';
import { OPEN_LIMITS } from '../layout/open-limits.ts';
import { ok } from '../layout/result.ts';
import { type Changes, refuseIfFull, withFields } from './case-parts.ts';
import { type Edited, editTake, find, withField } from './change.ts';
import { ROW_FIELDS, type RowField } from './change-row.ts';
import { refuseIfUnfit } from './check-noun.ts';
import { firstFree, freshRowId } from './fresh.ts';

/** Adds a row; its id is what `freshRowId` says beforehand. */
export interface AddRow {
  readonly type: 'add-row';
  readonly take: string;
  /** Row that it is a copy of, but for its name; absent: the lowest one. */
  readonly like?: string;
  /** Index of its place from the top; absent: below all others. */
  readonly at?: number;
  readonly fields?: Changes<Row, RowField>;
}

/** A row where there is none to be like: common practice, no source. */
const PLAIN = { widthHp: 84, heightU: 3, depthMm: 60 } as const;

/** "Row 3" for a row in the third place, or the next number that no other row bears. */
export function nextRowName(others: readonly Row[], place: number): string {
  const names = new Set(others.map(({ name }, i) => name ?? `Row ${i + 1}`));
  return firstFree(names, (number) => `Row ${place + number}`);
}

export function addRow(layout: Layout, edit: AddRow): Edited<Layout> {
  return editTake(layout, edit.take, (take) => {
    const { rows } = take;
    const model = edit.like === undefined ? ok(rows.at(-1)) : find(rows, edit.like, 'row');
    if (!model.ok) return model;
    const copy: Row = {
      ...PLAIN,
      ...model.value,
      id: freshRowId(take),
      name: nextRowName(rows, rows.length),
    };
    const row = withFields(copy, ROW_FIELDS, edit.fields ?? {});
    const at = Math.max(0, Math.min(edit.at ?? rows.length, rows.length));
    return (
      refuseIfFull(rows, OPEN_LIMITS.rows.most, 'rows') ??
      refuseIfUnfit('Row', row, row.name ?? 'the new row') ??
      ok(withField(take, 'rows', rows.toSpliced(at, 0, row)))
    );
  });
}
