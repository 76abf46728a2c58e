import type { Point, Run } from '../../../src/index.ts';
import { beside } from '../../../src/index.ts';
import { addLine, type Context, type Paper, paint } from './paper.ts';
import { stripePx } from './ribbons.ts';

const lengthOf = (line: readonly Point[]): number =>
  Math.abs((line[0]?.x ?? 0) - (line.at(-1)?.x ?? 0)) + Math.abs((line[0]?.y ?? 0) - (line.at(-1)?.y ?? 0));

/** Loose ribbons as they hang, long ones behind short ones, each parted by a line from what it crosses. */
export function drawLeads(ctx: Context, { sheet, theme }: Paper, runs: readonly Run[]): void {
  const lines = [...runs];
  lines.sort((a, b) => lengthOf(b.line) - lengthOf(a.line));
  ctx.lineJoin = 'round';
  for (const { half, line } of lines) {
    const width = Math.max(2 * half, 4.5);
    const stripe = Math.min(stripePx(sheet.scale), width * 0.6);
    const draw = (colour: string, px: number, way = line): void =>
      paint(ctx, { line: colour, width: px }, [way], (points) => addLine(ctx, points));
    draw(theme.keyline, width + 3.6);
    draw(theme.ribbonEdge, width + 1.4);
    draw(theme.ribbon, width);
    draw(theme.stripe, stripe, beside(line, (width - stripe) / 2));
  }
  ctx.lineJoin = 'miter';
}
