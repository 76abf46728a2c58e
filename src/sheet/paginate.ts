import { type Markup, type MarkupPart, markup } from './markup.ts';
import { type Letters, linesOf } from './text-lines.ts';

/** Letters of tables and lists, mm; nothing on a page is smaller than the small ones. */
export const LETTERS_MM = 3;
export const SMALL_MM = 2.5;

/** From line to line of a text, in heights of its letters. */
export const LEADING = 1.3;

/** Above and below the lines of a row together with its rule, mm. */
const ROW_PAD_MM = 1.9;

const HEADING_MM = 10;

/** A table of no more than this share of a page is not parted. */
const TOGETHER = 0.5;

export interface Column {
  readonly head: string;
  readonly widthMm: number;
  readonly align?: 'right';
  readonly bold?: true;
  /** Nothing is printed in it: a box to write a figure into. */
  readonly box?: true;
}

/** Texts by column; fewer leave the rest empty. */
export interface TableRow {
  readonly cells: readonly string[];
  /** Room to write by hand, mm. */
  readonly leastMm?: number;
}

/** A table under a heading of its own. */
export interface Table {
  readonly heading: string;
  /** Told under the heading. */
  readonly says?: string;
  readonly columns: readonly Column[];
  readonly rows: readonly TableRow[];
}

/** A piece of a page that is not cut, and how high it is. */
export interface Block {
  readonly heightMm: number;
  readonly body: Markup;
}

/** Puts blocks on pages, one after the other; one that is higher than a page is left out nowhere: it gets its own. */
export function stack(blocks: readonly Block[], roomMm: number): Markup[] {
  const pages: Block[][] = [];
  let used = Number.POSITIVE_INFINITY;
  for (const block of blocks) {
    if (used + block.heightMm > roomMm) {
      pages.push([]);
      used = 0;
    }
    (pages.at(-1) as Block[]).push(block);
    used += block.heightMm;
  }
  return pages.map((page) => markup`${page.map(({ body }) => body)}`);
}

const round = (mm: number): number => Math.round(mm * 100) / 100;

/** Lines as they are: the browser breaks none. */
export const printed = (lines: readonly string[]): MarkupPart =>
  lines.map((line, i) => markup`${i > 0 && markup`<br>`}<bdi>${line}</bdi>`);

const CELL_PAD_MM = 2.4;

const cellLines = (text: string, { widthMm, bold }: Column, sizeMm: number): string[] =>
  linesOf(text, widthMm - CELL_PAD_MM, { sizeMm, bold: bold === true });

const rowMm = (lines: number, sizeMm: number, leastMm = 0): number =>
  round(Math.max(leastMm, lines * sizeMm * LEADING + ROW_PAD_MM));

interface Laid {
  readonly lines: readonly (readonly string[])[];
  readonly heightMm: number;
}

/** A row in pieces none of which is higher than a page. */
function laidRow({ cells, leastMm }: TableRow, columns: readonly Column[], mostLines: number): Laid[] {
  const all = columns.map((column, i) => cellLines(cells[i] ?? '', column, LETTERS_MM));
  const most = Math.max(1, ...all.map(({ length }) => length));
  const pieces = Math.ceil(most / mostLines);
  return Array.from({ length: pieces }, (_, piece) => {
    const lines = all.map((cell) => cell.slice(piece * mostLines, (piece + 1) * mostLines));
    const high = Math.max(1, ...lines.map(({ length }) => length));
    return { lines, heightMm: rowMm(high, LETTERS_MM, leastMm) };
  });
}

const classOf = ({ align, bold, box }: Column): string =>
  [align === 'right' && 'right', bold && 'bold', box && 'box'].filter(Boolean).join(' ');

