import type { DerivedTake, PlacedBoard } from '../../../src/index.ts';
import { boardBox } from '../../../src/index.ts';
import { drawHeaders } from './headers.ts';
import { addBox, type Context, LEAST_TEXT, type Paper, paint, textPx, write } from './paper.ts';
import { widthOf } from './text-width.ts';

/** Boards on the floor of the case, before the modules are drawn over them. */
export function drawBoards(ctx: Context, paper: Paper, boards: readonly PlacedBoard[]): void {
  const { sheet, theme } = paper;
  paint(ctx, { fill: theme.sheet, line: theme.ink, width: 1.2 }, boards, (board) =>
    addBox(ctx, boardBox(sheet, board)),
  );
  const inks = { box: theme.inkFaint, pin: theme.inkFaint, arrow: theme.inkSoft };
  drawHeaders(
    ctx,
    paper,
    boards.flatMap(({ headers }) => headers),
    inks,
  );
}

/** The outline of boards through the modules over them, so that they can be found. */
export function drawBoardOutlines(
  ctx: Context,
  { sheet, theme }: Paper,
  boards: readonly PlacedBoard[],
): void {
  const line = sheet.side === 'rear' ? theme.boardEdge : theme.inkFaint;
  paint(ctx, { line, width: 1.2, dash: [6, 4] }, boards, (board) => addBox(ctx, boardBox(sheet, board)));
}

/** "Board 2 \u00b7 3 of 8 used", on a plate that modules do not hide; from the front the name alone, quietly. */
export function drawBoardNames(
  ctx: Context,
  { sheet, theme }: Paper,
  boards: readonly PlacedBoard[],
  { seatedOn }: DerivedTake['wiring'],
): void {
  const px = Math.max(LEAST_TEXT, textPx(sheet.scale, 14) - 1);
  const rear = sheet.side === 'rear';
  const labels = boards.map((board) => {
    const used = board.headers.filter((header) => seatedOn.has(header)).length;
    const { left, right, top } = boardBox(sheet, board);
    const nameWidth = widthOf(ctx, board.name, px, 600);
    const full = ` \u00b7 ${used} of ${board.headers.length} used`;
    const fullWidth = nameWidth + widthOf(ctx, full, px) + 10;
    const count = rear && fullWidth <= right - left ? full : '';
    return { left, top, name: board.name, nameWidth, count, width: count ? fullWidth : nameWidth + 10 };
  });
  if (rear)
    paint(ctx, { fill: theme.sheet }, labels, ({ left, top, width }) => ctx.rect(left, top, width, px * 1.5));
  for (const { left, top, name, nameWidth, count } of labels) {
    const y = top + px * 1.15;
    write(ctx, name, left + 5, y, { px, colour: theme.ink, weight: rear ? 600 : 400 });
    if (count) write(ctx, count, left + 5 + nameWidth, y, { px, colour: theme.inkSoft });
  }
}
