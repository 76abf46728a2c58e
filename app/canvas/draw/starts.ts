import { boxOf, type SheetRow } from '../../../src/index.ts';
import type { Place } from '../model.ts';
import { addBox, type Context, type Paper, paint } from './paper.ts';

/** Where what is in hand can start: a quiet frame around each place. */
export function drawStarts(ctx: Context, { sheet, theme }: Paper, starts: readonly Place[]): void {
  const boxes = starts.map(({ row, xMm, yMm, halfXMm, halfYMm }) =>
    boxOf(sheet.rows[row] as SheetRow, xMm - halfXMm, xMm + halfXMm, yMm - halfYMm, yMm + halfYMm),
  );
  paint(ctx, { line: theme.keyline, width: 3.4 }, boxes, (box) => addBox(ctx, box, -3));
  paint(ctx, { line: theme.brass, width: 1.6 }, boxes, (box) => addBox(ctx, box, -3));
}
