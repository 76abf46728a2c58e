import {
  type Box,
  beside,
  boardBox,
  connectorPoints,
  type FaultTest,
  headerPoint,
  type Joint,
  type LaidRibbon,
  type Link,
  moduleBox,
  orderOf,
  type PlacedBoard,
  type PlacedHeader,
  type PlacedModule,
  type Point,
  pointBetween,
  runOf,
  type Sheet,
  type WholeTake,
} from '../../src/index.ts';
import { addCrossHairs } from '../canvas/draw/cross-hairs.ts';
import {
  addBox,
  addLine,
  boxAround,
  CENTRED,
  type Context,
  type Paper,
  paint,
  write,
  writeUpward,
} from '../canvas/draw/paper.ts';
import { widthOf } from '../canvas/draw/text-width.ts';
import type { Overlay } from '../canvas/model.ts';
import type { Breakage } from './breakage.ts';

/** What a panel of faults shows on the drawing. */
export interface FaultMarks {
  /** Modules that something does not reach, or not as it should. */
  readonly dead: readonly PlacedModule[];
  readonly broken: readonly Breakage[];
  /** What may be broken. */
  readonly suspects: readonly Breakage[];
  readonly test?: FaultTest;
}

const PLATE_PX = 12;

/** Of a plate, around its text, px. */
const ROOM = 5;

/** Lines of the hatch over a dead module stand so far apart, px. */
const HATCH_PX = 14;

function plate(ctx: Context, { theme }: Paper, text: string, { x, y }: Point, isUpright = false): void {
  const half = widthOf(ctx, text, PLATE_PX, 700) / 2 + ROOM;
  const [across, up] = isUpright ? [PLATE_PX / 2 + ROOM - 1, half] : [half, PLATE_PX / 2 + ROOM - 1];
  paint(
    ctx,
    { fill: theme.mark, line: theme.markInk, width: 1.5 },
    [boxAround({ x, y }, across, up)],
    (box) => addBox(ctx, box),
  );
  const lettering = { px: PLATE_PX, colour: theme.markInk, weight: 700, ...CENTRED };
  if (isUpright) writeUpward(ctx, text, x, y + 0.5, lettering);
  else write(ctx, text, x, y + 0.5, lettering);
}

/** A module that is dead: crossed out by a hatch, and the word for it on its lower half, clear of its name. */
function drawDead(ctx: Context, paper: Paper, module: PlacedModule): void {
  const box = moduleBox(paper.sheet, module);
  const { left, right, top, bottom } = box;
  ctx.save();
  ctx.beginPath();
  addBox(ctx, box);
  ctx.clip();
  const lines: Point[][] = [];
  for (let x = left - (bottom - top); x < right; x += HATCH_PX)
    lines.push([
      { x, y: bottom },
      { x: x + (bottom - top), y: top },
    ]);
  const { callout, ink, mark, markInk } = paper.theme;
  ctx.globalAlpha = 0.55;
  paint(ctx, { line: paper.sheet.side === 'rear' ? callout : ink, width: 1.3 }, lines, (line) =>
    addLine(ctx, line),
  );
  ctx.restore();
  paint(ctx, { line: markInk, width: 5 }, [box], (each) => addBox(ctx, each));
  paint(ctx, { line: mark, width: 2.5 }, [box], (each) => addBox(ctx, each));
  const at = { x: (left + right) / 2, y: bottom - (bottom - top) * 0.13 };
  plate(ctx, paper, 'dead', at, right - left < widthOf(ctx, 'dead', PLATE_PX, 700) + 2 * ROOM);
}

function connectorPoint(
  sheet: Sheet,
  take: WholeTake,
  ribbon: LaidRibbon,
  connector: number,
): Point | undefined {
  return connectorPoints(sheet, take, ribbon)?.[orderOf(ribbon, connector)];
}

function seatPoint(sheet: Sheet, take: WholeTake, { ribbon, connector, on }: Joint): Point | undefined {
  return on.type === 'header'
    ? headerPoint(sheet, on.header)
    : connectorPoint(sheet, take, ribbon, connector);
}

const middle = ({ left, right, top, bottom }: Box): Point => ({
  x: (left + right) / 2,
  y: (top + bottom) / 2,
});

function linkPoint(sheet: Sheet, take: WholeTake, link: Link): Point | undefined {
  switch (link.type) {
    case 'supply': {
      const board = take.places.boards.find(({ supply }) => supply.id === link.supply.id);
      return board && middle(boardBox(sheet, board));
    }
    case 'board-lead':
      return middle(boardBox(sheet, link.board));
    case 'seat':
      return seatPoint(sheet, take, link.joint);
    case 'span': {
      const a = connectorPoint(sheet, take, link.ribbon, link.from);
      const b = connectorPoint(sheet, take, link.ribbon, link.to);
      return a && b && pointBetween(a, b, 0.5);
    }
  }
}

