import { fail, ok, type Result } from '../../src/index.ts';

/** A printer that is further off than this prints at another scale, which is to be put right there, mm. */
const LEAST_MM = 80;
const MOST_MM = 120;

/** What the printed bar measures, mm, as typed. */
export function barOf(text: string): Result<number, string> {
  const mm = Number(text.trim().replace(',', '.'));
  return text.trim() !== '' && mm >= LEAST_MM && mm <= MOST_MM
    ? ok(mm)
    : fail(`It takes ${LEAST_MM} to ${MOST_MM} mm`);
}
