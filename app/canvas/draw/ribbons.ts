import type { Run } from '../../../src/index.ts';
import {
  acrossOf,
  CONDUCTOR_MM,
  type Piece,
  piecesOf,
  stripCorners,
  stripeCorners,
} from '../../../src/index.ts';
import { addLine, addPolygon, type Context, type Paper, paint } from './paper.ts';

/** From this distance of the conductors on, px, each is drawn. */
const CONDUCTORS_APART = 2;

/** The loudest line of the drawing is never thinner than this, px. */
const STRIPE_LEAST = 3;

export const stripePx = (scale: number): number => Math.max(STRIPE_LEAST, CONDUCTOR_MM * scale);

function addConductors(ctx: Context, piece: Piece, pitch: number): void {
  const { x0, y0, x1, y1, half, crossed } = piece;
  const { x, y } = acrossOf(piece);
  for (let offset = pitch - half; offset < half - pitch / 2; offset += pitch) {
    addLine(ctx, [
      { x: x0 + x * offset, y: y0 + y * offset },
      { x: x1 + x * (crossed ? -offset : offset), y: y1 + y * (crossed ? -offset : offset) },
    ]);
  }
}

/**
 * Flat ribbons at their true width: band, conductors where there is room for them (or where asked for), and
 * the stripe on its edge, crossing over with each half-twist.
 */
export function drawRibbons(
  ctx: Context,
  { theme, sheet }: Paper,
  runs: readonly Run[],
  single = false,
): void {
  const { scale } = sheet;
  const { ribbonEdge } = theme;
  const pieces = runs.flatMap((run) => piecesOf(run, scale));
  paint(ctx, { fill: theme.ribbon, line: ribbonEdge, width: 0.9 }, pieces, (piece) =>
    addPolygon(ctx, stripCorners(piece, -piece.half, piece.half)),
  );
  if (single || CONDUCTOR_MM * scale >= CONDUCTORS_APART) {
    paint(ctx, { line: theme.ribbonLine, width: 0.6 }, pieces, (piece) =>
      addConductors(ctx, piece, CONDUCTOR_MM * scale),
    );
  }
  const stripe = stripePx(scale);
  paint(ctx, { fill: theme.stripe, line: ribbonEdge, width: 0.7 }, pieces, (piece) =>
    addPolygon(ctx, stripeCorners(piece, stripe)),
  );
}
