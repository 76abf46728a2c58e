import { escapeKeyPart } from '../layout/key-part.ts';
import type { Take } from '../layout/layout.ts';
import { remember } from '../layout/remember.ts';
import type { DerivedTake } from '../wiring/derived-take.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import {
  type Check,
  type Finding,
  type Found,
  LEVELS,
  type Note,
  type Subject,
  type SubjectType,
} from './check.ts';
import { MOST_PER_CHECK, upTo } from './most.ts';

/** Keeps the order of types and sorts by id, by code units, within each; names each thing once. */
function sortSubjects(subjects: readonly Subject[]): Subject[] {
  const idsOfType = new Map<SubjectType, string[]>();
  for (const { type, id } of subjects) {
    const ids = idsOfType.get(type);
    if (ids) ids.push(id);
    else idsOfType.set(type, [id]);
  }
  const sorted: Subject[] = [];
  for (const [type, ids] of idsOfType) {
    ids.sort();
    ids.forEach((id, i) => {
      if (id !== ids[i - 1]) sorted.push({ type, id });
    });
  }
  return sorted;
}

const byCodeUnit = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** The key of what a check found, its subjects sorted. */
function keyOfSorted(check: string, subjects: readonly Subject[], part: string | undefined): string {
  const named = subjects.map(({ type, id }) => `${type}:${escapeKeyPart(id)}`).join('+');
  return part === undefined ? `${check}/${named}` : `${check}/${named}/${escapeKeyPart(part)}`;
}

/** The key of what a check found. */
export const keyOf = (check: string, subjects: readonly Subject[], part: string | undefined): string =>
  keyOfSorted(check, sortSubjects(subjects), part);

const factsOf = (measure: Found['measure']): string =>
  Object.entries(measure ?? {})
    .map(([name, value]) => `${name}=${Math.round(value * 1000) / 1000}`)
    .join(' ');

function toNote(check: Check, take: string, found: Found): Note {
  const { headline, detail, remedy, measure, spots } = found;
  const subjects = sortSubjects(found.subjects);
  return {
    check: check.id,
    level: found.level ?? check.level,
    take,
    key: keyOfSorted(check.id, subjects, found.part),
    subjects,
    message: `${headline}. ${detail}`,
    remedy,
    ...(measure && { measure }),
    headline,
    detail,
    ...(spots && { spots }),
    facts: factsOf(measure),
  };
}

/** What a rule on whole takes says again of what did not change is the very same finding: so is its note. */
const noteOf = remember((_: Found) => new Map<string, Note>());

/** Notes on what a check finds, in the order in which it finds them. */
function notesOf(check: Check, take: string, found: Iterable<Found>): Note[] {
  return upTo(MOST_PER_CHECK, found).map((each) => {
    const known = noteOf(each);
    const note = known.get(take) ?? toNote(check, take, each);
    known.set(take, note);
    return note;
  });
}

type NotesByCheck = ReadonlyMap<Check, readonly Note[]>;

/** What the checks that judge parts find in one, which is kept as long as it stays the same; those that find nothing are left out. */
const notesOfParts = remember((checks: readonly Check[]) =>
  remember((part: DerivedTake): NotesByCheck => {
    const found = new Map<Check, readonly Note[]>();
    for (const check of checks) {
      if (check.whole) continue;
      const notes = notesOf(check, part.take.id, check.find(part));
      if (notes.length > 0) found.set(check, notes);
    }
    return found;
  }),
);

/** Each key once, sorted; as many as a take shows. */
function listed(notes: Note[]): readonly Note[] {
  if (notes.length < 2) return notes;
  const byKey = new Map<string, Note>();
  for (const note of notes) if (!byKey.has(note.key)) byKey.set(note.key, note);
  const firsts = [...byKey.values()].slice(0, MOST_PER_CHECK);
  return firsts.sort((a, b) => byCodeUnit(a.key, b.key));
}

/** Damage cannot be put away; anything else is while its facts are those that were judged. */
function markAccepted(notes: readonly Note[], { accepted }: Take): readonly Note[] {
  if (!accepted?.length) return notes;
  const byKey = new Map(accepted.map((acceptance) => [acceptance.key, acceptance]));
  return notes.map((note) => {
    const acceptance = note.level === 'damage' ? undefined : byKey.get(note.key);
    const holds = acceptance && (acceptance.facts === undefined || acceptance.facts === note.facts);
    return holds ? { ...note, accepted: true } : note;
  });
}

/** Everything that checks find in a take: damage, fault, reminder; then the list's order; then key. */
export function judge(take: WholeTake, checks: readonly Check[]): readonly Note[] {
  const notesOfPart = notesOfParts(checks);
  const found = new Map<Check, Note[]>();
  for (const part of take.parts) {
    for (const [check, notes] of notesOfPart(part)) {
      const known = found.get(check);
      if (known) for (const note of notes) known.push(note);
      else found.set(check, [...notes]);
    }
  }
  const all = checks.flatMap((check) =>
    listed(check.whole ? notesOf(check, take.take.id, check.find(take)) : (found.get(check) ?? [])),
  );
  const sorted = LEVELS.flatMap((level) => all.filter((note) => note.level === level));
  return markAccepted(sorted, take.take);
}

/** Notes as the command line prints them. */
export function findingsOf(notes: readonly Note[]): Finding[] {
  return notes.map(({ check, level, take, key, subjects, message, remedy, measure, accepted }) => ({
    check,
    level,
    take,
    key,
    subjects,
    message,
    remedy,
    ...(measure && { measure }),
    ...(accepted && { accepted }),
  }));
}
