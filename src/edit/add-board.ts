import type { Board, Layout } from '../layout/layout.ts';
import { OPEN_LIMITS } from '../layout/open-limits.ts';
import { ok } from '../layout/result.ts';
import { boardsOf, type Changes, editSupply, refuseIfFull, withFields } from './case-parts.ts';
import { type Edited, editTake, find, withField } from './change.ts';
import { BOARD_FIELDS, type BoardField } from './change-board.ts';
import { refuseIfUnfit } from './check-noun.ts';
import { freshBoardId, nextInSeries } from './fresh.ts';

/** Hangs a board on a supply; its id is what `freshBoardId` says beforehand. Headers come with `set-board-headers`. */
export interface AddBoard {
  readonly type: 'add-board';
  readonly take: string;
  readonly supply: string;
  /** Board that it is a copy of, with its headers; absent: one without headers. */
  readonly like?: string;
  readonly row: string;
  readonly xMm: number;
  readonly fields?: Changes<Board, Exclude<BoardField, 'row' | 'xMm'>>;
}

export function addBoard(layout: Layout, edit: AddBoard): Edited<Layout> {
  return editTake(layout, edit.take, (take) => {
    const boards = boardsOf(take);
    const model = edit.like === undefined ? ok({ headers: [] }) : find(boards, edit.like, 'board');
    if (!model.ok) return model;
    const row = find(take.rows, edit.row, 'row');
    if (!row.ok) return row;
    const name = nextInSeries(
      boards.map((board) => board.name),
      'Board',
    );
    const { row: rowId, xMm } = edit;
    const copy: Board = { ...model.value, id: freshBoardId(take), name, row: rowId, xMm: xMm + 0 };
    const board = withFields<Board, BoardField>(copy, BOARD_FIELDS, edit.fields ?? {});
    return editSupply(take, edit.supply, (supply) => {
      const { boards: before } = supply;
      return (
        refuseIfFull(before, OPEN_LIMITS.boards.most, 'boards on one supply') ??
        refuseIfUnfit('Board', board, board.name ?? 'the new board') ??
        ok(withField(supply, 'boards', [...before, board]))
      );
    });
  });
}
