import type { Kit, Take } from '../layout/layout.ts';

/**
 * How many ribbons of a kind are owned and not in this take yet; 0 or fewer are to be bought. Nothing where it is
 * not known how many are owned.
 */
export function ownedLeft(kit: Kit, take: Take, kindId: string): number | undefined {
  const owned = kit.ribbons.find(({ id }) => id === kindId)?.owned;
  return owned === undefined ? undefined : owned - take.ribbons.filter(({ kind }) => kind === kindId).length;
}

/** Owned and left first, then those that nobody counts, then those to be bought. */
export const stockRank = (left: number | undefined): number => (left === undefined ? 1 : left > 0 ? 0 : 2);
