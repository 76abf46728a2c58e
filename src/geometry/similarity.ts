/** A point of a plane: of a picture in px, of a drawing in mm. */
export interface PlanePoint {
  readonly x: number;
  readonly y: number;
}

/**
 * Turns, scales and moves a plane, after mirroring it (x against −x) where it says so: the ways of laying a picture
 * under a drawing that keep its shapes. A point goes to (a·x − b·y + dx, b·x + a·y + dy).
 */
export interface Similarity {
  readonly mirrored: boolean;
  readonly a: number;
  readonly b: number;
  readonly dx: number;
  readonly dy: number;
}

const mirroredIf = (mirrored: boolean, { x, y }: PlanePoint): PlanePoint => ({ x: mirrored ? -x : x, y });

export function mapped({ mirrored, a, b, dx, dy }: Similarity, point: PlanePoint): PlanePoint {
  const { x, y } = mirroredIf(mirrored, point);
  return { x: a * x - b * y + dx, y: b * x + a * y + dy };
}

/** The point that goes there. */
export function unmapped({ mirrored, a, b, dx, dy }: Similarity, { x, y }: PlanePoint): PlanePoint {
  const size = a * a + b * b;
  const [u, v] = [x - dx, y - dy];
  return mirroredIf(mirrored, { x: (a * u + b * v) / size, y: (a * v - b * u) / size });
}

export const scaleOf = ({ a, b }: Similarity): number => Math.hypot(a, b);

/** Puts a point where it belongs; nothing turns or grows. */
export function shiftedTo(by: Similarity, point: PlanePoint, to: PlanePoint): Similarity {
  const now = mapped(by, point);
  return { ...by, dx: by.dx + to.x - now.x, dy: by.dy + to.y - now.y };
}

/** Two points this near cannot tell how a plane is turned. */
const LEAST = 1e-9;

/** A pair of points and where they go. */
export interface Known {
  readonly from: PlanePoint;
  readonly to: PlanePoint;
}

/** The one way that takes two points where they belong; nothing where they are one point. */
export function throughPoints(mirrored: boolean, first: Known, second: Known): Similarity | undefined {
  const [p, q] = [mirroredIf(mirrored, first.from), mirroredIf(mirrored, second.from)];
  const [u, v] = [q.x - p.x, q.y - p.y];
  const [s, t] = [second.to.x - first.to.x, second.to.y - first.to.y];
  const size = u * u + v * v;
  if (size < LEAST || s * s + t * t < LEAST) return undefined;
  const a = (u * s + v * t) / size;
  const b = (u * t - v * s) / size;
  return { mirrored, a, b, dx: first.to.x - a * p.x + b * p.y, dy: first.to.y - b * p.x - a * p.y };
}

/** Grows or shrinks until two points lie so far apart; the first of them stays where it is, and so does the way up. */
export function scaledTo(
  by: Similarity,
  first: PlanePoint,
  second: PlanePoint,
  distance: number,
): Similarity | undefined {
  const apart = Math.hypot(second.x - first.x, second.y - first.y) * scaleOf(by);
  if (apart < LEAST || distance < LEAST) return undefined;
  const factor = distance / apart;
  return shiftedTo({ ...by, a: by.a * factor, b: by.b * factor }, first, mapped(by, first));
}

/** Turned over, seen from behind, about an upright line; everything else stays as it is. */
export function mirroredAbout(by: Similarity, x: number): Similarity {
  const { mirrored, a, b, dx, dy } = by;
  // A mirror after the turn is a mirror before it and the turn the other way.
  return { mirrored: !mirrored, a, b: -b, dx: 2 * x - dx, dy };
}