export function breakagePoint(sheet: Sheet, take: WholeTake, breakage: Breakage): Point | undefined {
  if (breakage.type === 'inside') return middle(moduleBox(sheet, breakage.module));
  if (breakage.type === 'open' || breakage.type === 'pin') return linkPoint(sheet, take, breakage.link);
  const { place } = breakage;
  if (place.type === 'module') return middle(moduleBox(sheet, place.module));
  if (place.type === 'board') return middle(boardBox(sheet, place.board));
  return connectorPoint(sheet, take, place.ribbon, place.connector);
}

function breakageWord(breakage: Breakage): string {
  if (breakage.type === 'short') return 'short';
  if (breakage.type === 'open' && breakage.line === null)
    return breakage.link.type === 'span' ? 'torn' : 'off';
  return 'open';
}

/** What a suspect is drawn by: the ribbon, board or module that it lies in. */
function holderOf(suspect: Breakage): LaidRibbon | PlacedBoard | PlacedModule | undefined {
  if (suspect.type === 'inside') return suspect.module;
  if (suspect.type === 'short') {
    const { place } = suspect;
    return place.type === 'ribbon' ? place.ribbon : place.type === 'board' ? place.board : place.module;
  }
  const { link } = suspect;
  if (link.type === 'seat') return link.joint.ribbon;
  if (link.type === 'span') return link.ribbon;
  return link.type === 'board-lead' ? link.board : undefined;
}

const DASH = [7, 4];

/** Dashes around all that may be broken. */
function drawSuspects(
  ctx: Context,
  { sheet, theme }: Paper,
  take: WholeTake,
  suspects: readonly Breakage[],
): void {
  const holders = [...new Set(suspects.map(holderOf))];
  const boxes = holders.flatMap((holder) =>
    holder?.type === 'module'
      ? [moduleBox(sheet, holder)]
      : holder?.type === 'board'
        ? [boardBox(sheet, holder)]
        : [],
  );
  const edges = holders
    .flatMap((holder) => (holder?.type === 'ribbon' ? (runOf(sheet, take, holder) ?? []) : []))
    .flatMap(({ line, half }) => [beside(line, half + 3), beside(line, -half - 3)]);
  for (const look of [
    { line: theme.sheet, width: 4.5 },
    { line: theme.brass, width: 2.4, dash: DASH },
  ]) {
    paint(ctx, look, boxes, (box) => addBox(ctx, box, -2));
    paint(ctx, look, edges, (edge) => addLine(ctx, edge));
  }
  ctx.setLineDash([]);
}

const RING_PX = 11;

/** Cross-hairs on the places where something is to be measured or unplugged, with the word for it above them all. */
function drawTargets(ctx: Context, paper: Paper, points: readonly Point[], word: string): void {
  const add = ({ x, y }: Point): void => {
    ctx.moveTo(x + RING_PX, y);
    ctx.arc(x, y, RING_PX, 0, 2 * Math.PI);
    addCrossHairs(ctx, { x, y }, RING_PX - 5, RING_PX + 6);
  };
  paint(ctx, { line: paper.theme.markInk, width: 5.5 }, points, add);
  paint(ctx, { line: paper.theme.mark, width: 2.4 }, points, add);
  const x = points.reduce((sum, point) => sum + point.x, 0) / points.length;
  const y = Math.min(...points.map((point) => point.y));
  plate(ctx, paper, points.length > 1 ? `${word} ${points.length}` : word, { x, y: y - RING_PX - 17 });
}

function headerFor({ headers }: PlacedModule | PlacedBoard, line: string): PlacedHeader | undefined {
  return headers.find(({ bus }) => bus.supplyPins.has(line));
}

export function testPoints(sheet: Sheet, take: WholeTake, test: FaultTest): readonly Point[] {
  if (test.type === 'look') return [middle(moduleBox(sheet, test.module))];
  if (test.type === 'unplug') return test.seats.flatMap((seat) => seatPoint(sheet, take, seat) ?? []);
  const header = headerFor(test.at, test.line);
  return header ? [headerPoint(sheet, header)] : [];
}

const WORDS: Readonly<Record<FaultTest['type'], string>> = {
  look: 'look',
  measure: 'measure',
  unplug: 'unplug',
};

/** Draws dead modules, what is broken or may be, and where to measure next; on either side of the case. */
export function faultOverlay(take: WholeTake, { dead, broken, suspects, test }: FaultMarks): Overlay {
  const draw: Overlay['draw'] = (ctx, paper) => {
    const { sheet } = paper;
    for (const module of dead) drawDead(ctx, paper, module);
    drawSuspects(ctx, paper, take, suspects);
    for (const breakage of broken) {
      const at = breakagePoint(sheet, take, breakage);
      if (at) plate(ctx, paper, breakageWord(breakage), at);
    }
    if (!test) return;
    const points = testPoints(sheet, take, test);
    if (points.length > 0) drawTargets(ctx, paper, points, WORDS[test.type]);
  };
  return { draw };
}
