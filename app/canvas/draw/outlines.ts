import type { DerivedTake, SubjectType } from '../../../src/index.ts';
import {
  type Box,
  beside,
  boardBox,
  boxOf,
  moduleBox,
  RAIL_END_MM,
  type Run,
  runOf,
  type Sheet,
} from '../../../src/index.ts';
import { type Hit, selectionKey } from '../model.ts';
import { headerBox } from './headers.ts';
import { addBox, addLine, type Context, type Paper, paint } from './paper.ts';

/** The shapes of some things of a take: boxes, and the ways of ribbons. */
export interface Shapes {
  readonly boxes: readonly Box[];
  readonly runs: readonly Run[];
}

function rowBoxes(sheet: Sheet, id: string): Box[] {
  const row = sheet.rowById.get(id);
  if (!row) return [];
  const end = RAIL_END_MM * sheet.scale;
  return [{ left: row.left - end, right: row.right + end, top: row.top, bottom: row.sectionBottom }];
}

/** Shapes of the modules, boards, ribbons, supplies and rows that pass. */
export function shapesOf(
  sheet: Sheet,
  take: DerivedTake,
  has: (type: SubjectType, id: string) => boolean,
): Shapes {
  const { places, wiring } = take;
  const boxes = [
    ...places.modules.filter(({ id }) => has('module', id)).map((module) => moduleBox(sheet, module)),
    ...places.boards
      .filter(({ id, supply }) => has('board', id) || has('supply', supply.id))
      .map((board) => boardBox(sheet, board)),
    ...places.rows.filter(({ row }) => has('row', row.id)).flatMap(({ row }) => rowBoxes(sheet, row.id)),
  ];
  const runs = wiring.ribbons
    .filter(({ id }) => has('ribbon', id))
    .flatMap((ribbon) => runOf(sheet, take, ribbon) ?? []);
  return { boxes, runs };
}

/** Dims everything but the shapes. Only for a layer of its own, from which it cuts them out. */
export function drawVeil(ctx: Context, { theme, view }: Paper, { boxes, runs }: Shapes): void {
  ctx.fillStyle = theme.veil;
  ctx.fillRect(view.left, view.top, view.right - view.left, view.bottom - view.top);
  ctx.globalCompositeOperation = 'destination-out';
  paint(ctx, { fill: '#000' }, boxes, (box) => addBox(ctx, box, -3));
  ctx.lineCap = 'square';
  for (const { line, half } of runs)
    paint(ctx, { line: '#000', width: 2 * half + 14 }, [line], (way) => addLine(ctx, way));
  ctx.lineCap = 'butt';
  ctx.globalCompositeOperation = 'source-over';
}

/** Outlines what is selected, or dropped on. */
export function drawOutlines(ctx: Context, { theme }: Paper, { boxes, runs }: Shapes): void {
  const edges = runs.flatMap(({ line, half }) => [beside(line, half + 2), beside(line, -half - 2)]);
  for (const look of [
    { line: theme.sheet, width: 4 },
    { line: theme.brass, width: 2 },
  ]) {
    paint(ctx, look, boxes, (box) => addBox(ctx, box, -2));
    paint(ctx, look, edges, (edge) => addLine(ctx, edge));
  }
}

/** Shapes of what a gesture would drop on. */
export function targetShapes(sheet: Sheet, take: DerivedTake, target: Hit): Shapes {
  if (target.type === 'row') {
    const row = sheet.rowById.get(target.id);
    return {
      boxes: row ? [boxOf(row, 0, row.placed.widthMm, 0, (row.bottom - row.top) / row.scale)] : [],
      runs: [],
    };
  }
  const owner =
    target.type === 'header'
      ? take.places.moduleById.get(target.module)
      : target.type === 'board' && take.places.boardById.get(target.id);
  const header = owner && 'header' in target && owner.headers.find(({ id }) => id === target.header);
  if (header) return { boxes: [headerBox(sheet, header)], runs: [] };
  if (target.type === 'header') return { boxes: [], runs: [] };
  const key = selectionKey(target.type, target.id);
  return shapesOf(sheet, take, (type, id) => selectionKey(type, id) === key);
}
