import type { Run } from '../../../src/index.ts';
import { addDot, addLine, type Context, type Paper, paint } from './paper.ts';

/** From the front ribbons show only as thin dashes through the panels, enough to tell groups. */
export function drawTraces(ctx: Context, { theme }: Paper, runs: readonly Run[]): void {
  const links = runs.filter(({ feeds }) => !feeds);
  paint(ctx, { line: theme.inkFaint, width: 1.2, dash: [5, 4] }, links, ({ line }) => addLine(ctx, line));
  paint(ctx, { fill: theme.inkFaint }, links, ({ knots }) => {
    for (const { x, y, state } of knots) if (state !== 'free') addDot(ctx, x, y, 2.2);
  });
}
