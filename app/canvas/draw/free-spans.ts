import { type FreeSpan, HP_MM, hpText, type SheetRow, xOf } from '../../../src/index.ts';
import { addLine, CENTRED, type Context, type Paper, paint, textPx, write } from './paper.ts';
import { widthOf } from './text-width.ts';

/** Where dimensions of free stretches run, mm above the panels' bottom edge. */
const FREE_MM = 12;

/** Dimensions every free stretch that has room for its figure. */
export function drawFreeSpans(
  ctx: Context,
  { theme, sheet }: Paper,
  free: ReadonlyMap<SheetRow, readonly FreeSpan[]>,
): void {
  const lettering = { px: textPx(sheet.scale, 14), colour: theme.inkFaint, ...CENTRED };
  const dimensionOf = (row: SheetRow, { fromHp, toHp }: FreeSpan) => {
    const text = hpText(toHp - fromHp);
    const a = xOf(row, fromHp * HP_MM);
    const b = xOf(row, toHp * HP_MM);
    const room = widthOf(ctx, text, lettering.px) + 8;
    return {
      text,
      room,
      left: Math.min(a, b) + 3,
      right: Math.max(a, b) - 3,
      y: row.bottom - FREE_MM * row.scale,
    };
  };
  const shown = [...free]
    .flatMap(([row, spans]) => spans.map((span) => dimensionOf(row, span)))
    .filter(({ left, right, room }) => right - left >= room);
  paint(ctx, { line: theme.inkFaint }, shown, ({ left, right, room, y }) => {
    const middle = (left + right) / 2;
    addLine(ctx, [
      { x: left, y },
      { x: middle - room / 2, y },
    ]);
    addLine(ctx, [
      { x: middle + room / 2, y },
      { x: right, y },
    ]);
    for (const x of [left, right])
      addLine(ctx, [
        { x, y: y - 4 },
        { x, y: y + 4 },
      ]);
  });
  for (const { text, left, right, y } of shown) write(ctx, text, (left + right) / 2, y, lettering);
}
