import type { Knot } from '../../src/index.ts';
import {
  type Box,
  boardBox,
  type DerivedTake,
  type LaidRibbon,
  mmOf,
  mmToHp,
  moduleBox,
  overOf,
  type PlacedHeader,
  type Point,
  type Run,
  railAt,
  rowAt,
  runOf,
  type Sheet,
} from '../../src/index.ts';
import { headerBox } from './draw/headers.ts';
import { type Hidden, isHidden } from './layer-keys.ts';
import type { Hit } from './model.ts';

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

/** A ribbon at a point: how far off its band, and whether one of its connectors is there. */
interface RibbonHit {
  readonly hit: Hit;
  readonly off: number;
  readonly onKnot: boolean;
  readonly over: number;
}

/** Ribbons at a point, the uppermost first: connectors before bands, near ones before others, then the last drawn. */
function ribbonsAt(sheet: Sheet, take: DerivedTake, point: Point, slop: number, hidden: Hidden): Hit[] {
  const found: RibbonHit[] = [];
  for (const ribbon of take.wiring.ribbons) {
    if (isHidden(hidden, ribbon)) continue;
    const run = runOf(sheet, take, ribbon);
    if (!run || !isIn(run.box, point, slop)) continue;
    const { id } = ribbon;
    const over = overOf(ribbon);
    const knot = knotAt(run, point, 0);
    if (knot) {
      found.push({ hit: { type: 'ribbon', id, connector: knot.connector }, off: 0, onKnot: true, over });
      continue;
    }
    const off = distanceToLine(point, run.line) - run.half;
    if (off > slop) continue;
    const close = knotAt(run, point, slop);
    const hit: Hit = { type: 'ribbon', id, ...(close && { connector: close.connector }) };
    found.push({ hit, off: Math.max(off, 0), onKnot: false, over });
  }
  const bands = found.filter(({ onKnot }) => !onKnot).reverse();
  bands.sort((a, b) => a.off - b.off || b.over - a.over);
  const knots = found.filter(({ onKnot }) => onKnot).sort((a, b) => b.over - a.over);
  return [...knots, ...bands].map(({ hit }) => hit);
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
 * Everything that lies under a point of the sheet, CSS px from its origin, the uppermost first; the front shows no
 * ribbons and no boards. Ribbons lie over modules, and modules over boards, but a board's own headers can be
 * reached through a module that has none there. What is hidden is not there. `slop` widens what is small.
 */
export function hitPile(
  sheet: Sheet,
  take: DerivedTake,
  x: number,
  y: number,
  slop: number = SLOP.mouse,
  hidden: Hidden = undefined,
): Hit[] {
  const point = { x, y };
  const rear = sheet.side === 'rear';
  const ribbons = rear ? ribbonsAt(sheet, take, point, slop, hidden) : [];
  const module = moduleAt(sheet, take, point, slop);
  const board = rear && !hidden?.has('boards') ? boardAt(sheet, take, point, slop) : null;
  const boardFirst = module?.type !== 'header' && board?.type === 'board' && board.header !== undefined;
  const below = boardFirst ? [board, module] : [module, board];
  return [...ribbons, ...below.filter((hit) => hit !== null)];
}

/** The uppermost thing under a point of the sheet, else the place on the rails. */
export function hitTest(
  sheet: Sheet,
  take: DerivedTake,
  x: number,
  y: number,
  slop: number = SLOP.mouse,
  hidden: Hidden = undefined,
): Hit | null {
  const [uppermost] = hitPile(sheet, take, x, y, slop, hidden);
  if (uppermost) return uppermost;
  const row = rowAt(sheet, y);
  const on = row && railAt(row, { x, y }, slop);
  if (!row || (!on && (x < row.left || x > row.right))) return null;
  return { type: 'row', id: row.placed.row.id, atHp: mmToHp(mmOf(row, x)), ...(on && { on }) };
}
