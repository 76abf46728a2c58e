import {
  type FreeSpan,
  HP_MM,
  hpText,
  RAIL_END_MM,
  RAIL_MM,
  type SheetRow,
  xOf,
} from '../../../src/index.ts';
import { addPolygon, type Context, LEAST_TEXT, type Paper, paint, textPx, write } from './paper.ts';
import { widthOf } from './text-width.ts';

const HATCH_PX = 9;

/** Panels are a little narrower than their HP: the hatch reaches under them, HP. */
const UNDER_HP = 0.5;

/** Slanting lines on the ground that no module hides: the side that the wiring is on. They run on behind modules. */
function addHatch(ctx: Context, row: SheetRow, { fromHp, toHp }: FreeSpan, view: Paper['view']): void {
  const { left, right, top, bottom } = row;
  const height = bottom - top;
  const ends = [xOf(row, (fromHp - UNDER_HP) * HP_MM), xOf(row, (toHp + UNDER_HP) * HP_MM)];
  const from = Math.max(left, view.left, Math.min(...ends));
  const to = Math.min(right, view.right, Math.max(...ends));
  const first = left - height + Math.max(0, Math.floor((from - left) / HATCH_PX)) * HATCH_PX;
  for (let x = first; x < to; x += HATCH_PX) {
    const start = Math.max(0, from - x);
    const end = Math.min(height, to - x);
    if (end <= start) continue;
    ctx.moveTo(x + start, bottom - start);
    ctx.lineTo(x + end, bottom - end);
  }
}

/** Steps of HP that leave their figures room. */
const STEPS_HP = [1, 2, 5, 10, 20, 50] as const;

function stepOf(scale: number, roomPx: number): number {
  return STEPS_HP.find((step) => step * HP_MM * scale >= roomPx) ?? 100;
}

function addTicks(ctx: Context, row: SheetRow, view: Paper['view']): void {
  const { scale, placed } = row;
  const step = stepOf(scale, 4);
  const rail = RAIL_MM * scale;
  for (let hp = 0; hp <= placed.row.widthHp; hp += step) {
    const x = xOf(row, hp * HP_MM);
    if (x < view.left || x > view.right) continue;
    const length = rail * (hp % 10 === 0 ? 0.62 : 0.34);
    ctx.moveTo(x, row.top + rail);
    ctx.lineTo(x, row.top + rail - length);
    ctx.moveTo(x, row.bottom - rail);
    ctx.lineTo(x, row.bottom - rail + length);
  }
}

/** Figures in HP from the front's left: in the rear view they run from right to left. */
function drawRuler(ctx: Context, { theme, view }: Paper, row: SheetRow): void {
  const { scale, placed } = row;
  const step = stepOf(scale, 34);
  const px = Math.min(14, textPx(scale) - 1);
  for (let hp = 0; hp <= placed.row.widthHp; hp += step) {
    const x = xOf(row, hp * HP_MM);
    if (x < view.left - 20 || x > view.right + 20) continue;
    write(ctx, String(hp), x, row.rulerY, {
      px: Math.max(px, LEAST_TEXT),
      colour: theme.inkFaint,
      align: 'center',
    });
  }
}

const nameOf = ({ placed }: SheetRow): string => placed.row.name ?? `Row ${placed.index + 1}`;

/** Titles stay in sight while their row is, and can be read where a lead passes behind them. */
function drawTitle(
  ctx: Context,
  { theme, view, sheet }: Paper,
  row: SheetRow,
  spans: readonly FreeSpan[],
): void {
  const freeHp = spans.reduce((sum, { fromHp, toHp }) => sum + toHp - fromHp, 0);
  const px = textPx(sheet.scale, 15);
  const seen = sheet.side === 'rear' ? 'seen from the rear' : 'seen from the front';
  const left = Math.max(row.left, view.left + 10);
  const title = nameOf(row);
  const halo = theme.bench;
  write(ctx, title, left, row.titleY, { px, colour: theme.ink, weight: 650, halo });
  const after = left + widthOf(ctx, title, px, 650) + px * 0.7;
  write(ctx, `${seen} \u00b7 ${hpText(freeHp)} free`, after, row.titleY, {
    px: Math.max(LEAST_TEXT, px - 0.5),
    colour: theme.inkSoft,
    halo,
  });
}

/** The mark at the front's top left corner goes round with the rack when it is turned. */
function drawCorner(ctx: Context, { theme, sheet }: Paper, row: SheetRow): void {
  const size = 6.5 * row.scale;
  const into = Math.sign(row.stepX);
  const x = row.originX - into * RAIL_END_MM * row.scale;
  const corner = [
    { x, y: row.top },
    { x: x + into * size, y: row.top },
    { x, y: row.top + size },
  ];
  paint(ctx, { fill: theme.brass }, [corner], (points) => addPolygon(ctx, points));
  if (sheet.side === 'front' || row.placed.index > 0 || row.right - row.left < 380) return;
  const px = LEAST_TEXT;
  write(ctx, 'front left', x, row.titleY, { px, colour: theme.brass, weight: 600, align: 'right' });
}

/** What each row is called, from which side it is seen, and what is free in it. */
export function drawTitles(
  ctx: Context,
  paper: Paper,
  free: ReadonlyMap<SheetRow, readonly FreeSpan[]>,
): void {
  for (const [row, spans] of free) drawTitle(ctx, paper, row, spans);
}

/** Rows as they stand: ground, rails with a tick at each HP, and ruler. */
export function drawRows(ctx: Context, paper: Paper, free: ReadonlyMap<SheetRow, readonly FreeSpan[]>): void {
  const { theme, view, sheet } = paper;
  const { scale } = sheet;
  const rail = RAIL_MM * scale;
  const end = RAIL_END_MM * scale;
  const rear = sheet.side === 'rear';
  const rows = [...free.keys()];
  paint(ctx, { fill: rear ? theme.bench : theme.sheet }, rows, ({ left, right, top, bottom }) =>
    ctx.rect(left - end, top, right - left + 2 * end, bottom - top),
  );
  if (rear) {
    paint(ctx, { line: theme.hatch }, [...free], ([row, spans]) => {
      for (const span of spans) addHatch(ctx, row, span, view);
    });
  }
  paint(ctx, { fill: theme.rail }, rows, ({ left, right, top, bottom }) => {
    for (const y of [top, bottom - rail]) ctx.rect(left - end, y, right - left + 2 * end, rail);
  });
  paint(ctx, { line: theme.sheet, width: 0.8 }, rows, (row) => addTicks(ctx, row, view));
  for (const row of rows) {
    drawRuler(ctx, paper, row);
    drawCorner(ctx, paper, row);
  }
}
