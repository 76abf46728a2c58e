import type { Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, editTake, find, withField } from './change.ts';

/** Puts a row, with all that stands in it, at another place from the top. */
export interface MoveRow {
  readonly type: 'move-row';
  readonly take: string;
  readonly row: string;
  /** Index from the top that it is to have; kept within the rows. */
  readonly to: number;
}

export function moveRow(layout: Layout, edit: MoveRow): Edited<Layout> {
  return editTake(layout, edit.take, (take) => {
    const found = find(take.rows, edit.row, 'row');
    if (!found.ok) return found;
    const { rows } = take;
    const to = Math.max(0, Math.min(edit.to, rows.length - 1));
    if (rows[to] === found.value) return ok(take);
    const others = rows.filter((row) => row !== found.value);
    return ok(withField(take, 'rows', others.toSpliced(to, 0, found.value)));
  });
}
