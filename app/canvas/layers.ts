import type { DerivedTake, LaidRibbon, PlacedModule, SubjectType } from '../../src/index.ts';
import {
  type Box,
  boardBox,
  type FreeSpan,
  freeSpans,
  levelsOf,
  meets,
  moduleBox,
  type Run,
  rowOf,
  runOf,
  type Sheet,
  type SheetRow,
} from '../../src/index.ts';
import { type Cast, movedIn, STILL } from './cast.ts';
import { drawAim } from './draw/aim.ts';
import { drawBoardNames, drawBoardOutlines, drawBoards } from './draw/boards.ts';
import { drawConnectors } from './draw/connectors.ts';
import { drawFreeSpans } from './draw/free-spans.ts';
import { drawGhosts } from './draw/ghosts.ts';
import { drawGrips } from './draw/grips.ts';
import { drawLabels } from './draw/labels.ts';
import { drawLeads } from './draw/leads.ts';
import { drawMarks, type Mark, marksOf } from './draw/marks.ts';
import { drawMisses } from './draw/misses.ts';
import { drawModulesFront, drawModulesRear } from './draw/modules.ts';
import { drawOutlines, drawVeil, shapesOf, targetShapes } from './draw/outlines.ts';
import type { Context, Paper } from './draw/paper.ts';
import { drawRibbons } from './draw/ribbons.ts';
import { drawRows, drawTitles } from './draw/rows.ts';
import {
  drawBoardSlices,
  drawModuleSlices,
  drawRibbonSlices,
  drawSectionGrounds,
  drawSectionTexts,
} from './draw/section.ts';
import { drawStarts } from './draw/starts.ts';
import { drawTraces } from './draw/traces.ts';
import { isHidden, type LayerKey } from './layer-keys.ts';
import { type Moving, type Scene, selectionKey } from './model.ts';

const runsOf = (sheet: Sheet, take: DerivedTake, ribbons: readonly LaidRibbon[]): Run[] =>
  ribbons.flatMap((ribbon) => runOf(sheet, take, ribbon) ?? []);

function drawModules(
  ctx: Context,
  paper: Paper,
  modules: readonly PlacedModule[],
  runs: readonly Run[],
): void {
  if (paper.sheet.side === 'rear') drawModulesRear(ctx, paper, modules, runs);
  else drawModulesFront(ctx, paper, modules);
}

function drawWiring(
  ctx: Context,
  paper: Paper,
  take: DerivedTake,
  runs: readonly Run[],
  single = false,
): void {
  if (paper.sheet.side === 'front') {
    drawTraces(ctx, paper, runs);
    return;
  }
  for (const level of levelsOf(runs)) {
    drawRibbons(
      ctx,
      paper,
      level.filter(({ ribbon }) => ribbon.facts.flat),
      single,
    );
    drawLeads(
      ctx,
      paper,
      level.filter(({ ribbon }) => !ribbon.facts.flat),
    );
    drawConnectors(ctx, paper, level);
  }
  drawMisses(ctx, paper, runs);
  const labelled = runs.filter(({ feeds }) => single || !feeds);
  const labels = drawLabels(ctx, paper, take.kit.kit, labelled);
  paper.heat?.currents(ctx, paper, runs, labels);
}

const isSeen = ({ sheet, view }: Paper, { left, right, top, sectionBottom }: SheetRow): boolean =>
  meets(view, { left: left - 60, right: right + 60, top: top - 20 * sheet.scale, bottom: sectionBottom });

/** Whether a module or its slice in the section is in sight. */
function isModuleSeen({ sheet, view }: Paper, module: PlacedModule): boolean {
  return meets(view, { ...moduleBox(sheet, module), bottom: rowOf(sheet, module).sectionBottom });
}

function freeSpansOf(
  rows: readonly SheetRow[],
  modules: readonly PlacedModule[],
): ReadonlyMap<SheetRow, readonly FreeSpan[]> {
  return new Map(
    rows.map((row) => {
      const inRow = modules.filter((module) => module.row.index === row.placed.index);
      return [row, freeSpans(row.placed.row.widthHp, inRow)];
    }),
  );
}

/** Runs that are drawn, and those of hidden layers. */
function partedBy({ hidden }: Paper, runs: readonly Run[]): Record<'shown' | 'ghosts', readonly Run[]> {
  if (!hidden || hidden.size === 0) return { shown: runs, ghosts: [] };
  return {
    shown: runs.filter(({ ribbon }) => !isHidden(hidden, ribbon)),
    ghosts: runs.filter(({ ribbon }) => isHidden(hidden, ribbon)),
  };
}