function tableMarkup({ columns }: Table, head: Laid, rows: readonly Laid[]): Markup {
  const cells = (tag: 'th' | 'td', { lines }: Laid): MarkupPart =>
    columns.map((column, i) =>
      tag === 'th'
        ? markup`<th scope="col" class="${classOf(column)}">${printed(lines[i] ?? [])}</th>`
        : markup`<td class="${classOf(column)}">${printed(lines[i] ?? [])}</td>`,
    );
  return markup`<table style="width:${round(columns.reduce((sum, { widthMm }) => sum + widthMm, 0))}mm"><colgroup>${columns.map(
    ({ widthMm }) => markup`<col style="width:${round(widthMm)}mm">`,
  )}</colgroup>${
    head.heightMm > 0 &&
    markup`<thead><tr style="height:${head.heightMm}mm">${cells('th', head)}</tr></thead>`
  }<tbody>${rows.map(
    (row) => markup`<tr style="height:${row.heightMm}mm">${cells('td', row)}</tr>`,
  )}</tbody></table>`;
}

/** Words between tables. */
export function paragraph(text: string, widthMm: number, letters: Letters = { sizeMm: LETTERS_MM }): Block {
  const lines = linesOf(text, widthMm, letters);
  const heightMm = round(lines.length * letters.sizeMm * LEADING + 2);
  const bold = letters.bold ? ';font-weight:700' : '';
  return {
    heightMm,
    body: markup`<p style="height:${heightMm}mm;font-size:${letters.sizeMm}mm${bold}">${printed(lines)}</p>`,
  };
}

/** A table in blocks that fit what is left of a page and then whole ones; each repeats heading and head. */
function pushTable(table: Table, blocks: Block[][], roomMm: number, usedMm: number, widthMm: number): number {
  const { columns, rows, heading, says } = table;
  const headLines = columns.map(({ head, widthMm: wide }) =>
    linesOf(head, wide - CELL_PAD_MM, { sizeMm: SMALL_MM, bold: true }),
  );
  const isHeadless = columns.every((column) => column.head === '');
  const head: Laid = {
    lines: headLines,
    heightMm: isHeadless ? 0 : rowMm(Math.max(1, ...headLines.map(({ length }) => length)), SMALL_MM),
  };
  const told = says === undefined ? undefined : paragraph(says, widthMm, { sizeMm: SMALL_MM });
  const overheadMm = HEADING_MM + (told?.heightMm ?? 0) + head.heightMm + 3;
  const mostLines = Math.max(1, Math.floor((roomMm - overheadMm - ROW_PAD_MM) / (LETTERS_MM * LEADING)));
  const laid = rows.flatMap((row) => laidRow(row, columns, mostLines));
  const wholeMm = laid.reduce((sum, { heightMm }) => sum + heightMm, overheadMm);
  const isShort = wholeMm <= roomMm * TOGETHER;
  let used = usedMm;
  let at = 0;
  let isFirst = true;
  if (isShort && used > 0 && used + wholeMm > roomMm) {
    blocks.push([]);
    used = 0;
  }
  while (at < laid.length) {
    if (used + overheadMm + (laid[at] as Laid).heightMm > roomMm) {
      blocks.push([]);
      used = 0;
    }
    const piece: Laid[] = [];
    let high = overheadMm;
    for (
      let row = laid[at];
      row && (piece.length === 0 || used + high + row.heightMm <= roomMm);
      row = laid[++at]
    ) {
      piece.push(row);
      high += row.heightMm;
    }
    const title = isFirst ? heading : `${heading}, continued`;
    const body = markup`<h2 style="height:${HEADING_MM}mm">${title}</h2>${isFirst && told?.body}${tableMarkup(table, head, piece)}`;
    (blocks.at(-1) as Block[]).push({ heightMm: high, body });
    used += high;
    isFirst = false;
  }
  return used;
}

/** Tables one after the other on as many pages as they take; those without rows are left out. */
export function tablesOnPages(
  tables: readonly Table[],
  { widthMm, heightMm }: { readonly widthMm: number; readonly heightMm: number },
): Markup[] {
  const pages: Block[][] = [[]];
  let used = 0;
  for (const table of tables) used = pushTable(table, pages, heightMm, used, widthMm);
  return pages.filter((page) => page.length > 0).map((page) => markup`${page.map(({ body }) => body)}`);
}
