import type { Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { boardsOf, rowName } from './case-parts.ts';
import { type Edited, editTake, filterKept, find, mapKept, refuse, withField } from './change.ts';
import { dropSeats } from './drop-seats.ts';

/**
 * Takes a row out of the case with the modules and boards in it, pinned ones too, and the seats on them. A
 * ribbon that is left without any seat goes as well unless it is locked. A case keeps its last row.
 */
export interface RemoveRow {
  readonly type: 'remove-row';
  readonly take: string;
  readonly row: string;
}

export function removeRow(layout: Layout, edit: RemoveRow): Edited<Layout> {
  return editTake(layout, edit.take, (take) => {
    const found = find(take.rows, edit.row, 'row');
    if (!found.ok) return found;
    if (take.rows.length === 1) return refuse(`${rowName(take, found.value)} is the only row`);
    const isIn = ({ row }: { readonly row: string }): boolean => row === edit.row;
    const modules = new Set(take.modules.filter(isIn).map(({ id }) => id));
    const boards = new Set(
      boardsOf(take)
        .filter(isIn)
        .map(({ id }) => id),
    );
    const supplies = mapKept(take.supplies, (supply) =>
      withField(
        supply,
        'boards',
        filterKept(supply.boards, (board) => !isIn(board)),
      ),
    );
    const ribbons = dropSeats(
      take.ribbons,
      ({ on }) => ('module' in on && modules.has(on.module)) || ('board' in on && boards.has(on.board)),
    );
    return ok({
      ...take,
      rows: take.rows.filter((row) => row !== found.value),
      supplies,
      modules: filterKept(take.modules, (module) => !isIn(module)),
      ribbons,
    });
  });
}
