import type { Side } from '../../geometry/side.ts';
import { bodyMm } from '../page-size.ts';
import { type Column, type Table, tablesOnPages } from '../paginate.ts';
import type { SheetOptions, SheetPage, SheetPageId } from '../sheet-page.ts';

/** A column in shares of the page's width. */
interface Shared extends Omit<Column, 'widthMm'> {
  readonly share: number;
}

/** A table as wide as a page. A cell of a column that is a box is left empty. */
export interface WideTable {
  readonly heading: string;
  readonly says?: string;
  readonly columns: readonly Shared[];
  readonly rows: readonly (readonly string[])[];
}

/** Sentences under a heading. */
export const sentences = (heading: string, rows: readonly string[]): WideTable => ({
  heading,
  columns: [{ head: '', share: 1 }],
  rows: rows.map((sentence) => [sentence]),
});

/** Sentences, each with a box to be ticked. */
export const toTick = (heading: string, rows: readonly string[]): WideTable => ({
  heading,
  columns: [
    { head: 'Look', share: 172 },
    { head: 'Done', share: 14, box: true },
  ],
  rows: rows.map((sentence) => [sentence]),
});

/** What must be read before anything is touched. */
export const caution = (sentence: string): WideTable => ({
  heading: 'Caution',
  columns: [{ head: '', share: 1, bold: true }],
  rows: [[sentence]],
});

interface Named {
  readonly id: SheetPageId;
  readonly title: string;
  readonly side?: Side;
}

/** As many upright pages as the tables take. */
export function pagesWith(
  named: Named,
  tables: readonly WideTable[],
  { paper }: SheetOptions,
): readonly SheetPage[] {
  const body = bodyMm(paper);
  const laid = tables.map(({ columns, rows, ...rest }): Table => {
    const all = columns.reduce((sum, { share }) => sum + share, 0);
    return {
      ...rest,
      columns: columns.map(({ share, ...column }) => ({ ...column, widthMm: (body.widthMm * share) / all })),
      rows: rows.map((cells) => ({ cells })),
    };
  });
  return tablesOnPages(laid, body).map((page) => ({ ...named, body: page }));
}
