import { checkTake, deriveTake, type Kit, type Note, type Take, type WholeTake } from '../../src/index.ts';

/** What follows from a take: everything in its place and joined, and what the checks say of it. */
export interface Analysis {
  readonly derived: WholeTake;
  readonly notes: readonly Note[];
}

const known = new WeakMap<Take, { readonly kit: Kit; readonly analysis: Analysis }>();

/** Worked out once per take and kit: both are immutable, so that the same objects mean the same answer. */
export function analyse(kit: Kit, take: Take): Analysis {
  const before = known.get(take);
  if (before?.kit === kit) return before.analysis;
  const derived = deriveTake(kit, take);
  const analysis = { derived, notes: checkTake(derived) };
  known.set(take, { kit, analysis });
  return analysis;
}
