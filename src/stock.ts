/** The fourth door of the core: tables of kinds, my own stock, and what is owned and used. Apart so that the app loads it late. */
export type { ByHand, Column } from './table/columns.ts';
export { fieldsFor, headingOf } from './table/field.ts';
export type { DecimalMark } from './table/number-text.ts';
export { type BadCell, badCellWords, type ReadRow, readTable, seemsHeaded } from './table/read-table.ts';
export { choicesFor, type RowChoice, type TableEdit, tableEdit } from './table/table-edit.ts';
export { type Cells, TABLE_LIMITS } from './table/table-limits.ts';
export { templateTable, writeTable } from './table/write-table.ts';
