import {
  type Berth,
  type Box,
  berthOn,
  boardBox,
  connectorAt,
  groupBy,
  headerPoint,
  heightMmOf,
  isTaken,
  meets,
  mmOf,
  moduleBox,
  type PlacedHeader,
  type PlacedModule,
  type Places,
  type Point,
  remember,
  rowAt,
  rowOf,
  runOf,
  type Sheet,
  type WholeTake,
  xOf,
  yOf,
} from '../../src/index.ts';
import { headerBox } from '../canvas/draw/headers.ts';
import { type Editor, shownAnalysis } from '../editor.ts';
import { sheetNow, toSheet } from '../store/view.ts';
import type { Pointer } from './pointer.ts';

/** How far off a header a ribbon may be put down, px. */
export const REACH_PX = { mouse: 28, touch: 44, pen: 28 } as const;

/** No module is higher, mm: 9 U. */
const HIGHEST_MM = 400;

const holds = ({ left, right, top, bottom }: Box, { x, y }: Point, slop = 0): boolean =>
  x >= left - slop && x <= right + slop && y >= top - slop && y <= bottom + slop;

const EVERYWHERE: Box = {
  left: Number.NEGATIVE_INFINITY,
  top: Number.NEGATIVE_INFINITY,
  right: Number.POSITIVE_INFINITY,
  bottom: Number.POSITIVE_INFINITY,
};

interface FreeConnector {
  readonly berth: Berth;
  /** All of its ribbon, on the sheet. */
  readonly box: Box;
}

/** Free sockets and plugs of laid ribbons, looked for once: a hand asks with every move. */
const freeConnectorsOf = remember((derived: WholeTake) =>
  remember((sheet: Sheet) => [...freeOn(sheet, derived)]),
);

function* freeOn(sheet: Sheet, derived: WholeTake): Generator<FreeConnector> {
  for (const ribbon of derived.wiring.ribbons) {
    const run = runOf(sheet, derived, ribbon);
    if (!run) continue;
    for (const [order, knot] of run.knots.entries()) {
      const on = { type: 'connector', ribbon, connector: connectorAt(ribbon, order) } as const;
      const row = isTaken(derived, on) ? undefined : rowAt(sheet, knot.y);
      if (!row) continue;
      const berth = { on, row: row.placed, xMm: mmOf(row, knot.x), yMm: heightMmOf(row, knot.y) };
      yield { berth, box: run.box };
    }
  }
}

/** Free sockets and plugs of ribbons that are drawn within a part of the sheet. */
const freeConnectors = (editor: Editor, within: Box): Berth[] =>
  freeConnectorsOf(shownAnalysis(editor).derived)(sheetNow(editor))
    .filter(({ box }) => meets(box, within))
    .map(({ berth }) => berth);

/** Sorted once for a take: a hand asks with every move. */
const modulesByRow = remember(({ modules }: Places) => groupBy(modules, ({ row }) => row));

/** Modules in rows that lie between two heights of the sheet, by rows. */
function modulesIn(editor: Editor, top: number, bottom: number): PlacedModule[] {
  const byRow = modulesByRow(shownAnalysis(editor).derived.places);
  return sheetNow(editor)
    .rows.filter((row) => row.top <= bottom && row.bottom >= top)
    .flatMap(({ placed }) => byRow.get(placed) ?? []);
}

/** The headers of the take, and the free connectors of its ribbons, within a part of the sheet and somewhat beyond. */
function* allBerths(editor: Editor, within = EVERYWHERE): Generator<Berth> {
  const { boards } = shownAnalysis(editor).derived.places;
  const sheet = sheetNow(editor);
  for (const owner of [...modulesIn(editor, within.top, within.bottom), ...boards]) {
    const row = rowOf(sheet, owner);
    const [one, other] = [mmOf(row, within.left), mmOf(row, within.right)];
    const [fromMm, toMm] = [Math.min(one, other), Math.max(one, other)];
    for (const header of owner.headers) if (header.xMm >= fromMm && header.xMm <= toMm) yield berthOn(header);
  }
  yield* freeConnectors(editor, within);
}

