/** A door of the core: paper. Apart from `index.ts` so that the app can load it when it is needed. */
export { benchSheet, factsOf, pagesOf } from './sheet/bench-sheet.ts';
export { type ChangeStep, changeSheet, STAGE_WORDS, stagesOf } from './sheet/change-sheet.ts';
export { VIEWS, type View } from './sheet/drawing.ts';
export { drawingFile, FILE_SCALE } from './sheet/drawing-file.ts';
export { PAGE_NAMES } from './sheet/page-names.ts';
export { partsListOf } from './sheet/parts.ts';
export { partsCsv } from './sheet/parts-csv.ts';
export { type ExpectedAt, type PowerPlace, type PowerStep, powerSteps } from './sheet/power-steps.ts';
export { type IslandDraw, voltsAllowed } from './sheet/power-up.ts';
export { harnessRevision } from './sheet/revision.ts';
export { type Paper, SHEET_PAGE_IDS, type SheetPageId } from './sheet/sheet-page.ts';
