import type { PlacedBoard, PlacedHeader, PlacedModule, PlacedRow } from '../geometry/place.ts';
import { panelHeightMm, panelWidthMm } from '../geometry/rack.ts';
import type { Side } from '../geometry/side.ts';
import { remember } from '../layout/remember.ts';
import type { DerivedTake } from '../wiring/derived-take.ts';

/** CSS px. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/**
 * One row on the sheet. All in CSS px from the sheet's origin; y grows downward. The sheet is similar to
 * itself at every scale, so that a zoom is one affine map.
 */
export interface SheetRow {
  readonly placed: PlacedRow;
  readonly side: Side;
  readonly scale: number;
  /** Where the front's left end of the row lies. */
  readonly originX: number;
  /** px per mm to the right, seen from the front: negative in the rear view. */
  readonly stepX: number;
  readonly left: number;
  readonly right: number;
  /** Baseline of the title. */
  readonly titleY: number;
  readonly top: number;
  readonly bottom: number;
  /** Baseline of the ruler's figures. */
  readonly rulerY: number;
  readonly sectionTop: number;
  readonly sectionBottom: number;
  /** How deep the section is drawn: 1 is as deep as it is, 0 not at all. */
  readonly depthScale: number;
}

/** A take drawn from one side at one scale. */
export interface Sheet extends Size {
  readonly side: Side;
  readonly scale: number;
  readonly rows: readonly SheetRow[];
  readonly rowById: ReadonlyMap<string, SheetRow>;
}

/** CSS px from the sheet's origin. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A rectangle, CSS px from the sheet's origin. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const MARGIN_MM = 8;
const TITLE_MM = 13;
const RULER_MM = 10;
const ROW_GAP_MM = 11;

/** The section from above is drawn flatter than it is. */
const DEPTH_SCALE = 0.62;

/** Height of a rail as drawn, mm. */
export const RAIL_MM = 5.6;

/** How far a rail runs on beyond the row's ends. */
export const RAIL_END_MM = 4;

/** What is drawn of each row. */
export interface Shown {
  /** The panels as seen from a side. */
  readonly panels: boolean;
  /** See `SheetRow`. */
  readonly depthScale: number;
}

/** Panels and a flat section, as on the screen. */
const ON_SCREEN: Shown = { panels: true, depthScale: DEPTH_SCALE };

const sectionMm = ({ row }: PlacedRow, { depthScale }: Shown): number => row.depthMm * depthScale;

const bodyMm = ({ row }: PlacedRow, { panels }: Shown): number => (panels ? panelHeightMm(row.heightU) : 0);

const heightMm = (row: PlacedRow, shown: Shown): number =>
  TITLE_MM + bodyMm(row, shown) + RULER_MM + sectionMm(row, shown);

/** Size of the sheet at 1 px per mm. */
export const sheetMm = remember((rows: readonly PlacedRow[]): Size => sizeOf(rows, ON_SCREEN));

function sizeOf(rows: readonly PlacedRow[], shown: Shown): Size {
  const widest = Math.max(0, ...rows.map(({ widthMm }) => widthMm));
  const gaps = Math.max(0, rows.length - 1) * ROW_GAP_MM;
  return {
    width: widest + 2 * MARGIN_MM,
    height: rows.reduce((sum, row) => sum + heightMm(row, shown), gaps + 2 * MARGIN_MM),
  };
}

function layOutRow(
  placed: PlacedRow,
  side: Side,
  scale: number,
  topMm: number,
  sheetWidth: number,
  shown: Shown,
): SheetRow {
  const front = side === 'front';
  const originX = front ? MARGIN_MM * scale : sheetWidth - MARGIN_MM * scale;
  const stepX = front ? scale : -scale;
  const end = originX + stepX * placed.widthMm;
  const bodyTop = topMm + TITLE_MM;
  const bodyBottom = bodyTop + bodyMm(placed, shown);
  const section = bodyBottom + RULER_MM;
  return {
    placed,
    side,
    scale,
    originX,
    stepX,
    left: Math.min(originX, end),
    right: Math.max(originX, end),
    titleY: (bodyTop - 4.5) * scale,
    top: bodyTop * scale,
    bottom: bodyBottom * scale,
    rulerY: (section - 2.8) * scale,
    sectionTop: section * scale,
    sectionBottom: (section + sectionMm(placed, shown)) * scale,
    depthScale: shown.depthScale,
  };
}

/** The last sheet of some rows: it is asked for with every move of the hand, and the rows are the same for as long. */
const laidOut = new WeakMap<readonly PlacedRow[], Sheet>();

/**
 * Lays out the sheet of a take. Rows of unequal width are aligned at the front's left end.
 *
 * @param like - the sheet is as wide as that of this take: so the front's left end stays where it is while a row grows
 */
export function layOutSheet(
  { places }: Pick<DerivedTake, 'places'>,
  side: Side,
  scale: number,
  like: Pick<DerivedTake, 'places'> = { places },
): Sheet {
  const size = sheetMm(places.rows);
  const width = sheetMm(like.places.rows).width * scale;
  const last = laidOut.get(places.rows);
  if (last && last.side === side && last.scale === scale && last.width === width) return last;
  const sheet = sheetOf(places.rows, side, scale, { width, height: size.height * scale }, ON_SCREEN);
  laidOut.set(places.rows, sheet);
  return sheet;
}

