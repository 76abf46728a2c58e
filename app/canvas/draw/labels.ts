import type { Box, Kit, Knot, Point, Run } from '../../../src/index.ts';
import { pointBetween } from '../../../src/index.ts';
import type { BusColour } from '../theme.ts';
import {
  addBox,
  boxAround,
  CENTRED,
  type Context,
  LEAST_TEXT,
  type Paper,
  paint,
  textPx,
  write,
} from './paper.ts';
import { stripePx } from './ribbons.ts';
import { widthOf } from './text-width.ts';

/** Below this there is no room on a band, px per mm. */
export const LEAST_SCALE = 0.85;

/** A letter for each bus that no bus before it has, as far as its name provides one. */
function busLetters({ buses }: Kit): string[] {
  const letters: string[] = [];
  for (const { name } of buses) {
    const own = name.toUpperCase().replace(/\s/g, '');
    letters.push([...own].find((sign) => !letters.includes(sign)) ?? own.charAt(0));
  }
  return letters;
}

/** The middle of a plate: on the band where a gap between connectors has room, else before its left end. */
function plateOnBand({ knots, half }: Run, width: number, height: number, stripe: number): Point {
  const across = [...knots].sort((a, b) => a.x - b.x);
  const gaps = across.slice(1).map((to, i) => ({ from: across[i] as Knot, to }));
  const gap = gaps.find(({ from, to }) => to.x - to.halfWidth - from.x - from.halfWidth >= width + 2);
  if (gap && 2 * half - stripe >= height) {
    const { x, y } = pointBetween(gap.from, gap.to, 0.5);
    return { x, y: y + (gap.from.pin1 === 'down' ? -stripe : stripe) / 2 };
  }
  const { x, y, halfWidth } = across[0] as Knot;
  return { x: x - halfWidth - 4 - width / 2, y };
}

/** A lock on a plate, px: its width, and half its height. */
const LOCK_PX = 7;

/** A small lock at the right-hand end of a plate: body and bow. */
function drawLocks(
  ctx: Context,
  { theme }: Paper,
  plates: readonly { readonly box: Box; readonly y: number }[],
): void {
  paint(ctx, { fill: theme.ink }, plates, ({ box, y }) => {
    const left = box.right - 4 - LOCK_PX;
    ctx.rect(left, y - 0.5, LOCK_PX, 5.5);
  });
  paint(ctx, { line: theme.ink, width: 1.4 }, plates, ({ box, y }) => {
    const middle = box.right - 4 - LOCK_PX / 2;
    ctx.moveTo(middle - 2.2, y);
    ctx.lineTo(middle - 2.2, y - 2);
    ctx.arc(middle, y - 2, 2.2, Math.PI, 2 * Math.PI);
    ctx.lineTo(middle + 2.2, y);
  });
}

/** Plates with the letter of the bus and the ribbon's name, never on the stripe; tells where they lie. */
export function drawLabels(ctx: Context, paper: Paper, kit: Kit, runs: readonly Run[]): readonly Box[] {
  const { theme, sheet, hidden } = paper;
  if (sheet.scale < LEAST_SCALE || hidden?.has('names')) return [];
  const letters = busLetters(kit);
  const px = Math.min(13, Math.max(LEAST_TEXT, textPx(sheet.scale) - 1.5));
  const height = px + 5;
  const block = px + 1;
  const plates = runs.map((run) => {
    const { name, facts } = run.ribbon;
    const locked = run.ribbon.ribbon.locked === true;
    const lock = locked ? LOCK_PX + 4 : 0;
    const width = block + widthOf(ctx, name, px, 650) + 6 + lock;
    const at = facts.flat
      ? plateOnBand(run, width, height, stripePx(sheet.scale))
      : (run.line[run.line.length >> 1] as Point);
    return {
      name,
      locked,
      box: boxAround(at, width / 2, height / 2),
      y: at.y,
      bus: kit.buses.indexOf(facts.bus.bus),
    };
  });
  paint(ctx, { fill: theme.sheet, line: theme.ink }, plates, ({ box }) => addBox(ctx, box));
  for (const { name, box, y, bus } of plates) {
    const { fill, ink } = theme.buses[bus % theme.buses.length] as BusColour;
    ctx.fillStyle = fill;
    ctx.fillRect(box.left + 0.5, box.top + 0.5, block, height - 1);
    write(ctx, letters[bus] as string, box.left + block / 2, y, { px, colour: ink, weight: 700, ...CENTRED });
    write(ctx, name, box.left + block + 3, y, { px, colour: theme.ink, weight: 650, baseline: 'middle' });
  }
  drawLocks(
    ctx,
    paper,
    plates.filter(({ locked }) => locked),
  );
  return plates.map(({ box }) => box);
}
