import {
  archShape,
  atMmOf,
  type DerivedTake,
  type LaidRibbon,
  LEGS_TOUCH_RATIO,
  type PlacedBoard,
  type PlacedModule,
  reachOf,
  totalMm,
} from '../../../src/index.ts';
import type { Knot } from '../knot.ts';
import type { Run } from '../runs.ts';
import {
  boardBox,
  moduleBox,
  type Point,
  RAIL_END_MM,
  rowOf,
  type Sheet,
  type SheetRow,
  zOf,
} from '../sheet.ts';
import { addBox, addLine, type Context, LEAST_TEXT, type Paper, paint, textPx, write } from './paper.ts';

/** Height of a seated connector, mm. */
const CONNECTOR_MM = 9;

/** Drawn for a module whose depth nobody knows, mm. */
const UNKNOWN_MM = 30;

/** An arch too high for the case is drawn so far past its floor, mm. */
const PAST_FLOOR_MM = 5;

/** Points of a drawn arch. */
const ARCH_POINTS = 25;

const addSlice = (
  ctx: Context,
  row: SheetRow,
  left: number,
  right: number,
  fromMm: number,
  toMm: number,
): void => {
  const a = zOf(row, fromMm);
  const b = zOf(row, toMm);
  addBox(ctx, { left, right, top: Math.min(a, b), bottom: Math.max(a, b) });
};

/** The case from above: the panels' line, the floor, the depth in words. */
export function drawSectionGrounds(ctx: Context, { theme, sheet }: Paper, rows: readonly SheetRow[]): void {
  const end = RAIL_END_MM * sheet.scale;
  paint(ctx, { fill: theme.sheet }, rows, ({ left, right, sectionTop, sectionBottom }) =>
    ctx.rect(left - end, sectionTop, right - left + 2 * end, sectionBottom - sectionTop),
  );
  paint(ctx, { line: theme.inkSoft, width: 1.4 }, rows, ({ left, right, sectionTop, sectionBottom }) => {
    for (const y of [sectionTop, sectionBottom])
      addLine(ctx, [
        { x: left - end, y },
        { x: right + end, y },
      ]);
  });
}

/** How deep the case is, below its section. */
export function drawSectionTexts(
  ctx: Context,
  { theme, sheet, view }: Paper,
  rows: readonly SheetRow[],
): void {
  const px = Math.max(LEAST_TEXT, textPx(sheet.scale, 13) - 1);
  for (const row of rows) {
    const text = `from above \u00b7 ${row.placed.row.depthMm} mm deep`;
    const x = Math.min(row.right, view.right - 10);
    write(ctx, text, x, row.sectionBottom + px + 3, { px, colour: theme.inkFaint, align: 'right' });
  }
}

interface Slice {
  readonly module: PlacedModule;
  readonly fullMm: number;
  /** Without the plugs that the depth includes, or that were added to it. */
  readonly bareMm: number;
  readonly known: boolean;
}

function sliceOf(module: PlacedModule, take: DerivedTake): Slice {
  const reach = reachOf(module, take);
  const fullMm = reach ? totalMm(reach) : UNKNOWN_MM;
  const includesPlugs = module.headers.length > 0 && module.facts.kind.depthIs !== 'without-plugs';
  const plugMm = reach?.plugMm || (includesPlugs ? CONNECTOR_MM : 0);
  return { module, fullMm, bareMm: Math.max(fullMm - plugMm, fullMm / 2), known: !!reach };
}

/** Modules from above: solid to their circuit, outlined to where their plugs reach; only outlined where not known. */
export function drawModuleSlices(
  ctx: Context,
  { sheet, theme }: Paper,
  take: DerivedTake,
  modules: readonly PlacedModule[],
): void {
  const slices = modules.map((module) => sliceOf(module, take));
  const add = (module: PlacedModule, depthMm: number): void => {
    const { left, right } = moduleBox(sheet, module);
    addSlice(ctx, rowOf(sheet, module), left + 0.5, right - 0.5, 0, depthMm);
  };
  paint(ctx, { line: theme.inkFaint, width: 0.8, dash: [3, 2] }, slices, ({ module, fullMm }) =>
    add(module, fullMm),
  );
  const known = slices.filter((slice) => slice.known);
  const solid = { fill: theme.board, line: theme.boardEdge, width: 0.8 };
  paint(ctx, solid, known, ({ module, bareMm }) => add(module, bareMm));
}

