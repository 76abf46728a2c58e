/** A door of the core: my own stock, tables of kinds, and what is owned and used. Apart so that the app loads it late. */
export { type Count, inventoryOf, leftOf, shoppingFor, shortOf } from './checks/inventory.ts';
export { searchSubstitutes } from './checks/remedies/substitutes.ts';
export type { TakenKind } from './edit/take-kinds.ts';
export {
  allOf,
  changeStock,
  emptyStock,
  type KindSort,
  kitFromStock,
  type MyStock,
  type StockDeed,
} from './stock/my-stock.ts';
export { keepInStock, type Offer, offersFor, openOffers, takeFromStock } from './stock/offers.ts';
export type { Column } from './table/columns.ts';
export { fieldsFor, headingOf } from './table/field.ts';
export {
  type BadCell,
  badCellWords,
  type ReadRow,
  readTable,
  seemsHeaded,
} from './table/read-table.ts';
export { choicesFor, type RowChoice, tableEdit } from './table/table-edit.ts';
export { type Cells, TABLE_LIMITS } from './table/table-limits.ts';
export { templateTable, writeTable } from './table/write-table.ts';
