import type { Run } from '../../../src/index.ts';
import {
  boardBox,
  CONNECTOR_MM,
  type DerivedTake,
  moduleBox,
  type PlacedBoard,
  type PlacedModule,
  RAIL_END_MM,
  rowOf,
  type SheetRow,
  sectionLine,
  sliceOf,
  zOf,
} from '../../../src/index.ts';
import { addBox, addLine, type Context, LEAST_TEXT, type Paper, paint, textPx, write } from './paper.ts';

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

/** Flat ribbons from above: straight, or in their arches, with their connectors. */
export function drawRibbonSlices(
  ctx: Context,
  { sheet, theme }: Paper,
  take: DerivedTake,
  runs: readonly Run[],
): void {
  const flat = runs.filter(({ ribbon }) => ribbon.facts.flat);
  const lines = flat.map((run) => sectionLine(sheet, run, take.limits.connectorBodyMm));
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
