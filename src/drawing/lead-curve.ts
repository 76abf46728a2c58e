import type { Knot } from './knot.ts';
import { type Point, rowAt, type Sheet, type SheetRow } from './sheet.ts';

/** Widths at which leads hang half way down to the bottom of their row, mm. */
const HALF_DOWN_MM = 110;

const CURVE_STEPS = 36;

/** How far down a lead hangs: the wider, the lower, so that leads nest; never below its row. */
function lowestOf(row: SheetRow, fromY: number, width: number): number {
  const room = Math.max(row.bottom - fromY - 6, 8);
  return fromY + (room * width) / (width + HALF_DOWN_MM * row.scale);
}

/** A cubic curve: its ends and the handles that shape it. */
type Curve = readonly [from: Point, handleA: Point, handleB: Point, to: Point];

/** How far a lead to another row swings out before it goes there, mm. */
const SWING_MM = 16;

/** To another row: out at the side of a connector, and in at the side of the other; clear of names above. */
function curveAcross(a: Knot, b: Knot, swing: number): Curve {
  const towards = Math.abs(b.x - a.x) < 2 * swing ? 0 : Math.sign(b.x - a.x);
  const outA = towards || 1;
  const outB = -towards || 1;
  const from = { x: a.x + outA * a.halfWidth, y: a.y };
  const to = { x: b.x + outB * b.halfWidth, y: b.y };
  return [from, { x: from.x + outA * swing, y: from.y }, { x: to.x + outB * swing, y: to.y }, to];
}

/** Within a row: hanging from connector to connector, or down to a free end. */
function curveWithin(row: SheetRow, a: Knot, b: Knot): Curve {
  const from = a.y + a.halfHeight;
  const free = b.state === 'free';
  const to = free ? b.y - b.halfHeight : b.y + b.halfHeight;
  const lowest = lowestOf(row, Math.max(from, to), Math.abs(b.x - a.x));
  const handle = ((lowest - (from + to) / 8) * 4) / 3;
  return [
    { x: a.x, y: from },
    { x: a.x, y: free ? from + 12 : handle },
    { x: b.x, y: free ? to - 12 : handle },
    { x: b.x, y: to },
  ];
}

function curveBetween(sheet: Sheet, a: Knot, b: Knot): Curve {
  const row = rowAt(sheet, a.y) as SheetRow;
  return row === rowAt(sheet, b.y) ? curveWithin(row, a, b) : curveAcross(a, b, SWING_MM * sheet.scale);
}

function pointsAlong([p, q, r, s]: Curve): Point[] {
  return Array.from({ length: CURVE_STEPS + 1 }, (_, i) => {
    const t = i / CURVE_STEPS;
    const u = 1 - t;
    const at = (axis: 'x' | 'y'): number =>
      u * u * u * p[axis] + 3 * u * u * t * q[axis] + 3 * u * t * t * r[axis] + t * t * t * s[axis];
    return { x: at('x'), y: at('y') };
  });
}

/** The way of a loose ribbon between two of its connectors, as points along it. */
export const leadCurve = (sheet: Sheet, a: Knot, b: Knot): Point[] => pointsAlong(curveBetween(sheet, a, b));