function sheetOf(
  placedRows: readonly PlacedRow[],
  side: Side,
  scale: number,
  { width, height }: Size,
  shown: Shown,
): Sheet {
  let topMm = MARGIN_MM;
  const rows = placedRows.map((placed) => {
    const row = layOutRow(placed, side, scale, topMm, width, shown);
    topMm += heightMm(placed, shown) + ROW_GAP_MM;
    return row;
  });
  const rowById = new Map(rows.map((row) => [row.placed.row.id, row]));
  return { side, scale, width, height, rows, rowById };
}

/** Lays out a take for paper, in mm of the case. */
export const layOutForPaper = ({ places }: Pick<DerivedTake, 'places'>, side: Side, shown: Shown): Sheet =>
  sheetOf(places.rows, side, 1, sizeOf(places.rows, shown), shown);

/** px of a place along the row, mm from its left end seen from the front. */
export const xOf = ({ originX, stepX }: SheetRow, mm: number): number => originX + stepX * mm;

/** mm along the row, seen from the front, of a px; the inverse of `xOf`. */
export const mmOf = ({ originX, stepX }: SheetRow, x: number): number => (x - originX) / stepX;

/** px of a height above the panels' bottom edge, mm. */
export const yOf = ({ bottom, scale }: SheetRow, mm: number): number => bottom - mm * scale;

/** mm above the panels' bottom edge of a px; the inverse of `yOf`. */
export const heightMmOf = ({ bottom, scale }: SheetRow, y: number): number => (bottom - y) / scale;

/** px in the section of a depth behind the panels, mm: the side looked at lies at the bottom. */
export function zOf(row: SheetRow, mm: number): number {
  const depth = mm * row.scale * row.depthScale;
  return row.side === 'rear' ? row.sectionTop + depth : row.sectionBottom - depth;
}

/** The row whose strip of the sheet a px lies in, the section included. */
export const rowAt = ({ rows }: Sheet, y: number): SheetRow | undefined =>
  rows.find(({ placed, top, sectionBottom, scale }, i) => {
    const above = i === 0 || y >= top - (TITLE_MM + ROW_GAP_MM / 2) * scale;
    return above && (placed.index === rows.length - 1 || y < sectionBottom + (ROW_GAP_MM / 2) * scale);
  });

/** The row that an owner stands in. */
export const rowOf = (sheet: Sheet, { row }: { readonly row: PlacedRow }): SheetRow =>
  sheet.rows[row.index] as SheetRow;

/** Where on a row's rails a point lies: on its title, rails or ruler, or at the front's right end, which can be drawn out. */
export function railAt(row: SheetRow, { x, y }: Point, slop: number): 'rail' | 'end' | undefined {
  const { left, right, top, bottom, sectionTop, scale, stepX, placed } = row;
  const rail = RAIL_MM * scale;
  const beyond = (x - xOf(row, placed.widthMm)) * Math.sign(stepX);
  if (y >= top && y <= bottom && beyond >= -2 && beyond <= RAIL_END_MM * scale + slop) return 'end';
  const isAbove = y >= top - TITLE_MM * scale && y <= top + rail;
  const isBelow = y >= bottom - rail && y <= sectionTop;
  return x >= left && x <= right && (isAbove || isBelow) ? 'rail' : undefined;
}

/** The part of the sheet that a screen of this size shows. */
export const viewOf = ({ x, y }: Point, { width, height }: Size): Box => ({
  left: -x,
  top: -y,
  right: width - x,
  bottom: height - y,
});

export const meets = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** A box between two places of a row, seen from the front, mm. */
export function boxOf(row: SheetRow, leftMm: number, rightMm: number, lowMm: number, highMm: number): Box {
  const a = xOf(row, leftMm);
  const b = xOf(row, rightMm);
  return { left: Math.min(a, b), right: Math.max(a, b), top: yOf(row, highMm), bottom: yOf(row, lowMm) };
}

/** The middle of a header's pin field. */
export function headerPoint(sheet: Sheet, header: PlacedHeader): Point {
  const row = rowOf(sheet, header);
  return { x: xOf(row, header.xMm), y: yOf(row, header.yMm) };
}

/** A module's panel. */
export function moduleBox(sheet: Sheet, module: PlacedModule): Box {
  const { leftMm, rightMm, facts } = module;
  const play = (rightMm - leftMm - panelWidthMm(facts.kind.widthHp)) / 2;
  return boxOf(rowOf(sheet, module), leftMm + play, rightMm - play, 0, panelHeightMm(facts.heightU));
}

const BOARD_EDGE_MM = 5;

/** From the middle of a board's headers to its edge, mm. */
const BOARD_HALF_MM = 20;

/** A board as drawn: its covered width where that is known, and its headers with some edge around them. */
export function boardBox(sheet: Sheet, placed: PlacedBoard): Box {
  const { board, headers } = placed;
  const xs = headers.map(({ xMm }) => xMm);
  const ys = headers.map(({ yMm }) => yMm);
  const middle = ys.length ? (Math.min(...ys) + Math.max(...ys)) / 2 : (board.yMm ?? 60);
  const reach = (ys.length ? Math.max(...ys) - middle : 0) + BOARD_HALF_MM;
  const left = Math.min(board.xMm, ...xs.map((x) => x - BOARD_EDGE_MM));
  const right = Math.max(board.xMm + (board.widthMm ?? 0), ...xs.map((x) => x + BOARD_EDGE_MM));
  return boxOf(rowOf(sheet, placed), left, right, middle - reach, middle + reach + 7);
}
