import {
  type checks,
  deriveTake,
  firstChecks,
  judge,
  type Kit,
  type Note,
  type Take,
  type WholeTake,
} from '../../src/index.ts';

/** What follows from a take: everything in its place and joined, and what the checks say of it. */
export interface Analysis {
  readonly derived: WholeTake;
  readonly notes: readonly Note[];
}

type Checks = typeof checks;

let known = new WeakMap<Take, { readonly kit: Kit; readonly analysis: Analysis }>();

/** The first picture waits for no computation of currents; the checks on these come with all that takes hold of it. */
let judging: Checks = firstChecks;
const listeners = new Set<() => void>();

export const checksInUse = {
  get: (): Checks => judging,
  /** From now on all of these judge; what was judged before is judged again. */
  set(all: Checks): void {
    if (all === judging) return;
    judging = all;
    known = new WeakMap();
    for (const listener of listeners) listener();
  },
  subscribe(listener: () => void): () => void {
    listeners.add(listener);
    return () => listeners.delete(listener);
  },
};

/** Worked out once per take and kit: both are immutable, so that the same objects mean the same answer. */
export function analyse(kit: Kit, take: Take): Analysis {
  const before = known.get(take);
  if (before?.kit === kit) return before.analysis;
  const derived = deriveTake(kit, take);
  const analysis = { derived, notes: judge(derived, judging) };
  known.set(take, { kit, analysis });
  return analysis;
}
