import { type DerivedTake, type LaidRibbon, mmToHp, type PlacedHeader } from '../../src/index.ts';
import { headerBox } from './draw/headers.ts';
import type { Knot } from './knot.ts';
import type { Hit } from './model.ts';
import { type Run, runOf } from './runs.ts';
import { type Box, boardBox, mmOf, moduleBox, type Point, rowAt, type Sheet } from './sheet.ts';

/** Room around small things, CSS px. */
export const SLOP = { mouse: 3, touch: 12 } as const;

const isIn = ({ left, top, right, bottom }: Box, { x, y }: Point, slop = 0): boolean =>
  x >= left - slop && x <= right + slop && y >= top - slop && y <= bottom + slop;

function distanceToPiece({ x, y }: Point, a: Point, b: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const share = ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy || 1);
  const t = Math.min(1, Math.max(0, share));
  return Math.hypot(x - a.x - t * dx, y - a.y - t * dy);
}

const distanceToLine = (point: Point, line: readonly Point[]): number =>
  Math.min(...line.slice(1).map((end, i) => distanceToPiece(point, line[i] as Point, end)));

/** Of several within reach, as under a finger, the nearest. */
const knotAt = ({ knots }: Run, { x, y }: Point, slop: number): Knot | undefined =>
  knots
    .filter(
      (knot) =>
        Math.abs(x - knot.x) <= knot.halfWidth + slop && Math.abs(y - knot.y) <= knot.halfHeight + slop,
    )
    .sort((a, b) => Math.hypot(x - a.x, y - a.y) - Math.hypot(x - b.x, y - b.y))[0];

/** Where a point is on one ribbon, whatever lies over it. */
export function gripOn(
  sheet: Sheet,
  take: DerivedTake,
  ribbon: LaidRibbon,
  point: Point,
  slop: number,
): Extract<Hit, { type: 'ribbon' }> | null {
  const run = runOf(sheet, take, ribbon);
  if (!run || !isIn(run.box, point, slop)) return null;
  const knot = knotAt(run, point, slop);
  const { id } = ribbon;
  if (knot) return { type: 'ribbon', id, connector: knot.connector };
  return distanceToLine(point, run.line) - run.half <= slop ? { type: 'ribbon', id } : null;
}

/** Last drawn lies on top: loose ribbons over flat ones, each in document order. */
function ribbonAt(sheet: Sheet, take: DerivedTake, point: Point, slop: number): Hit | null {
  let found: Hit | null = null;
  let nearest = Number.POSITIVE_INFINITY;
  for (const ribbon of take.wiring.ribbons) {
    const run = runOf(sheet, take, ribbon);
    if (!run || !isIn(run.box, point, slop)) continue;
    const { id } = ribbon;
    const knot = knotAt(run, point, 0);
    if (knot) return { type: 'ribbon', id, connector: knot.connector };
    const off = distanceToLine(point, run.line) - run.half;
    if (off > slop || off >= nearest) continue;
    nearest = Math.max(off, 0);
    const close = knotAt(run, point, slop);
    found = { type: 'ribbon', id, ...(close && { connector: close.connector }) };
  }
  return found;
}

const headerAt = (sheet: Sheet, headers: readonly PlacedHeader[], point: Point, slop: number) =>
  headers.find((header) => isIn(headerBox(sheet, header), point, slop));

function moduleAt(sheet: Sheet, { places }: DerivedTake, point: Point, slop: number): Hit | null {
  const module = places.modules.findLast((one) => isIn(moduleBox(sheet, one), point));
  if (!module) return null;
  const header = sheet.side === 'rear' ? headerAt(sheet, module.headers, point, slop) : undefined;
  const { id } = module;
  return header ? { type: 'header', module: id, header: header.id } : { type: 'module', id };
}

function boardAt(sheet: Sheet, { places }: DerivedTake, point: Point, slop: number): Hit | null {
  const board = places.boards.findLast((one) => isIn(boardBox(sheet, one), point));
  if (!board) return null;
  const header = headerAt(sheet, board.headers, point, slop);
  return { type: 'board', id: board.id, ...(header && { header: header.id }) };
}

/**
 * What lies under a point of the sheet, CSS px from its origin; the front shows no ribbons and no boards.
 * Ribbons lie over modules, and modules over boards, but a board's own headers can be reached through a module
 * that has none there. `slop` widens what is small.
 */
export function hitTest(
  sheet: Sheet,
  take: DerivedTake,
  x: number,
  y: number,
  slop: number = SLOP.mouse,
): Hit | null {
  const point = { x, y };
  const rear = sheet.side === 'rear';
  const ribbon = rear ? ribbonAt(sheet, take, point, slop) : null;
  if (ribbon) return ribbon;
  const module = moduleAt(sheet, take, point, slop);
  if (module?.type === 'header') return module;
  const board = rear ? boardAt(sheet, take, point, slop) : null;
  if (board?.type === 'board' && board.header) return board;
  if (module ?? board) return module ?? board;
  const row = rowAt(sheet, y);
  if (!row || x < row.left || x > row.right) return null;
  return { type: 'row', id: row.placed.row.id, atHp: mmToHp(mmOf(row, x)) };
}
