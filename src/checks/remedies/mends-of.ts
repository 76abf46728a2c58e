import type { WholeTake } from '../../wiring/whole-take.ts';
import { allAtOnce } from '../all-at-once.ts';
import type { Mend, Note } from '../check.ts';
import { remedies } from './index.ts';
import { type Outcome, outcomeOf } from './outcome.ts';
import { editsOf } from './remedy.ts';

/** Mends offered for one note. */
const MOST_OFFERED = 3;

/** Edits tried for one note: each costs a derived and checked take. */
const MOST_TRIED = 16;

interface Tried {
  readonly mend: Mend;
  readonly outcome: Outcome;
}

/** What is offered: it mends, does no new damage, and a mended fault brings no other. */
function isOffered(note: Note, { mends, damage, faults }: Outcome): boolean {
  return mends && damage === 0 && (note.level === 'damage' || faults === 0);
}

/** Of mends of damage those that bring no fault; where there are none, those that bring the fewest. */
function choose(good: readonly Tried[]): readonly Mend[] {
  const fewest = Math.min(...good.map(({ outcome }) => outcome.faults));
  const best = good.filter(({ outcome }) => outcome.faults === fewest);
  return best.slice(0, MOST_OFFERED).map(({ mend }) => mend);
}

/**
 * The edits that mend a note of a take, each tried before it is offered: the note goes, nothing comes that is as bad.
 * The smallest disturbance first. Stops after each trial, so that whoever asks can do other things in between.
 */
export function* searchMends(take: WholeTake, note: Note): Generator<undefined, readonly Mend[]> {
  const good: Tried[] = [];
  const seen = new Set<string>();
  const told = new Set<string>();
  let clean = 0;
  for (const mend of remedies[note.check]?.(note, take) ?? []) {
    const text = JSON.stringify(mend.edit);
    if (seen.has(text)) continue;
    if (seen.size >= MOST_TRIED || clean >= MOST_OFFERED) break;
    seen.add(text);
    const outcome = outcomeOf(take, note, editsOf(mend));
    if (outcome && isOffered(note, outcome)) {
      // Two ways to the same take are one way, and two that are told alike cannot be told apart.
      const take = JSON.stringify(outcome.after.take);
      if (!told.has(take) && !told.has(mend.label)) {
        told.add(take).add(mend.label);
        good.push({ mend, outcome });
        if (outcome.faults === 0) clean++;
      }
    }
    yield;
  }
  return choose(good);
}

/** All at once, for those who can wait. */
export const mendsOf = (take: WholeTake, note: Note): readonly Mend[] => allAtOnce(searchMends(take, note));
