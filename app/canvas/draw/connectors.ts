import type { PinEnd } from '../../../src/index.ts';
import type { Knot } from '../knot.ts';
import type { Run } from '../runs.ts';
import { addBox, addPolygon, boxAround, type Context, type Paper, paint, thinLine } from './paper.ts';

const TOWARDS: Record<PinEnd, readonly [x: number, y: number]> = {
  up: [0, -1],
  down: [0, 1],
  left: [-1, 0],
  right: [1, 0],
};

/** The tick that a connector bears at the stripe. */
function addTick(ctx: Context, { x, y, halfWidth, halfHeight }: Knot, end: PinEnd): void {
  const [dx, dy] = TOWARDS[end];
  const size = Math.max(3.2, Math.min(halfWidth, halfHeight) * 0.72);
  const tipX = x + dx * (halfWidth - 1);
  const tipY = y + dy * (halfHeight - 1);
  const baseX = tipX - dx * size * 1.3;
  const baseY = tipY - dy * size * 1.3;
  addPolygon(ctx, [
    { x: tipX, y: tipY },
    { x: baseX + dy * size, y: baseY + dx * size },
    { x: baseX - dy * size, y: baseY - dx * size },
  ]);
}

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
    if (knot.pin1 && knot.state !== 'free') addTick(ctx, knot, knot.pin1);
  });
}