/** Everything that stands still. With no gesture this is the whole sheet, for exports and thumbnails too. */
export function paintStill(ctx: Context, paper: Paper, scene: Scene, cast: Cast = STILL): void {
  const derived = cast.instead ?? scene.derived;
  const { sheet, view } = paper;
  const { places, wiring } = derived;
  const rows = sheet.rows.filter((row) => isSeen(paper, row));
  const still = places.modules.filter((module) => !cast.moves(module));
  const free = freeSpansOf(rows, still);
  const modules = still.filter((module) => isModuleSeen(paper, module));
  const boards = places.boards.filter((board) => meets(view, boardBox(sheet, board)));
  const runs = runsOf(
    sheet,
    derived,
    wiring.ribbons.filter((ribbon) => !cast.carries(ribbon)),
  ).filter((run) => isRunSeen(paper, run));

  const { shown, ghosts } = partedBy(paper, runs);
  const shows = (layer: LayerKey): boolean => !paper.hidden?.has(layer);

  drawRows(ctx, paper, free);
  if (shows('section')) {
    drawSectionGrounds(ctx, paper, rows);
    drawBoardSlices(ctx, paper, boards);
  }
  drawFreeSpans(ctx, paper, free);
  if (sheet.side === 'rear' && shows('boards')) drawBoards(ctx, paper, boards);
  drawModules(ctx, paper, modules, shown);
  drawBoardOutlines(ctx, paper, boards);
  if (shows('boards') && shows('names')) drawBoardNames(ctx, paper, boards, wiring);
  if (shows('section')) {
    drawModuleSlices(ctx, paper, derived, modules);
    drawRibbonSlices(ctx, paper, derived, shown);
    drawSectionTexts(ctx, paper, rows);
  }
  if (sheet.side === 'rear') drawGhosts(ctx, paper, ghosts);
  drawWiring(ctx, paper, derived, shown);
  drawTitles(ctx, paper, free);
  paper.heat?.figures(ctx, paper, modules);
}

/** Whether any part of a run, its slice in the section included, can be in sight. */
function isRunSeen({ view, sheet }: Paper, { box, knots }: Run): boolean {
  const rows = knots.flatMap(({ header }) => (header ? [rowOf(sheet, header).sectionBottom] : []));
  const { left, right, top, bottom } = box;
  const plate = 60;
  return meets(view, {
    left: left - plate,
    right: right + plate,
    top: top - plate,
    bottom: Math.max(bottom, ...rows),
  });
}

/** Room around what moves for its label, its marks and its dimensions, px. */
const AROUND_PX = 72;

/** All that a gesture may paint, marks and slices in the section included. */
export function movingBox({ sheet, view }: Paper, { derived, overlay }: Moving, cast: Cast): Box | undefined {
  if (overlay && !overlay.within) return view;
  const { modules, ribbons } = movedIn(derived, cast);
  const boxes: Box[] = modules.map((module) => ({
    ...moduleBox(sheet, module),
    bottom: rowOf(sheet, module).sectionBottom,
  }));
  for (const { box, knots } of runsOf(sheet, derived, ribbons)) {
    const sections = knots.map(({ header }) => (header ? rowOf(sheet, header).sectionBottom : 0));
    boxes.push({ ...box, bottom: Math.max(box.bottom, ...sections) });
  }
  if (overlay?.within) boxes.push(overlay.within(sheet));
  if (boxes.length === 0) return undefined;
  return {
    left: Math.min(...boxes.map(({ left }) => left)) - AROUND_PX,
    top: Math.min(...boxes.map(({ top }) => top)) - AROUND_PX,
    right: Math.max(...boxes.map(({ right }) => right)) + AROUND_PX,
    bottom: Math.max(...boxes.map(({ bottom }) => bottom)) + AROUND_PX,
  };
}

/** What a gesture moves, as it would be on release, with its marks. Costs as much as it moves, however large the take. */
export function paintMoving(
  ctx: Context,
  paper: Paper,
  { derived, pressing, overlay }: Moving,
  cast: Cast,
): void {
  const { modules, ribbons } = movedIn(derived, cast);
  const runs = runsOf(paper.sheet, derived, ribbons);
  const { shown, ghosts } = partedBy(paper, runs);
  drawModules(ctx, paper, modules, shown);
  if (!paper.hidden?.has('section')) {
    drawModuleSlices(ctx, paper, derived, modules);
    drawRibbonSlices(ctx, paper, derived, shown);
  }
  if (paper.sheet.side === 'rear') drawGhosts(ctx, paper, ghosts);
  drawWiring(ctx, paper, derived, shown);
  drawOutlines(ctx, paper, { boxes: modules.map((module) => moduleBox(paper.sheet, module)), runs: [] });
  drawMarks(ctx, paper, marksOf(paper.sheet, derived, pressing.filter(cast.concerns), null));
  overlay?.draw(ctx, paper, derived);
}