/** Boards stand on the floor of the case as high as they rise. */
export function drawBoardSlices(ctx: Context, { sheet, theme }: Paper, boards: readonly PlacedBoard[]): void {
  paint(ctx, { fill: theme.line, line: theme.inkSoft }, boards, (placed) => {
    const row = rowOf(sheet, placed);
    const { depthMm } = row.placed.row;
    const { left, right } = boardBox(sheet, placed);
    addSlice(ctx, row, left, right, depthMm - Math.max(placed.board.riseMm ?? 0, 1.6), depthMm);
  });
}

/** The arch between two connectors on headers, as it will stand; nothing where the ribbon is too short for one. */
function archBetween(row: SheetRow, ribbon: LaidRibbon, a: Knot, b: Knot, bodyMm: number): Point[] {
  const free = Math.abs(atMmOf(ribbon, b.connector) - atMmOf(ribbon, a.connector)) - bodyMm;
  const over = Math.max(Math.abs(b.x - a.x) / row.scale - bodyMm, free * LEGS_TOUCH_RATIO);
  if (free <= 0 || over >= free * 0.999) return [];
  const floorMm = row.placed.row.depthMm + PAST_FLOOR_MM;
  const held = (Math.sign(b.x - a.x) * bodyMm * row.scale) / 2;
  return archShape(free, over, ARCH_POINTS).map(({ alongMm, heightMm }) => {
    const share = alongMm / over;
    const level = depthOf(a) + (depthOf(b) - depthOf(a)) * share;
    return {
      x: a.x + held + (b.x - a.x - 2 * held) * share,
      y: zOf(row, Math.min(level + heightMm, floorMm)),
    };
  });
}

const depthOf = ({ header }: Knot): number => header?.zMm ?? 0;

/**
 * A ribbon from above. One that does not bend lies as deep as its deepest header holds it; one that does arches
 * between headers, and runs straight to free ends and to joints, behind which its arch is not computed. Of one that
 * would have to reach into another row only the part in the first of its rows is shown.
 */
function lineOf(sheet: Sheet, { knots, ribbon }: Run, bodyMm: number): Point[] {
  const inSomeRow = knots.filter((knot) => knot.header?.zMm !== undefined && !knot.stray?.otherRow);
  const [first] = inSomeRow;
  if (!first?.header) return [];
  const { index } = first.header.row;
  const seats = inSomeRow.filter(({ header }) => header?.row.index === index);
  const row = rowOf(sheet, first.header);
  const deepest = Math.max(...seats.map(depthOf));
  const isEnd = (knot: Knot, i: number) => !knot.header && (i === 0 || i === knots.length - 1);
  const stops = knots.filter((knot, i) => seats.includes(knot) || isEnd(knot, i));
  const levelOf = (knot: Knot): number =>
    !ribbon.facts.bends ? deepest : depthOf(seats.includes(knot) ? knot : first);
  return stops.flatMap((knot, i) => {
    const before = stops[i - 1];
    const arches = before && ribbon.facts.bends && seats.includes(before) && seats.includes(knot);
    const arch = arches ? archBetween(row, ribbon, before, knot, bodyMm) : [];
    return [...arch, { x: knot.x, y: zOf(row, levelOf(knot)) }];
  });
}

/** Flat ribbons from above: straight, or in their arches, with their connectors. */
export function drawRibbonSlices(
  ctx: Context,
  { sheet, theme }: Paper,
  take: DerivedTake,
  runs: readonly Run[],
): void {
  const flat = runs.filter(({ ribbon }) => ribbon.facts.flat);
  const lines = flat.map((run) => lineOf(sheet, run, take.limits.connectorBodyMm));
  const width = Math.max(1.6, take.limits.ribbonMm * sheet.scale * 0.8);
  ctx.lineJoin = 'round';
  for (const look of [
    { line: theme.ribbonEdge, width: width + 1.6 },
    { line: theme.ribbon, width },
  ]) {
    paint(ctx, look, lines, (line) => addLine(ctx, line));
  }
  ctx.lineJoin = 'miter';
  const body = { fill: theme.connector, line: theme.connectorEdge, width: 0.8 };
  paint(
    ctx,
    body,
    flat.flatMap(({ knots }) => knots),
    ({ x, halfWidth, header, stray }) => {
      if (header?.zMm === undefined || stray?.otherRow) return;
      addSlice(
        ctx,
        rowOf(sheet, header),
        x - halfWidth,
        x + halfWidth,
        header.zMm - CONNECTOR_MM,
        header.zMm,
      );
    },
  );
}
