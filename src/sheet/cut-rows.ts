import type { Markup } from './markup.ts';
import { PAPERS, type Paper } from './sheet-page.ts';

/** Free round a page, mm. */
const MARGIN_MM = 12;
/** What the frame takes above and below what a page shows, mm. */
const HEAD_MM = 20;
const FOOT_MM = 12;

/** Room that a page has for what it shows, mm. */
export function roomOn(paper: Paper, lies = false): { readonly widthMm: number; readonly heightMm: number } {
  const { widthMm, heightMm } = PAPERS[paper];
  const [across, down] = lies ? [heightMm, widthMm] : [widthMm, heightMm];
  return { widthMm: across - 2 * MARGIN_MM, heightMm: down - 2 * MARGIN_MM - HEAD_MM - FOOT_MM };
}

/** A row of known height. */
export interface SheetRow {
  readonly heightMm: number;
  readonly body: Markup;
}

/** Rows that belong together, under a head that is said again on each page that they go on to. */
export interface Lot {
  readonly headMm: number;
  readonly rows: readonly SheetRow[];
  /** Puts rows under the head. */
  wrap(rows: readonly Markup[], isContinued: boolean): Markup;
}

/**
 * Cuts lots into pages, what each shows in order. A lot begins where it leaves room for its head and one row, and
 * one that fits on a page of its own is not cut for less than a third of a page.
 */
export function cutRows(lots: readonly Lot[], heightMm: number): readonly (readonly Markup[])[] {
  const pages: Markup[][] = [];
  let page: Markup[] = [];
  let leftMm = heightMm;
  const turn = (): void => {
    if (page.length > 0) pages.push(page);
    page = [];
    leftMm = heightMm;
  };
  for (const { headMm, rows, wrap } of lots) {
    const wholeMm = rows.reduce((sum, row) => sum + row.heightMm, headMm);
    if (wholeMm > leftMm && wholeMm <= heightMm && leftMm < heightMm / 3) turn();
    let from = 0;
    while (from < rows.length) {
      let to = from;
      let takenMm = headMm;
      while (to < rows.length && takenMm + (rows[to] as SheetRow).heightMm <= leftMm)
        takenMm += (rows[to++] as SheetRow).heightMm;
      if (to === from && leftMm < heightMm) {
        turn();
        continue;
      }
      to = Math.max(to, from + 1);
      page.push(
        wrap(
          rows.slice(from, to).map(({ body }) => body),
          from > 0,
        ),
      );
      leftMm -= takenMm;
      from = to;
      if (from < rows.length) turn();
    }
  }
  turn();
  return pages;
}
