import type { Layout, Row } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Changes, editRow, rowName, withFields } from './case-parts.ts';
import { type Edited, editTake } from './change.ts';
import { refuseIfUnfit } from './check-noun.ts';

export const ROW_FIELDS = ['name', 'case', 'widthHp', 'heightU', 'depthMm', 'gapMm'] as const;

export type RowField = (typeof ROW_FIELDS)[number];

/** Changes what is known of a row. Modules stay where they are: one that a shorter row leaves outside is a finding. */
export interface ChangeRow {
  readonly type: 'change-row';
  readonly take: string;
  readonly row: string;
  readonly fields: Changes<Row, RowField>;
}

export function changeRow(layout: Layout, edit: ChangeRow): Edited<Layout> {
  return editTake(layout, edit.take, (take) =>
    editRow(take, edit.row, (row) => {
      const changed = withFields(row, ROW_FIELDS, edit.fields);
      return refuseIfUnfit('Row', changed, rowName(take, row)) ?? ok(changed);
    }),
  );
}
