import type { PinEnd } from '../layout/layout.ts';
import type { Run } from './runs.ts';
import type { Point } from './sheet.ts';

/** How far a ribbon is pressed through beyond its outermost connectors, mm. */
const END_MM = 3.4;

/** A piece of band between two places; y is that of its middle. A crossed one shows a half-twist. */
export interface Piece {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  readonly half: number;
  readonly crossed: boolean;
  /** Whether the stripe lies on the lower edge at the start. */
  readonly down: boolean;
}

/** A connector as far as a band cares: where it is, and on which edge its stripe lies. */
export interface BandStop extends Point {
  readonly pin1: PinEnd | undefined;
}

/** More are drawn as some with the same outcome: stripe and face turn over with each. */
const MOST_DRAWN = 4;

const drawnTwists = (halfTwists: number): number =>
  halfTwists <= MOST_DRAWN ? halfTwists : MOST_DRAWN - (halfTwists % 2);

/** Share of the way between two connectors that half-twists may take up. */
const TWIST_SHARE = 0.8;

/** Cuts the band between two connectors into straight pieces and half-twists. */
function piecesBetween(a: BandStop, b: BandStop, half: number, count: number): Piece[] {
  const down = a.pin1 === 'down';
  const whole = { x0: a.x, y0: a.y, x1: b.x, y1: b.y, half, crossed: false, down };
  if (count === 0) return [whole];
  const halfTwists = drawnTwists(count);
  const width = b.x - a.x;
  const span = Math.min(Math.abs(width) * TWIST_SHARE, halfTwists * half * 2.4);
  const twisted = span / Math.max(Math.abs(width), 1e-6);
  const stops = [
    0,
    ...Array.from({ length: halfTwists + 1 }, (_, i) => 0.5 + twisted * (i / halfTwists - 0.5)),
    1,
  ];
  return stops.slice(1).map((stop, i) => {
    const start = stops[i] as number;
    const crossed = i > 0 && i <= halfTwists;
    const turned = Math.min(Math.max(i - 1, 0), halfTwists) % 2 === 1;
    return {
      x0: a.x + width * start,
      y0: a.y + (b.y - a.y) * start,
      x1: a.x + width * stop,
      y1: a.y + (b.y - a.y) * stop,
      half,
      crossed,
      down: down !== turned,
    };
  });
}

/** What sticks out beyond the outermost connectors. */
function endPiece(stop: BandStop, half: number, reach: number): Piece {
  return {
    x0: stop.x,
    y0: stop.y,
    x1: stop.x + reach,
    y1: stop.y,
    half,
    crossed: false,
    down: stop.pin1 === 'down',
  };
}

/**
 * A band over its connectors in their order along it, as straight pieces and half-twists.
 * @param half - half of its width, px
 * @param halfTwists - after each connector
 */
export function bandPieces(
  stops: readonly BandStop[],
  half: number,
  halfTwists: readonly number[],
  scale: number,
): Piece[] {
  const first = stops[0] as BandStop;
  const last = stops[stops.length - 1] as BandStop;
  const outward = Math.sign(last.x - first.x) * END_MM * scale;
  return [
    endPiece(first, half, -outward),
    ...stops
      .slice(1)
      .flatMap((stop, i) => piecesBetween(stops[i] as BandStop, stop, half, halfTwists[i] ?? 0)),
    endPiece(last, half, outward),
  ];
}

export const piecesOf = ({ knots, half, ribbon }: Run, scale: number): Piece[] =>
  bandPieces(knots, half, ribbon.ribbon.twists ?? [], scale);

/** From this slope on a band would look too thin if its width were measured down the screen. */
const STEEP = 0.3;

/** Where the width of a piece is measured along: down the screen, or across a steep one towards its lower side. */
export function acrossOf({ x0, y0, x1, y1 }: Piece): Point {
  const [dx, dy] = [x1 - x0, y1 - y0];
  if (Math.abs(dy) <= STEEP * Math.abs(dx)) return { x: 0, y: 1 };
  const length = Math.hypot(dx, dy) * (dx < 0 ? -1 : 1);
  return { x: -dy / length, y: dx / length };
}

/** Corners of a strip of a piece: at its start from one distance of its middle to another, and so at its end. */
function cornersOf(
  piece: Piece,
  [upper, lower]: readonly [number, number],
  [farUpper, farLower]: readonly [number, number],
): Point[] {
  const { x0, y0, x1, y1 } = piece;
  const { x, y } = acrossOf(piece);
  return [
    { x: x0 + x * upper, y: y0 + y * upper },
    { x: x1 + x * farUpper, y: y1 + y * farUpper },
    { x: x1 + x * farLower, y: y1 + y * farLower },
    { x: x0 + x * lower, y: y0 + y * lower },
  ];
}

/** The strip of a piece between two distances from its middle; it is turned over in a half-twist. */
export const stripCorners = (piece: Piece, upper: number, lower: number): Point[] =>
  cornersOf(piece, [upper, lower], piece.crossed ? [-upper, -lower] : [upper, lower]);

/** The stripe's corners on a piece. In a half-twist it passes over the crossing to the other edge, as wide as ever. */
export function stripeCorners(piece: Piece, stripe: number): Point[] {
  const upper = piece.down ? piece.half - stripe : -piece.half;
  const lower = upper + stripe;
  return cornersOf(piece, [upper, lower], piece.crossed ? [-lower, -upper] : [upper, lower]);
}
