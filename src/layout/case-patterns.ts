/** What a pattern says of a row. */
export interface PatternRow {
  readonly widthHp: number;
  readonly heightU: number;
}

/** Rows that many cases have. */
export interface CasePattern {
  readonly id: string;
  readonly name: string;
  /** Top to bottom. */
  readonly rows: readonly PatternRow[];
}

const pattern = (name: string, widthHp: number, ...heightsU: readonly number[]): CasePattern => ({
  id: `${heightsU.join('-')}u-${widthHp}`,
  name,
  rows: heightsU.map((heightU) => ({ widthHp, heightU })),
});

/**
 * Ready patterns to start from: common practice, no source, but that 84 HP fill a 19-inch subrack. A height of 1 U
 * is a round figure: no standard was found for 1U panels, and those in use differ, so the user says which.
 */
export const CASE_PATTERNS: readonly CasePattern[] = [
  pattern('1 × 84 HP', 84, 3),
  pattern('2 × 84 HP', 84, 3, 3),
  pattern('3 × 84 HP', 84, 3, 3, 3),
  pattern('1 × 104 HP', 104, 3),
  pattern('2 × 104 HP', 104, 3, 3),
  pattern('3 × 104 HP', 104, 3, 3, 3),
  pattern('1U + 3U, 84 HP', 84, 1, 3),
  pattern('3U + 1U + 3U, 104 HP', 104, 3, 1, 3),
];
