import type { Side } from '../../geometry/side.ts';
import { cutRows, type Lot, roomOn } from '../cut-rows.ts';
import { markup } from '../markup.ts';
import type { SheetOptions, SheetPage, SheetPageId } from '../sheet-page.ts';

interface Named {
  readonly id: SheetPageId;
  readonly title: string;
  readonly side?: Side;
}

/** As many upright pages as the lots take. */
export const pagedLots = (
  named: Named,
  lots: readonly Lot[],
  { paper }: SheetOptions,
): readonly SheetPage[] =>
  cutRows(lots, roomOn(paper).heightMm).map((body) => ({ ...named, body: markup`${body}` }));
