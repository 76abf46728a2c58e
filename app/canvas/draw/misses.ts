import type { Knot, Point, Run } from '../../../src/index.ts';
import {
  addBox,
  addLine,
  boxAround,
  CENTRED,
  type Context,
  LEAST_TEXT,
  type Paper,
  paint,
  write,
} from './paper.ts';
import { widthOf } from './text-width.ts';

/** How far a dimension stands off the connector, px. */
const OFF = 16;

/** What a dimension needs to know of a connector that misses its header. */
export type Missing = Pick<Knot, 'x' | 'y' | 'halfWidth' | 'halfHeight' | 'stray'>;

interface Dimension {
  readonly text: string;
  /** From the connector out, along the dimension, and back to its header. */
  readonly way: readonly Point[];
  readonly at: Point;
}

const figure = (mm: number): string => String(Math.abs(Math.round(mm * 100) / 100));

/** Beside the connector, along the larger of its two offsets. */
function dimensionOf({ x, y, halfWidth, halfHeight, stray }: Missing): Dimension[] {
  if (!stray) return [];
  const { dxMm, dyMm, otherRow } = stray;
  const below = y + halfHeight + OFF;
  if (otherRow) return [{ text: 'other row', way: [], at: { x, y: below } }];
  if (Math.abs(dxMm) >= Math.abs(dyMm)) {
    const way = [{ x, y: y + halfHeight }, { x, y: below }, { x: stray.x, y: below }, stray];
    return [{ text: figure(dxMm), way, at: { x: (x + stray.x) / 2, y: below + 12 } }];
  }
  const beside = x + halfWidth + OFF;
  const way = [{ x, y }, { x: beside, y }, { x: beside, y: stray.y }, stray];
  return [{ text: figure(dyMm), way, at: { x: beside + 18, y: (y + stray.y) / 2 } }];
}

/** How far connectors are off the headers that they are drawn on, in mm, as dimensions on a drawing. */
export const drawMisses = (ctx: Context, paper: Paper, runs: readonly Run[]): void =>
  drawDimensions(
    ctx,
    paper,
    runs.flatMap(({ knots }) => knots),
  );

export function drawDimensions(ctx: Context, { theme }: Paper, missing: readonly Missing[]): void {
  const dimensions = missing.flatMap(dimensionOf);
  paint(ctx, { line: theme.callout, width: 1.6 }, dimensions, ({ way }) => addLine(ctx, way));
  const px = LEAST_TEXT + 0.5;
  paint(ctx, { fill: theme.callout }, dimensions, ({ text, at }) =>
    addBox(ctx, boxAround(at, widthOf(ctx, text, px, 650) / 2 + 4, 8)),
  );
  const lettering = { px, colour: theme.connector, weight: 650, ...CENTRED };
  for (const { text, at } of dimensions) write(ctx, text, at.x, at.y, lettering);
}
