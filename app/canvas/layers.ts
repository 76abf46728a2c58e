import type { DerivedTake, LaidRibbon, PlacedModule, SubjectType } from '../../src/index.ts';
import { type Cast, STILL } from './cast.ts';
import { drawBoardNames, drawBoardOutlines, drawBoards } from './draw/boards.ts';
import { drawConnectors } from './draw/connectors.ts';
import { drawFreeSpans, type FreeSpan, freeSpans } from './draw/free-spans.ts';
import { drawLabels } from './draw/labels.ts';
import { drawLeads } from './draw/leads.ts';
import { drawMarks, type Mark, marksOf } from './draw/marks.ts';
import { drawMisses } from './draw/misses.ts';
import { drawModulesFront, drawModulesRear } from './draw/modules.ts';
import { drawOutlines, drawVeil, shapesOf, targetShapes } from './draw/outlines.ts';
import type { Context, Paper } from './draw/paper.ts';
import { drawRibbons } from './draw/ribbons.ts';
import { drawRows } from './draw/rows.ts';
import {
  drawBoardSlices,
  drawModuleSlices,
  drawRibbonSlices,
  drawSectionGrounds,
  drawSectionTexts,
} from './draw/section.ts';
import { drawStarts } from './draw/starts.ts';
import { drawTraces } from './draw/traces.ts';
import { type Moving, type Scene, selectionKey } from './model.ts';
import { type Run, runOf } from './runs.ts';
import { boardBox, meets, moduleBox, rowOf, type Sheet, type SheetRow } from './sheet.ts';

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
  drawRibbons(
    ctx,
    paper,
    runs.filter(({ ribbon }) => ribbon.facts.flat),
    single,
  );
  drawLeads(
    ctx,
    paper,
    runs.filter(({ ribbon }) => !ribbon.facts.flat),
  );
  drawConnectors(ctx, paper, runs);
  drawMisses(ctx, paper, runs);
  drawLabels(
    ctx,
    paper,
    take.kit.kit,
    runs.filter(({ feeds }) => single || !feeds),
  );
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

/** Everything that stands still. With no gesture this is the whole sheet, for exports and thumbnails too. */
export function paintStill(ctx: Context, paper: Paper, { derived }: Scene, cast: Cast = STILL): void {
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

  drawRows(ctx, paper, free);
  drawSectionGrounds(ctx, paper, rows);
  drawBoardSlices(ctx, paper, boards);
  drawFreeSpans(ctx, paper, free);
  if (sheet.side === 'rear') drawBoards(ctx, paper, boards);
  drawModules(ctx, paper, modules, runs);
  drawBoardOutlines(ctx, paper, boards);
  drawBoardNames(ctx, paper, boards, wiring);
  drawModuleSlices(ctx, paper, derived, modules);
  drawRibbonSlices(ctx, paper, derived, runs);
  drawSectionTexts(ctx, paper, rows);
  drawWiring(ctx, paper, derived, runs);
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

/** What a gesture moves, as it would be on release, with its marks. Costs as much as it moves, however large the take. */
export function paintMoving(
  ctx: Context,
  paper: Paper,
  { derived, notes, overlay }: Moving,
  cast: Cast,
): void {
  const { places, wiring } = derived;
  const modules = places.modules.filter(cast.moves);
  const runs = runsOf(paper.sheet, derived, wiring.ribbons.filter(cast.carries));
  drawModules(ctx, paper, modules, runs);
  drawModuleSlices(ctx, paper, derived, modules);
  drawRibbonSlices(ctx, paper, derived, runs);
  drawWiring(ctx, paper, derived, runs);
  drawOutlines(ctx, paper, { boxes: modules.map((module) => moduleBox(paper.sheet, module)), runs: [] });
  drawMarks(ctx, paper, marksOf(paper.sheet, notes.filter(cast.concerns), null));
  overlay?.(ctx, paper);
}

const matching =
  (keys: ReadonlySet<string>) =>
  (type: SubjectType, id: string): boolean =>
    keys.has(selectionKey(type, id));

/** Dims all but the subjects of the note in focus. */
function paintFocus(ctx: Context, paper: Paper, { derived, notes, focus }: Scene): void {
  const note = focus === null ? undefined : notes.find(({ key }) => key === focus);
  if (!note) return;
  const subjects = new Set(note.subjects.map(({ type, id }) => selectionKey(type, id)));
  drawVeil(ctx, paper, shapesOf(paper.sheet, derived, matching(subjects)));
}

/** Lifts selected ribbons above all others, and outlines what is selected and stands still. */
function paintSelection(ctx: Context, paper: Paper, { derived, selection }: Scene, cast: Cast): void {
  if (selection.size === 0) return;
  const { sheet } = paper;
  const isSelected = matching(selection);
  const lifted = derived.wiring.ribbons.filter(
    (ribbon) => isSelected('ribbon', ribbon.id) && !cast.carries(ribbon),
  );
  if (sheet.side === 'rear') drawWiring(ctx, paper, derived, runsOf(sheet, derived, lifted), true);
  const moved = new Set([
    ...derived.places.modules.filter(cast.moves).map(({ id }) => selectionKey('module', id)),
    ...derived.wiring.ribbons.filter(cast.carries).map(({ id }) => selectionKey('ribbon', id)),
  ]);
  drawOutlines(
    ctx,
    paper,
    shapesOf(sheet, derived, (type, id) => isSelected(type, id) && !moved.has(selectionKey(type, id))),
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
  if (!moving) paintFocus(ctx, paper, scene);
  paintSelection(ctx, paper, scene, cast);
  if (scene.starts) drawStarts(ctx, paper, scene.starts);
  if (moving?.target) drawOutlines(ctx, paper, targetShapes(paper.sheet, moving.derived, moving.target));
  drawMarks(ctx, paper, marks);
}
