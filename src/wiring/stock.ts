import type { RibbonKind, Take } from '../layout/layout.ts';

/** How many of a kind of ribbon are owned and not used in a take; endless where nobody said how many there are. */
export function leftInStock({ ribbons }: Take, { id, owned }: RibbonKind): number {
  if (owned === undefined) return Number.POSITIVE_INFINITY;
  return owned - ribbons.reduce((used, { kind }) => (kind === id ? used + 1 : used), 0);
}
