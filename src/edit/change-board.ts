import type { Board, Layout, Take } from '../layout/layout.ts';
import { OPEN_LIMITS } from '../layout/open-limits.ts';
import { ok } from '../layout/result.ts';
import { type Changes, editBoard, editSupply, refuseIfFull, withFields, withFigures } from './case-parts.ts';
import { type Edited, editTake, filterKept, find, findAll, mapKept, refuse, withField } from './change.ts';
import { refuseIfUnfit } from './check-noun.ts';

export const BOARD_FIELDS = ['name', 'row', 'xMm', 'yMm', 'widthMm', 'riseMm'] as const;

export type BoardField = (typeof BOARD_FIELDS)[number];

/** Changes what is known of a board, or where it stands. */
export interface ChangeBoard {
  readonly type: 'change-board';
  readonly take: string;
  readonly board: string;
  readonly fields?: Changes<Board, BoardField>;
  /** Its wires to the supply; null: 0 Ω. */
  readonly lead?: { readonly lengthMm: number; readonly awg: number } | null;
  /** mA by voltage; null: no limit of its own. Voltages that are not named stay as they are. */
  readonly limits?: Readonly<Record<string, number | null>>;
  /** The supply that it hangs on from now on. */
  readonly supply?: string;
}

function withLead(board: Board, lead: ChangeBoard['lead']): Board {
  if (lead === undefined) return board;
  if (lead === null) return withField(board, 'lead', undefined);
  return withField(board, 'lead', withFields(board.lead ?? lead, ['lengthMm', 'awg'], lead));
}

function withLimits(board: Board, changes: ChangeBoard['limits']): Board {
  if (!changes) return board;
  const limits = withFigures(board.limits ?? {}, changes);
  if (limits === board.limits) return board;
  return withField(board, 'limits', Object.keys(limits).length > 0 ? limits : undefined);
}

/** Hangs a board on another supply, after the boards that hang there. */
function rehung(take: Take, id: string, to: string): Edited<Take> {
  const from = take.supplies.find(({ boards }) => boards.some((board) => board.id === id));
  const board = from?.boards.find((one) => one.id === id);
  if (!board || from?.id === to) return ok(take);
  return editSupply(take, to, ({ boards, ...supply }) => {
    const full = refuseIfFull(boards, OPEN_LIMITS.boards.most, 'boards on one supply');
    return full ?? ok({ ...supply, boards: [...boards, board] });
  });
}

function withoutBoard(take: Take, id: string, but: string): Take {
  const supplies = mapKept(take.supplies, (supply) =>
    supply.id === but
      ? supply
      : withField(
          supply,
          'boards',
          filterKept(supply.boards, (board) => board.id !== id),
        ),
  );
  return withField(take, 'supplies', supplies);
}

export function changeBoard(layout: Layout, edit: ChangeBoard): Edited<Layout> {
  return editTake(layout, edit.take, (take) => {
    const { fields = {}, supply } = edit;
    if (fields.row !== undefined) {
      const row = find(take.rows, fields.row, 'row');
      if (!row.ok) return row;
    }
    if (fields.name !== undefined && !fields.name.trim()) return refuse('A board needs a name');
    const voltages = findAll(layout.kit.voltages, Object.keys(edit.limits ?? {}), 'voltage');
    if (!voltages.ok) return voltages;
    const to = supply === undefined ? undefined : find(take.supplies, supply, 'supply');
    if (to && !to.ok) return to;

    const changed = editBoard(take, edit.board, (board) => {
      const own = withFields(board, BOARD_FIELDS, fields);
      const after = withLimits(withLead(own, edit.lead), edit.limits);
      return refuseIfUnfit('Board', after, board.name) ?? ok(after);
    });
    if (!changed.ok || supply === undefined) return changed;
    const hung = rehung(changed.value, edit.board, supply);
    return hung.ok ? ok(withoutBoard(hung.value, edit.board, supply)) : hung;
  });
}
