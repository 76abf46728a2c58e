import type { Lot, SheetRow } from '../cut-rows.ts';
import { type Markup, markup } from '../markup.ts';

/** A cell: words, or something to write into. */
export type Cell = string | typeof TICK | typeof BLANK;

/** A box to be ticked. */
export const TICK = { box: true } as const;

/** Left empty for the meter or the hand. */
export const BLANK = { box: false } as const;

interface Column {
  readonly name: string;
  readonly widthMm: number;
  readonly align?: 'end' | 'middle';
}

interface TableContent {
  readonly title?: string;
  /** Said under the title. */
  readonly words?: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
}

const LINE_MM = 4.2;
const PADDING_MM = 2;
/** Between lots. */
const SPACE_MM = 5;

/** How wide a sign is at 9 pt, with room to spare, mm: fonts differ (from memory). */
const signMm = (sign: string): number => {
  if ((sign.codePointAt(0) ?? 0) > 0x2e80) return 3.3;
  return /[A-Z@%WMmw—→\u2212]/u.test(sign) ? 2.5 : 1.75;
};

/** How many lines a text takes in so much width, a word that is too long being broken. */
export function linesIn(text: string, widthMm: number): number {
  let lines = 1;
  let atMm = 0;
  for (const word of text.split(/\s+/)) {
    const wordMm = [...word].reduce((sum, sign) => sum + signMm(sign), 0);
    if (atMm > 0 && atMm + 1 + wordMm > widthMm) {
      lines++;
      atMm = 0;
    }
    if (wordMm > widthMm) {
      lines += Math.ceil(wordMm / widthMm) - 1;
      atMm = widthMm;
    } else atMm += (atMm > 0 ? 1 : 0) + wordMm;
  }
  return lines;
}

/** How high words are across a page, mm. */
export const wordsMm = (text: string, widthMm: number): number =>
  linesIn(text, widthMm) * LINE_MM + PADDING_MM;

const heightOf = (cells: readonly Cell[], columns: readonly Column[]): number =>
  Math.max(
    ...cells.map((cell, i) =>
      typeof cell === 'string' ? linesIn(cell, (columns[i] as Column).widthMm - PADDING_MM) : 1,
    ),
  ) *
    LINE_MM +
  PADDING_MM;

const cellMarkup = (cell: Cell, { align }: Column): Markup => {
  if (typeof cell !== 'string')
    return cell.box ? markup`<td class="middle"><i class="tick"></i></td>` : markup`<td class="blank"></td>`;
  return align ? markup`<td class="${align}">${cell}</td>` : markup`<td>${cell}</td>`;
};

/** A table that can be cut into pages; each piece has the head again. */
export function tableLot({ title, words, columns, rows }: TableContent): Lot {
  const widthMm = columns.reduce((sum, column) => sum + column.widthMm, 0);
  const names = columns.map(({ name }) => name);
  const titleMm = title ? linesIn(title, widthMm * 0.75) * 6 + 2 : 0;
  const saidMm = words ? wordsMm(words, widthMm) : 0;
  return {
    headMm: SPACE_MM + titleMm + saidMm + heightOf(names, columns),
    rows: rows.map(
      (cells): SheetRow => ({
        heightMm: heightOf(cells, columns),
        body: markup`<tr>${cells.map((cell, i) => cellMarkup(cell, columns[i] as Column))}</tr>`,
      }),
    ),
    wrap: (bodies, isContinued) =>
      markup`<section class="lot">${
        title && markup`<h3>${title}${isContinued && ', continued'}</h3>`
      }${words && markup`<p>${words}</p>`}<table style="width:${widthMm}mm"><colgroup>${columns.map(
        (column) => markup`<col style="width:${column.widthMm}mm"/>`,
      )}</colgroup><thead><tr>${columns.map(({ name, align }) =>
        align ? markup`<th class="${align}">${name}</th>` : markup`<th>${name}</th>`,
      )}</tr></thead><tbody>${bodies}</tbody></table></section>`,
  };
}

/** Sentences under a heading, each with a box before it where it is to be done. */
export function listLot(
  title: string | undefined,
  sentences: readonly string[],
  widthMm: number,
  isTicked = false,
): Lot {
  const ownMm = widthMm - 8;
  return {
    headMm: SPACE_MM + (title ? 8 : 0),
    rows: sentences.map((sentence) => ({
      heightMm: wordsMm(sentence, ownMm),
      body: markup`<li>${isTicked && markup`<i class="tick"></i>`}<span>${sentence}</span></li>`,
    })),
    wrap: (bodies, isContinued) =>
      markup`<section class="lot">${
        title && markup`<h3>${title}${isContinued && ', continued'}</h3>`
      }<ul class="${isTicked ? 'ticked' : 'plain'}">${bodies}</ul></section>`,
  };
}

/** What must be read before anything is touched. */
export function cautionLot(sentence: string, widthMm: number): Lot {
  return {
    headMm: SPACE_MM,
    rows: [
      {
        heightMm: wordsMm(sentence, widthMm - 20) + 4,
        body: markup`<b>Caution.</b> ${sentence}`,
      },
    ],
    wrap: (bodies) => markup`<p class="lot caution">${bodies}</p>`,
  };
}
