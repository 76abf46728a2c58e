import type { Note } from './check.ts';
import { freshNotes, isPartOf } from './remedies/outcome.ts';

/** What becomes of a take's notes when something is changed. */
export interface NoteChanges {
  readonly came: readonly Note[];
  readonly gone: readonly Note[];
  /** Notes that stay and name more things than before, as they are afterwards. */
  readonly grew: readonly Note[];
  /** Notes that stay and name fewer. */
  readonly shrank: readonly Note[];
}

/** What is new, what is gone, and what says the same of more or of fewer things. */
export function noteChanges(before: readonly Note[], after: readonly Note[]): NoteChanges {
  const keysBefore = new Set(before.map(({ key }) => key));
  const keysAfter = new Set(after.map(({ key }) => key));
  const changed = after.filter(({ key }) => !keysBefore.has(key));
  const grew = changed.filter((note) => before.some((old) => !keysAfter.has(old.key) && isPartOf(old, note)));
  const shrank = changed.filter((note) => before.some((old) => isPartOf(note, old)));
  return {
    came: freshNotes(before, after).filter((note) => !grew.includes(note)),
    gone: freshNotes(after, before).filter((old) => !shrank.some((note) => isPartOf(note, old))),
    grew: grew.filter((note) => !shrank.includes(note)),
    shrank,
  };
}
