import type { Knot, Point, Run } from '../../../src/index.ts';
import {
  type Box,
  headerPoint,
  meets,
  moduleBox,
  type PlacedModule,
  panelHeightMm,
  panelHoles,
  rowOf,
  type Sheet,
  xOf,
  yOf,
} from '../../../src/index.ts';
import { drawHeaders, headerReachMm } from './headers.ts';
import { type Stretch, writeName } from './name.ts';
import { addBox, addDot, type Context, type Paper, paint, textPx, write } from './paper.ts';

/** How far the board behind a panel stays away from the rails, mm. */
const boardInsetMm = (heightU: number): number => Math.min(11, panelHeightMm(heightU) * 0.12);

export function circuitBox(sheet: Sheet, module: PlacedModule): Box {
  const { left, right, top, bottom } = moduleBox(sheet, module);
  const inset = boardInsetMm(module.facts.heightU) * sheet.scale;
  const side = Math.min(0.8 * sheet.scale, (right - left) * 0.06);
  return { left: left + side, right: right - side, top: top + inset, bottom: bottom - inset };
}

function drawHoles(ctx: Context, { sheet, theme }: Paper, modules: readonly PlacedModule[]): void {
  const radius = Math.max(1.4, 1.6 * sheet.scale);
  paint(ctx, { fill: theme.inkFaint }, modules, (module) => {
    const row = rowOf(sheet, module);
    for (const { xMm, yMm } of panelHoles(module.facts.kind.widthHp, module.facts.heightU)) {
      addDot(ctx, xOf(row, module.leftMm + xMm), yOf(row, yMm), radius);
    }
  });
}

/** A drawing pin in the middle of the upper edge: this module stays where it is. */
function drawPinned(ctx: Context, { sheet, theme }: Paper, modules: readonly PlacedModule[]): void {
  const size = Math.max(2.2, 1.3 * sheet.scale);
  paint(
    ctx,
    { fill: theme.ink },
    modules.filter(({ module }) => module.pinned),
    (module) => {
      const { top, left, right } = moduleBox(sheet, module);
      const x = (left + right) / 2;
      const y = top + 3 * sheet.scale;
      addDot(ctx, x, y, size);
      ctx.rect(x - size / 4, y, size / 2, size * 2.4);
    },
  );
}

function drawPanels(ctx: Context, { sheet, theme }: Paper, modules: readonly PlacedModule[]): void {
  const look = { fill: theme.panel, line: theme.panelEdge, width: Math.max(1, 0.4 * sheet.scale) };
  paint(ctx, look, modules, (module) => addBox(ctx, moduleBox(sheet, module), 0.5));
}

/** Stretches of a module that its headers and the flat ribbons over it cover. */
function coversOf(sheet: Sheet, module: PlacedModule, flat: readonly Run[], box: Box): Stretch[] {
  const covers = module.headers.map((header) =>
    around(headerPoint(sheet, header).y, headerReachMm(header) * sheet.scale),
  );
  for (const { knots, half } of flat) {
    const [first, last] = [knots[0] as Knot, knots[knots.length - 1] as Knot];
    if (first.y <= box.top || first.y >= box.bottom) continue;
    if (Math.min(first.x, last.x) < box.right && Math.max(first.x, last.x) > box.left)
      covers.push(around(first.y, half + 2));
  }
  return covers;
}

const around = (y: number, half: number): Stretch => ({ top: y - half, bottom: y + half });

/** Stretches of a module whose middle leads hang before: a name can still be read with one at its edge. */
function hungOver(leads: readonly Run[], box: Box): Stretch[] {
  const quarter = (box.right - box.left) / 4;
  const hung: Stretch[] = [];
  for (const { line, half, box: all } of leads) {
    if (!meets(all, box)) continue;
    const reach = half + 3;
    for (let i = 1; i < line.length; i++) {
      const [a, b] = [line[i - 1] as Point, line[i] as Point];
      const beside = Math.max(a.x, b.x) < box.left + quarter || Math.min(a.x, b.x) > box.right - quarter;
      if (!beside) hung.push({ top: Math.min(a.y, b.y) - reach, bottom: Math.max(a.y, b.y) + reach });
    }
  }
  return hung;
}

/** Modules from behind: panel edge, circuit board, headers with their pins; names where no run covers them. */
export function drawModulesRear(
  ctx: Context,
  paper: Paper,
  modules: readonly PlacedModule[],
  runs: readonly Run[],
): void {
  const { sheet, theme, hidden } = paper;
  const { scale } = sheet;
  drawPanels(ctx, paper, modules);
  paint(ctx, { fill: theme.board }, modules, (module) => addBox(ctx, circuitBox(sheet, module)));
  paper.heat?.tint(ctx, paper, modules);
  drawHoles(ctx, paper, modules);
  drawHeaders(
    ctx,
    paper,
    modules.flatMap(({ headers }) => headers),
    {
      box: theme.boardEdge,
      pin: theme.pin,
      arrow: theme.boardInk,
    },
  );
  drawPinned(ctx, paper, modules);
  if (hidden?.has('names')) return;
  const lettering = { px: textPx(scale), colour: theme.boardInk, weight: 600 };
  const flat = runs.filter(({ ribbon }) => ribbon.facts.flat);
  const leads = runs.filter(({ ribbon }) => !ribbon.facts.flat);
  for (const module of modules) {
    const box = circuitBox(sheet, module);
    const covers = coversOf(sheet, module, flat, box);
    const hung = hungOver(leads, box);
    // Where leads leave no room for a name it is written behind them.
    if (hung.length > 0 && writeName(ctx, module.name, box, [...covers, ...hung], lettering)) continue;
    writeName(ctx, module.name, box, covers, lettering);
  }
}

/** Modules from the front: plain panels with screws, name, width and the colour of their kind. */
export function drawModulesFront(ctx: Context, paper: Paper, modules: readonly PlacedModule[]): void {
  const { sheet, theme, hidden } = paper;
  const { scale } = sheet;
  drawPanels(ctx, paper, modules);
  paper.heat?.tint(ctx, paper, modules);
  drawHoles(ctx, paper, modules);
  drawPinned(ctx, paper, modules);
  const lettering = { px: textPx(scale), colour: theme.ink, weight: 600 };
  for (const module of modules) {
    const box = moduleBox(sheet, module);
    const margin = 7 * scale;
    if (!hidden?.has('names')) {
      const field = { ...box, top: box.top + margin, bottom: box.bottom - 1.6 * margin };
      writeName(ctx, module.name, field, [], lettering);
    }
    const { widthHp, color } = module.facts.kind;
    // A colour that the browser cannot read leaves the one before it.
    ctx.fillStyle = theme.inkFaint;
    if (color) ctx.fillStyle = color;
    ctx.fillRect(box.left, box.bottom - 8.4 * scale, box.right - box.left, 1.4 * scale);
    if (scale * widthHp < 7) continue;
    write(ctx, `${widthHp} HP`, (box.left + box.right) / 2, box.bottom - 10 * scale, {
      px: Math.min(lettering.px, 11 + scale / 2),
      colour: theme.ink,
      align: 'center',
    });
  }
}
