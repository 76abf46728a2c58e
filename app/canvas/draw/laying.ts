import {
  type Box,
  type Laying,
  type Point,
  rowOf,
  type Sheet,
  type SheetRow,
  socketBodyMm,
  xOf,
  yOf,
  zOf,
} from '../../../src/index.ts';
import type { Overlay } from '../model.ts';
import { drawDimensions, type Missing } from './misses.ts';
import {
  addBox,
  addDot,
  addLine,
  boxAround,
  CENTRED,
  type Context,
  LEAST_TEXT,
  type Paper,
  paint,
  write,
} from './paper.ts';
import { widthOf } from './text-width.ts';

/** A connector that does not land, as a thing to be dimensioned. */
function missingOf(sheet: Sheet, { landings, facts, start }: Laying): Missing[] {
  const row = rowOf(sheet, start);
  return landings.flatMap(({ connector, xMm, yMm, miss, on }): Missing[] => {
    if (!miss || on) return [];
    const { longMm, wideMm } = socketBodyMm(facts.ways[connector] ?? 0);
    const { dxMm, dyMm, header } = miss;
    return [
      {
        x: xOf(row, xMm),
        y: yOf(row, yMm),
        halfWidth: (wideMm * sheet.scale) / 2,
        halfHeight: (longMm * sheet.scale) / 2,
        stray: { x: xOf(row, header.xMm), y: yOf(row, header.yMm), dxMm, dyMm, otherRow: false },
      },
    ];
  });
}

/**
 * The number of each connector: below it, clear of the marks of notes; above it where its dimension is below. One that
 * is put on a header beside its pins has both, and none.
 */
function drawNumbers(ctx: Context, { sheet, theme }: Paper, { landings, facts, start }: Laying): void {
  const row = rowOf(sheet, start);
  const px = LEAST_TEXT;
  const tags = landings
    .filter(({ miss, on }) => !miss || !on)
    .map(({ connector, xMm, yMm, lands, miss }) => {
      const half = (socketBodyMm(facts.ways[connector] ?? 0).longMm * sheet.scale) / 2;
      const y = yOf(row, yMm) + (miss ? -half - 11 : half + 11);
      return { text: String(connector + 1), lands, x: xOf(row, xMm), y };
    });
  const tag = ({ x, y }: Point): void => addDot(ctx, x, y, 8);
  paint(
    ctx,
    { fill: theme.brass, line: theme.keyline, width: 1.2 },
    tags.filter(({ lands }) => lands),
    tag,
  );
  paint(
    ctx,
    { fill: theme.sheet, line: theme.ink, width: 1.2 },
    tags.filter(({ lands }) => !lands),
    tag,
  );
  for (const { text, x, y, lands } of tags)
    write(ctx, text, x, y + 0.5, { px, colour: lands ? theme.sheet : theme.ink, weight: 700, ...CENTRED });
}

/** Height and smallest radius of each arch, in the section where it stands. */
function drawArches(ctx: Context, { sheet, theme }: Paper, { gaps, start }: Laying): void {
  const row = rowOf(sheet, start);
  const px = LEAST_TEXT;
  const texts = gaps.flatMap(({ pair, arch, flaws }) => {
    if (!arch) return [];
    const [a, b] = [pair.a.on.header, pair.b.on.header];
    const radius = arch.kind === 'arch' ? ` · r ${arch.radiusMm.toFixed(1)}` : '';
    const whole = `${arch.heightMm.toFixed(1)}${radius}`;
    const room = Math.abs(xOf(row, a.xMm) - xOf(row, b.xMm)) - 4;
    const short = arch.kind === 'arch' ? `r ${arch.radiusMm.toFixed(1)}` : arch.heightMm.toFixed(1);
    const text = widthOf(ctx, whole, px, 650) <= room ? whole : short;
    const crown = Math.max(a.zMm ?? 0, b.zMm ?? 0) + arch.heightMm;
    return [{ text, flawed: flaws.length > 0, at: crownPoint(row, (a.xMm + b.xMm) / 2, crown) }];
  });
  paint(ctx, { fill: theme.sheet, line: theme.ink }, texts, ({ text, at }) =>
    addBox(ctx, boxAround(at, widthOf(ctx, text, px, 650) / 2 + 4, 8)),
  );
  for (const { text, flawed, at } of texts)
    write(ctx, text, at.x, at.y, { px, colour: theme.ink, weight: flawed ? 800 : 500, ...CENTRED });
}

const crownPoint = (row: SheetRow, xMm: number, crownMm: number): Point => {
  const away = row.side === 'rear' ? 12 : -12;
  return { x: xOf(row, xMm), y: zOf(row, crownMm) + away };
};

/** What the drawing of a take has no place for: connectors beside their headers, numbers, figures of the arches. */
function drawLaying(ctx: Context, paper: Paper, laying: Laying): void {
  if (!laying.facts.flat) return;
  const { theme, sheet } = paper;
  const missing = missingOf(sheet, laying);
  paint(ctx, { fill: theme.connector, line: theme.callout, width: 2.4 }, missing, (knot) =>
    addBox(ctx, boxAround(knot, knot.halfWidth, knot.halfHeight)),
  );
  drawDimensions(ctx, paper, missing);
  drawNumbers(ctx, paper, laying);
  drawArches(ctx, paper, laying);
}

/** Connectors with what they miss, and the section below them; the rest stands close to these. */
function boxOfLaying(sheet: Sheet, { landings, start }: Laying): Box {
  const row = rowOf(sheet, start);
  const xs = landings.flatMap(({ xMm, miss }) => [
    xOf(row, xMm),
    ...(miss ? [xOf(row, miss.header.xMm)] : []),
  ]);
  const { top, sectionBottom } = row;
  return { left: Math.min(...xs), right: Math.max(...xs), top, bottom: sectionBottom };
}

export const layingOverlay = (laying: Laying): Overlay => ({
  draw: (ctx, paper) => drawLaying(ctx, paper, laying),
  within: (sheet) => boxOfLaying(sheet, laying),
});

function drawReach(ctx: Context, { theme }: Paper, from: Point, to: Point): void {
  const line = [from, to];
  paint(ctx, { line: theme.keyline, width: 6 }, [line], (way) => addLine(ctx, way));
  paint(ctx, { line: theme.brass, width: 2.4, dash: [9, 6] }, [line], (way) => addLine(ctx, way));
  paint(ctx, { fill: theme.brass, line: theme.keyline, width: 1.5 }, line, ({ x, y }) =>
    addDot(ctx, x, y, 5),
  );
}

/** A loose ribbon that has nowhere to go yet: from its start to the hand. */
export const reachOverlay = (from: Point, to: Point): Overlay => ({
  draw: (ctx, paper) => drawReach(ctx, paper, from, to),
  within: () => ({
    left: Math.min(from.x, to.x),
    right: Math.max(from.x, to.x),
    top: Math.min(from.y, to.y),
    bottom: Math.max(from.y, to.y),
  }),
});
