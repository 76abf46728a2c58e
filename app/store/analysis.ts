import type { checkTake, Kit, Note, pressingNotes, Take, verdictOf, WholeTake } from '../../src/index.ts';
import { deriveTake } from '../../src/index.ts';

/** What follows from a take: everything in its place and joined, and what the checks say of it. */
export interface Analysis {
  readonly derived: WholeTake;
  /** Looked for when they are first asked for: a hand that moves asks for those that press alone. */
  readonly notes: readonly Note[];
  /** Damage and faults. */
  readonly pressing: readonly Note[];
}

interface Judge {
  readonly checkTake: typeof checkTake;
  readonly pressingNotes: typeof pressingNotes;
  readonly verdictOf: typeof verdictOf;
}

const NONE: readonly Note[] = [];

let known = new WeakMap<Take, { readonly kit: Kit; readonly analysis: Analysis }>();

/** The first picture waits for no check: they come with all that takes hold of it. */
let judge: Judge | null = null;
const listeners = new Set<() => void>();

export const judging = {
  /** Absent until the checks have come: then nothing is known of what is right or wrong. */
  get: (): Judge | null => judge,
  /** From now on this one judges; what was shown before is judged now. */
  set(by: Judge): void {
    if (by === judge) return;
    judge = by;
    known = new WeakMap();
    for (const listener of listeners) listener();
  },
  subscribe(listener: () => void): () => void {
    listeners.add(listener);
    return () => listeners.delete(listener);
  },
};

class Judged implements Analysis {
  readonly derived: WholeTake;
  readonly #judge: Judge | null;
  #notes?: readonly Note[];

  constructor(derived: WholeTake, by: Judge | null) {
    this.derived = derived;
    this.#judge = by;
  }

  get notes() {
    this.#notes ??= this.#judge?.checkTake(this.derived) ?? NONE;
    return this.#notes;
  }

  get pressing() {
    return this.#judge?.pressingNotes(this.derived) ?? NONE;
  }
}

/** Worked out once per take and kit: both are immutable, so that the same objects mean the same answer. */
export function analyse(kit: Kit, take: Take): Analysis {
  const before = known.get(take);
  if (before?.kit === kit) return before.analysis;
  const derived = deriveTake(kit, take);
  const analysis = new Judged(derived, judge);
  known.set(take, { kit, analysis });
  return analysis;
}
