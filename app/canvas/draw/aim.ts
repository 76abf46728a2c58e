import type { Knot } from '../../../src/index.ts';
import {
  type Box,
  type DerivedTake,
  type JointTarget,
  type LaidRibbon,
  meets,
  type Point,
  runOf,
  type Sheet,
  socketBodyMm,
  waysOf,
} from '../../../src/index.ts';
import type { Aim } from '../model.ts';
import { headerBox } from './headers.ts';
import { addBox, addLine, boxAround, type Context, type Paper, paint } from './paper.ts';

/** A connector as it is drawn; none of a ribbon that is seated nowhere. */
function knotOf(sheet: Sheet, take: DerivedTake, ribbon: LaidRibbon, connector: number): Knot | undefined {
  return runOf(sheet, take, ribbon)?.knots.find((knot) => knot.connector === connector);
}

/** Outline of something that a connector could sit on. */
export function placeBox(sheet: Sheet, take: DerivedTake, place: JointTarget): Box | undefined {
  if (place.type === 'header') return headerBox(sheet, place.header);
  const ribbon = take.wiring.ribbonById.get(place.ribbon.id);
  const knot = ribbon && knotOf(sheet, take, ribbon, place.connector);
  return knot && boxAround(knot, knot.halfWidth, knot.halfHeight);
}

/** Room between a connector and the ring around it, px. */
const RING_PX = 6;

function addRing(ctx: Context, { x, y, halfWidth, halfHeight }: Knot): void {
  const [across, up] = [halfWidth + RING_PX, halfHeight + RING_PX];
  ctx.moveTo(x + across, y);
  ctx.ellipse(x, y, across, up, 0, 0, 2 * Math.PI);
}

/** The connector in hand, on a thread to where its ribbon has it. */
function drawHeld(
  ctx: Context,
  { sheet, theme }: Paper,
  { ribbon, connector }: { readonly ribbon: LaidRibbon; readonly connector: number },
  from: Knot | undefined,
  at: Point,
): void {
  const { longMm, wideMm } = socketBodyMm(waysOf(ribbon, connector));
  const body = boxAround(at, (wideMm * sheet.scale) / 2, (longMm * sheet.scale) / 2);
  if (from) {
    paint(ctx, { line: theme.sheet, width: 4 }, [[from, at]], (line) => addLine(ctx, line));
    paint(ctx, { line: theme.brass, width: 1.8, dash: [5, 4] }, [[from, at]], (line) => addLine(ctx, line));
  }
  paint(ctx, { fill: theme.connector, line: theme.sheet, width: 3.5 }, [body], (box) => addBox(ctx, box, -1));
  paint(ctx, { line: theme.brass, width: 2 }, [body], (box) => addBox(ctx, box, -1));
}

/** A ring around the connector that is chosen or in hand, and dashes around all that it could sit on. */
export function drawAim(ctx: Context, paper: Paper, take: DerivedTake, aim: Aim): void {
  const { sheet, theme, view } = paper;
  const ribbon = take.wiring.ribbonById.get(aim.ribbon);
  if (!ribbon || sheet.side === 'front') return;
  const boxes = aim.places
    .flatMap((place) => placeBox(sheet, take, place) ?? [])
    .filter((box) => meets(view, box));
  paint(ctx, { line: theme.sheet, width: 4 }, boxes, (box) => addBox(ctx, box, -3));
  paint(ctx, { line: theme.brass, width: 2, dash: [4, 3] }, boxes, (box) => addBox(ctx, box, -3));
  ctx.setLineDash([]);
  const knot = knotOf(sheet, take, ribbon, aim.connector);
  if (aim.heldAt) {
    drawHeld(ctx, paper, { ribbon, connector: aim.connector }, knot, aim.heldAt);
    return;
  }
  const rings = knot ? [knot] : [];
  paint(ctx, { line: theme.sheet, width: 5.5 }, rings, (ring) => addRing(ctx, ring));
  paint(ctx, { line: theme.brass, width: 2.6 }, rings, (ring) => addRing(ctx, ring));
}
