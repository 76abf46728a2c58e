/**
 * Findings of one check that a take shows at most. A hundred modules on one spot make 4,950 overlapping
 * pairs; a document made to be slow could make billions.
 */
export const MOST_PER_CHECK = 20_000;

/** The first ones of what may be very many; no more are asked for. */
export function upTo<T>(most: number, items: Iterable<T>): T[] {
  const first: T[] = [];
  for (const item of items) if (first.push(item) >= most) break;
  return first;
}
