import { applyEdit } from '../../edit/apply.ts';
import type { Edit } from '../../edit/edit.ts';
import { groupBy } from '../../layout/group-by.ts';
import type { Layout } from '../../layout/layout.ts';
import { deriveTake } from '../../wiring/derive.ts';
import type { WholeTake } from '../../wiring/whole-take.ts';
import type { Note } from '../check.ts';
import { checkTake } from '../run.ts';

const layoutOf = ({ kit, take }: WholeTake): Layout => ({
  format: 'ribbonwright',
  version: 1,
  title: '',
  kit: kit.kit,
  takes: [take],
});

/** The take as it would be after edits; nothing where one is refused or none changes anything. */
export function takeAfter(take: WholeTake, edits: readonly Edit[]): WholeTake | undefined {
  const done = applyEdit(layoutOf(take), { type: 'several', label: '', edits });
  const [after] = done.ok ? done.value.takes : [];
  return after && after !== take.take ? deriveTake(take.kit.kit, after) : undefined;
}

const known = new WeakMap<WholeTake, readonly Note[]>();

/** The notes of a take, found once. */
export function notesOf(take: WholeTake): readonly Note[] {
  const before = known.get(take);
  if (before) return before;
  const notes = checkTake(take);
  known.set(take, notes);
  return notes;
}

const nameOf = ({ type, id }: Note['subjects'][number]): string => `${type} ${id}`;

/** Whether a note tells of no more than another: the same check at the same level, no other subjects. */
export function isPartOf(note: Note, other: Note): boolean {
  if (note.check !== other.check || note.level !== other.level) return false;
  const named = new Set(other.subjects.map(nameOf));
  return note.subjects.every((subject) => named.has(nameOf(subject)));
}

/** A reminder for all that concerns fewer than before: each one less is worth an edit. */
const isShorter = (note: Note, other: Note): boolean =>
  note.level === 'reminder' && note.subjects.length < other.subjects.length;

interface Harm {
  readonly damage: number;
  readonly faults: number;
}

/** What edits do to the notes: damage and faults are those that come, the note's own aside. */
export interface Outcome extends Harm {
  readonly after: WholeTake;
  /** The note is gone, and nothing that says the same in other words has come. */
  readonly mends: boolean;
}

/** What becomes of a note and of all others; nothing where the edits cannot be carried out. */
export function outcomeOf(take: WholeTake, note: Note, edits: readonly Edit[]): Outcome | undefined {
  const after = takeAfter(take, edits);
  if (!after) return undefined;
  const before = notesOf(take);
  const keys = new Set(before.map(({ key }) => key));
  const left = notesOf(after).filter(({ check }) => check === note.check);
  const stays = left.some(({ key }) => key === note.key);
  const lingers = left.some(
    (other) => !keys.has(other.key) && isPartOf(other, note) && !isShorter(other, note),
  );
  return { after, mends: !stays && !lingers, ...harmOf(take, after, note.level) };
}

/**
 * Damage and faults that a take has and another had not, and any more of them than there were.
 *
 * @param own - the level of a note that is to go, and is not counted among those that there were
 */
export function harmOf(take: WholeTake, after: WholeTake, own?: Note['level']): Harm {
  const before = notesOf(take);
  const notes = notesOf(after);
  const fresh = freshNotes(before, notes);
  const worse = (level: Note['level']): number => {
    const count = (list: readonly Note[]): number => list.filter((other) => other.level === level).length;
    return Math.max(count(fresh), count(notes) - count(before) + (level === own ? 1 : 0));
  };
  return { damage: worse('damage'), faults: worse('fault') };
}

/** Whether a note says in one what several said: two groups without power that were joined are one without power. */
function isUnionOf(note: Note, others: readonly Note[]): boolean {
  if (note.level === 'damage') return false;
  const told = new Set(
    others.filter((other) => isPartOf(other, note)).flatMap(({ subjects }) => subjects.map(nameOf)),
  );
  return note.subjects.every((subject) => told.has(nameOf(subject)));
}

/** Notes that tell of something that no note told of before. */
export function freshNotes(before: readonly Note[], after: readonly Note[]): Note[] {
  const keys = new Map(before.map((note) => [note.key, note]));
  const byCheck = groupBy(before, ({ check }) => check);
  return after.filter((note) => {
    const same = keys.get(note.key);
    if (same) return same.level !== note.level && note.level === 'damage';
    const others = byCheck.get(note.check) ?? [];
    return !others.some((other) => isPartOf(note, other)) && !isUnionOf(note, others);
  });
}
