import type { Knot, Run } from '../../../src/index.ts';
import { tickCorners } from '../../../src/index.ts';
import { addBox, addPolygon, boxAround, type Context, type Paper, paint, thinLine } from './paper.ts';

/** Connectors: seated ones dark, missing ones outlined, free ones dashed; a tick of the stripe on each. */
export function drawConnectors(ctx: Context, { theme, sheet }: Paper, runs: readonly Run[]): void {
  const knots = runs.flatMap((run) => run.knots);
  const paintThose = (state: Knot['state'], look: Parameters<typeof paint>[1]): void =>
    paint(
      ctx,
      look,
      knots.filter((knot) => knot.state === state),
      (knot) => addBox(ctx, boxAround(knot, knot.halfWidth, knot.halfHeight)),
    );
  const { connector: fill, connectorEdge, callout } = theme;
  paintThose('seated', { fill, line: connectorEdge, width: thinLine(sheet.scale) });
  paintThose('missing', { fill, line: callout, width: 2.4 });
  paintThose('free', { line: callout, width: 2.6 });
  paintThose('free', { line: fill, width: 1.8, dash: [4, 3] });
  paint(ctx, { fill: theme.stripe }, knots, (knot) => {
    if (knot.pin1 && knot.state !== 'free') addPolygon(ctx, tickCorners(knot, knot.pin1));
  });
}
