/** What is read of a table: far above honest use, and too little to stop the program with. */
export const TABLE_LIMITS = {
  /** Parsing takes several times the memory of the text. */
  characters: 4_000_000,
  /** As many kinds as a kit may hold, and their headings. */
  rows: 2_001,
  /** Every fact of a kind with more headers than anybody builds. */
  columns: 1_000,
  /** A note is a text for people. */
  cell: 100_000,
} as const;

/** Rows of cells as a parser gives them: empty rows stand where they stood, so that rows can be counted. */
export type Cells = readonly (readonly string[])[];

/** Why a table is not read at all; nothing where it may be. */
export function excessOf(cells: Cells): string | undefined {
  const { rows, columns, cell } = TABLE_LIMITS;
  if (cells.length > rows) return `The table has more than ${rows} rows`;
  const wide = cells.findIndex(({ length }) => length > columns);
  if (wide >= 0) return `Row ${wide + 1} has more than ${columns} cells`;
  const long = cells.findIndex((row) => row.some(({ length }) => length > cell));
  return long >= 0 ? `A cell in row ${long + 1} holds more than ${cell} characters` : undefined;
}
