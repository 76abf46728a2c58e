import type { Run } from '../../../src/index.ts';
import { addLine, type Context, type Paper, paint } from './paper.ts';

/** Ribbons of hidden layers: thin dashes along their ways, so that nobody forgets that something lies there. */
export function drawGhosts(ctx: Context, { theme }: Paper, runs: readonly Run[]): void {
  paint(ctx, { line: theme.boardEdge, width: 1.2, dash: [2, 5] }, runs, ({ line }) => addLine(ctx, line));
}
