import { hpToMm } from '../../src/index.ts';
import { type Editor, shownAnalysis, shownTake } from '../editor.ts';
import { railUnder } from '../store/view.ts';
import type { Pointer, Tool } from './pointer.ts';

/** A place on the floor of the case: index of the row from the top, mm from its left end seen from the front. */
export interface FloorPlace {
  readonly row: number;
  readonly xMm: number;
}

type State = { readonly at: 'idle' } | { readonly at: 'dragging'; readonly grabMm: number };

const clamp = (value: number, least: number, most: number): number => Math.max(least, Math.min(value, most));

/** Tenths of a mm, without crumbs of float arithmetic. */
const tidyMm = (mm: number): number => Math.round(mm * 10) / 10;

export function placeOfBoard(editor: Editor, id: string): FloorPlace | undefined {
  const placed = shownAnalysis(editor).derived.places.boardById.get(id);
  return placed && { row: placed.row.index, xMm: placed.board.xMm };
}

export function boardLabel(editor: Editor, id: string): string {
  return `move ${shownAnalysis(editor).derived.places.boardById.get(id)?.name ?? 'a board'}`;
}

/** Shows a board at a place, kept in the case; the edit always counts from where the gesture began. */
export function previewBoard(editor: Editor, id: string, to: FloorPlace): void {
  const { rows, boardById } = shownAnalysis(editor).derived.places;
  const board = boardById.get(id)?.board;
  const row = rows[clamp(to.row, 0, rows.length - 1)];
  if (!row || !board) return;
  const most = Math.max(0, row.widthMm - (board.widthMm ?? 0));
  const fields = { row: row.row.id, xMm: tidyMm(clamp(to.xMm, 0, most)) };
  editor.gestures.preview({ type: 'change-board', take: shownTake(editor).id, board: id, fields });
}

/** Moves a board along its row and to other rows, by whole mm; with Alt by tenths. */
export function boardTool(editor: Editor, id: string): Tool {
  const { gestures } = editor;
  let state: State = { at: 'idle' };
  const floorUnder = (pointer: Pointer): FloorPlace | undefined => {
    const under = railUnder(editor, pointer);
    return under && { row: under.row, xMm: hpToMm(under.atHp) };
  };

  return {
    down(pointer) {
      const under = floorUnder(pointer);
      const place = placeOfBoard(editor, id);
      if (!under || !place) return;
      gestures.begin(shownTake(editor).id, boardLabel(editor, id));
      state = { at: 'dragging', grabMm: under.xMm - place.xMm };
    },
    move(pointer) {
      const under = floorUnder(pointer);
      if (state.at !== 'dragging' || !under) return;
      const xMm = under.xMm - state.grabMm;
      previewBoard(editor, id, { row: under.row, xMm: pointer.alt ? xMm : Math.round(xMm) });
    },
    up() {
      if (state.at === 'dragging') gestures.commit();
      state = { at: 'idle' };
    },
    cancel() {
      if (state.at === 'dragging') gestures.cancel();
      state = { at: 'idle' };
    },
  };
}
