/** The fourth door of the core: paper. Apart from `index.ts` so that the app can load it when it is needed. */
export { benchSheet, pagesOf } from './sheet/bench-sheet.ts';
export { VIEWS, type View } from './sheet/drawing.ts';
export { drawingFile } from './sheet/drawing-file.ts';
export { PAGE_NAMES } from './sheet/page-names.ts';
export { harnessRevision, revisionOf } from './sheet/revision.ts';
export { type Paper, SHEET_PAGE_IDS, type SheetPageId } from './sheet/sheet-page.ts';
