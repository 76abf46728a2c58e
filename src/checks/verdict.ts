import type { Note } from './check.ts';

/** What can be said of a take; never that it is safe. */
export interface Verdict {
  readonly state: 'conflicts' | 'incomplete' | 'clear';
  readonly damage: number;
  readonly faults: number;
  /** One line for people. */
  readonly text: string;
}

const plural = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** The verdict over a take's notes; what was accepted does not weigh. */
export function verdictOf(notes: readonly Note[]): Verdict {
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
  return { state: 'clear', damage, faults, text: 'No conflict found in the data entered' };
}
