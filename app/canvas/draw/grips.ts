import { RAIL_END_MM, type SheetRow, xOf } from '../../../src/index.ts';
import { addBox, type Context, type Paper, paint } from './paper.ts';

const WIDTH_PX = 9;
const HEIGHT_PX = 34;

/** Grips at the front's right end of rows, by which they are drawn out. */
export function drawGrips(ctx: Context, { theme }: Paper, rows: readonly SheetRow[]): void {
  const grips = rows.map((row) => {
    const way = Math.sign(row.stepX);
    const x = xOf(row, row.placed.widthMm) + way * RAIL_END_MM * row.scale;
    return { x, y: (row.top + row.bottom) / 2 };
  });
  paint(ctx, { fill: theme.brass, line: theme.sheet, width: 1.5 }, grips, ({ x, y }) =>
    addBox(ctx, {
      left: x - WIDTH_PX / 2,
      right: x + WIDTH_PX / 2,
      top: y - HEIGHT_PX / 2,
      bottom: y + HEIGHT_PX / 2,
    }),
  );
  paint(ctx, { line: theme.sheet, width: 1.2 }, grips, ({ x, y }) => {
    for (const off of [-1.5, 1.5]) {
      ctx.moveTo(x + off, y - HEIGHT_PX / 4);
      ctx.lineTo(x + off, y + HEIGHT_PX / 4);
    }
  });
}