const matching =
  (keys: ReadonlySet<string>) =>
  (type: SubjectType, id: string): boolean =>
    keys.has(selectionKey(type, id));

/** Dims all but the subjects of the note in focus, which are drawn here if their layer is hidden. */
function paintFocus(ctx: Context, paper: Paper, { derived, notes, focus }: Scene): void {
  const note = focus === null ? undefined : notes.find(({ key }) => key === focus);
  if (!note) return;
  const { sheet, hidden } = paper;
  const subjects = new Set(note.subjects.map(({ type, id }) => selectionKey(type, id)));
  const isSubject = matching(subjects);
  drawVeil(ctx, paper, shapesOf(sheet, derived, isSubject));
  if (sheet.side === 'front' || !hidden?.size) return;
  const open = { ...paper, hidden: undefined };
  if (hidden.has('boards')) {
    const boards = derived.places.boards.filter(
      ({ id, supply }) => isSubject('board', id) || isSubject('supply', supply.id),
    );
    drawBoards(ctx, open, boards);
    drawBoardNames(ctx, open, boards, derived.wiring);
  }
  const ribbons = derived.wiring.ribbons.filter(
    (ribbon) => isHidden(hidden, ribbon) && isSubject('ribbon', ribbon.id),
  );
  drawWiring(ctx, open, derived, runsOf(sheet, derived, ribbons), true);
}

/** How much less than for a note the rest is dimmed for a ribbon that is looked at. */
const SLIGHTLY = 0.45;

/** Dims slightly what lies round a ribbon that is looked at, or is all that is selected, and draws it above all others. */
function paintLifted(ctx: Context, paper: Paper, { derived, lifted, focus, selection }: Scene): void {
  const areRibbons = selection.size > 0 && [...selection].every((key) => key.startsWith('ribbon:'));
  if (paper.sheet.side === 'front' || focus !== null || !(lifted || areRibbons)) return;
  ctx.globalAlpha = SLIGHTLY;
  drawVeil(ctx, paper, { boxes: [], runs: [] });
  ctx.globalAlpha = 1;
  const ribbons = derived.wiring.ribbons.filter(({ id }) => id === lifted);
  drawWiring(ctx, paper, derived, runsOf(paper.sheet, derived, ribbons), true);
}

/** Lifts selected ribbons above all others, and outlines what is selected and stands still. */
function paintSelection(ctx: Context, paper: Paper, scene: Scene, cast: Cast): void {
  const { selection } = scene;
  if (selection.size === 0) return;
  const derived = cast.instead ?? scene.derived;
  const { sheet } = paper;
  const isSelected = matching(selection);
  const lifted = derived.wiring.ribbons.filter(
    (ribbon) => isSelected('ribbon', ribbon.id) && !cast.carries(ribbon),
  );
  if (sheet.side === 'rear') drawWiring(ctx, paper, derived, runsOf(sheet, derived, lifted), true);
  drawOutlines(
    ctx,
    paper,
    shapesOf(sheet, derived, (type, id) => isSelected(type, id) && !cast.has(type, id)),
  );
  drawGrips(
    ctx,
    paper,
    sheet.rows.filter(({ placed }) => isSelected('row', placed.row.id)),
  );
}

/**
 * Veil, selection, drop target and the marks of what stands still. Needs a layer of its own, since the veil is cut open. While
 * something moves nothing is dimmed.
 */
export function paintMarks(
  ctx: Context,
  paper: Paper,
  scene: Scene,
  moving: Moving | null,
  cast: Cast,
  marks: readonly Mark[],
): void {
  if (!moving) {
    paintFocus(ctx, paper, scene);
    paintLifted(ctx, paper, scene);
  }
  paintSelection(ctx, paper, scene, cast);
  if (!moving && scene.aim) drawAim(ctx, paper, scene.derived, scene.aim);
  if (scene.starts) drawStarts(ctx, paper, scene.starts);
  if (!moving) scene.overlay?.draw(ctx, paper, scene.derived);
  if (moving?.target) drawOutlines(ctx, paper, targetShapes(paper.sheet, moving.derived, moving.target));
  drawMarks(ctx, paper, marks);
}
