import type { DerivedTake } from '../wiring/derived-take.ts';
import { isAllTested, testAgain } from '../wiring/harness-tests.ts';
import type { Note } from './check.ts';
import { list } from './words.ts';

/** What can be said of a take; never that it is safe. */
export interface Verdict {
  readonly state: 'conflicts' | 'incomplete' | 'changed' | 'tested' | 'clear';
  readonly damage: number;
  readonly faults: number;
  /** One line for people. */
  readonly text: string;
}

const plural = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/**
 * The verdict over a take's notes, what was accepted does not weigh, and over the tests of what was built. Conflicts
 * win over missing facts, both over tests, and a test that no longer holds over those that do.
 */
export function verdictOf(notes: readonly Note[], take?: DerivedTake): Verdict {
  const open = notes.filter(({ accepted }) => !accepted);
  const count = (level: Note['level']): number => open.filter((note) => note.level === level).length;
  const damage = count('damage');
  const faults = count('fault');
  if (damage + faults > 0) {
    const parts = [
      ...(damage ? [plural(damage, 'thing would do damage', 'things would do damage')] : []),
      ...(faults ? [plural(faults, 'will not fit or work', 'will not fit or work')] : []),
    ];
    return { state: 'conflicts', damage, faults, text: parts.join(' · ') };
  }
  if (open.some(({ check }) => check === 'unknown-facts')) {
    return { state: 'incomplete', damage, faults, text: 'Incomplete: facts are missing' };
  }
  const again = take ? testAgain(take) : [];
  if (again.length > 0) {
    return { state: 'changed', damage, faults, text: `Changed since test: test ${list(again)} again` };
  }
  if (take && isAllTested(take)) return { state: 'tested', damage, faults, text: 'Built and tested' };
  return { state: 'clear', damage, faults, text: 'No conflict found in the data entered' };
}
