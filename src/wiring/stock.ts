import type { RibbonKind, Take } from '../layout/layout.ts';

/**
 * How many of a kind of ribbon are owned and not used in a take; 0 or fewer are to be bought. Nothing where nobody
 * counts them.
 */
export function ownedLeft({ ribbons }: Take, { id, owned }: RibbonKind): number | undefined {
  return owned === undefined ? undefined : owned - ribbons.filter(({ kind }) => kind === id).length;
}

/** Whether one can be taken from what is owned, as far as anybody counts. */
export const isInStock = (take: Take, kind: RibbonKind): boolean => (ownedLeft(take, kind) ?? 1) > 0;

/** Owned and left first, then those that nobody counts, then those to be bought. */
export const stockRank = (left: number | undefined): number => (left === undefined ? 1 : left > 0 ? 0 : 2);
