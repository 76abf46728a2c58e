import type { Level, Note } from '../../src/index.ts';

/** A note's place in the margin; what it says is looked up by its key. */
export interface ListedNote {
  readonly key: string;
  readonly level: Level;
  /** Id of the row that it stands beside. */
  readonly row: string | null;
  /** A running gesture has made it go. */
  readonly gone: boolean;
}

const listed = ({ key, level, spots }: Note): ListedNote => ({
  key,
  level,
  row: spots?.[0]?.row ?? null,
  gone: false,
});

/** The notes that stand open, in the checks' order. */
export const listNotes = (notes: readonly Note[]): readonly ListedNote[] =>
  notes.filter(({ accepted }) => !accepted).map(listed);

/**
 * The list under a running gesture: its order stays as it was at the start, so that nothing jumps under the
 * eye. What has gone stays and fades, what is new comes at the end. The very list where nothing changes.
 *
 * @param start - as it was when the gesture began
 * @param before - as it was shown last
 */
export function freezeOrder(
  start: readonly ListedNote[],
  before: readonly ListedNote[],
  notes: readonly Note[],
): readonly ListedNote[] {
  const open = listNotes(notes);
  const stillThere = new Set(open.map(({ key }) => key));
  const known = new Set(start.map(({ key }) => key));
  const after = [
    ...start.map((note) => (stillThere.has(note.key) ? note : { ...note, gone: true })),
    ...open.filter(({ key }) => !known.has(key)),
  ];
  const isSame = (note: ListedNote, i: number): boolean =>
    before[i]?.key === note.key && before[i].gone === note.gone && before[i].level === note.level;
  return after.length === before.length && after.every(isSame) ? before : after;
}
