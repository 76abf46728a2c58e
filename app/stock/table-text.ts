import Papa from 'papaparse';
import { fail, ok, type Result } from '../../src/index.ts';
import { type Cells, TABLE_LIMITS } from '../../src/stock.ts';

const BOM = '\uFEFF';

export type Delimiter = ',' | ';' | '\t';

/** What stands between the cells, as the first row tells: its headings hold no tabs or semicolons of their own. */
function delimiterOf(text: string): Delimiter {
  let isQuoted = false;
  let first: Delimiter = ',';
  for (const letter of text.trimStart()) {
    if (letter === '"') isQuoted = !isQuoted;
    else if (isQuoted) continue;
    else if (letter === '\t') return '\t';
    else if (letter === ';') first = ';';
    else if (letter === '\n' || letter === '\r') break;
  }
  return first;
}

const FAULTS: Readonly<Record<string, string>> = {
  MissingQuotes: 'a quotation mark is opened and never closed',
  InvalidQuotes: 'a quotation mark stands where a cell has not ended',
};

/** The cells of a text as a spreadsheet saves or copies it, whatever stands between them; empty rows keep their place. */
export function parseTable(text: string): Result<Cells, string> {
  if (text.length > TABLE_LIMITS.characters) return fail('The table is too long to be one of modules.');
  const plain = text.startsWith(BOM) ? text.slice(1) : text;
  const { data, errors } = Papa.parse<string[]>(plain, {
    delimiter: delimiterOf(plain),
    skipEmptyLines: false,
    preview: TABLE_LIMITS.rows + 1,
  });
  const fault = errors.find(({ code }) => FAULTS[code]);
  if (fault) return fail(`Row ${(fault.row ?? 0) + 1}: ${FAULTS[fault.code]}.`);
  return ok(data);
}

/** Cells as the text of a file: spreadsheets tell its encoding by the mark at its start. */
export const tableFile = (cells: Cells, delimiter: Delimiter): string =>
  `${BOM + Papa.unparse(cells as string[][], { delimiter, newline: '\r\n' })}\r\n`;

/** The same to be pasted into a spreadsheet. */
export const tableToPaste = (cells: Cells): string =>
  Papa.unparse(cells as string[][], { delimiter: '\t', newline: '\n' });
