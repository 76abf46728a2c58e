import type { Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { boardsOf } from './case-parts.ts';
import { type Edited, editTake, filterKept, find, mapKept, withField } from './change.ts';
import { dropSeats } from './drop-seats.ts';

/**
 * Takes a board out of the case with the seats on it. A ribbon that is left without any seat goes as well unless
 * it is locked.
 */
export interface RemoveBoard {
  readonly type: 'remove-board';
  readonly take: string;
  readonly board: string;
}

export function removeBoard(layout: Layout, edit: RemoveBoard): Edited<Layout> {
  return editTake(layout, edit.take, (take) => {
    const found = find(boardsOf(take), edit.board, 'board');
    if (!found.ok) return found;
    const supplies = mapKept(take.supplies, (supply) =>
      withField(
        supply,
        'boards',
        filterKept(supply.boards, (board) => board !== found.value),
      ),
    );
    const ribbons = dropSeats(take.ribbons, ({ on }) => 'board' in on && on.board === edit.board);
    return ok(withField(withField(take, 'supplies', supplies), 'ribbons', ribbons));
  });
}