/** Where a berth lies on the sheet, CSS px. */
export function berthPoint(editor: Editor, berth: Pick<Berth, 'row' | 'xMm' | 'yMm'>): Point {
  const row = rowOf(sheetNow(editor), berth);
  return { x: xOf(row, berth.xMm), y: yOf(row, berth.yMm) };
}

/** Berths of a take that pass, taken ones too. */
export const berthsThat = (editor: Editor, pass: (berth: Berth) => boolean): Berth[] =>
  [...allBerths(editor)].filter(pass);

/** Berths within reach of a pointer, the nearest first, taken ones too. */
export function berthsNear(editor: Editor, pointer: Pointer): Berth[] {
  const at = toSheet(editor, pointer);
  const reach = REACH_PX[pointer.kind];
  const found: { readonly berth: Berth; readonly off: number }[] = [];
  const around = { left: at.x - reach, top: at.y - reach, right: at.x + reach, bottom: at.y + reach };
  for (const berth of allBerths(editor, around)) {
    const { x, y } = berthPoint(editor, berth);
    if (Math.abs(x - at.x) > reach || Math.abs(y - at.y) > reach) continue;
    const off = Math.hypot(x - at.x, y - at.y);
    if (off <= reach) found.push({ berth, off });
  }
  return found.sort((a, b) => a.off - b.off).map(({ berth }) => berth);
}

/** Headers of the board or module under a pointer, the nearest first. */
export function headersUnder(editor: Editor, pointer: Pointer): PlacedHeader[] {
  const sheet = sheetNow(editor);
  const at = toSheet(editor, pointer);
  const { boards } = shownAnalysis(editor).derived.places;
  // One that is higher than its row stands out above it.
  const modules = modulesIn(editor, at.y, at.y + HIGHEST_MM * sheet.scale);
  const owner =
    boards.findLast((board) => holds(boardBox(sheet, board), at)) ??
    modules.findLast((module) => holds(moduleBox(sheet, module), at));
  const off = (header: PlacedHeader): number => {
    const { x, y } = headerPoint(sheet, header);
    return Math.hypot(x - at.x, y - at.y);
  };
  return [...(owner?.headers ?? [])].sort((a, b) => off(a) - off(b));
}

/** The header whose very box lies under a pointer. */
export function headerExactly(editor: Editor, pointer: Pointer): PlacedHeader | undefined {
  const sheet = sheetNow(editor);
  const at = toSheet(editor, pointer);
  return headersUnder(editor, pointer).find((header) => holds(headerBox(sheet, header), at));
}

/** The place along a berth's row under a pointer, mm seen from the front. */
export const alongRow = (editor: Editor, { row }: Pick<Berth, 'row'>, pointer: Point): number =>
  mmOf(rowOf(sheetNow(editor), { row }), toSheet(editor, pointer).x);

/** Room around a free header for a press that starts a ribbon there, px. */
const PRESS_PX = { mouse: 2, touch: 12, pen: 5 } as const;

/** The free header, or free connector of a ribbon, that a press takes hold of; the front shows none. */
export function freeBerthAt(editor: Editor, pointer: Pointer): Berth | null {
  if (editor.session.getState().side === 'front') return null;
  const sheet = sheetNow(editor);
  const at = toSheet(editor, pointer);
  const { derived } = shownAnalysis(editor);
  for (const berth of berthsNear(editor, pointer)) {
    const { on } = berth;
    if (isTaken(derived, on)) continue;
    const slop = PRESS_PX[pointer.kind];
    if (on.type === 'header' && holds(headerBox(sheet, on.header), at, slop)) return berth;
    if (on.type === 'connector' && isOnKnot(editor, berth, at, slop)) return berth;
  }
  return null;
}

function isOnKnot(editor: Editor, { on }: Berth, { x, y }: Point, slop: number): boolean {
  if (on.type !== 'connector') return false;
  const run = runOf(sheetNow(editor), shownAnalysis(editor).derived, on.ribbon);
  const knot = run?.knots.find(({ connector }) => connector === on.connector);
  return (
    knot !== undefined &&
    Math.abs(x - knot.x) <= knot.halfWidth + slop &&
    Math.abs(y - knot.y) <= knot.halfHeight + slop
  );
}
