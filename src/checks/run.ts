import type { Take } from '../layout/layout.ts';
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
import { checks } from './index.ts';

/**
 * Findings of one check that a take shows at most. A hundred modules on one spot make 4,950 overlapping
 * pairs; a document made to be slow could make billions.
 */
const MOST_PER_CHECK = 20_000;

/** Keeps the order of types and sorts by id within each; names each thing once. */
function sortSubjects(subjects: readonly Subject[]): Subject[] {
  const idsOfType = new Map<SubjectType, Set<string>>();
  for (const { type, id } of subjects) {
    const ids = idsOfType.get(type);
    if (ids) ids.add(id);
    else idsOfType.set(type, new Set([id]));
  }
  return [...idsOfType].flatMap(([type, ids]) => [...ids].sort(byCodeUnit).map((id) => ({ type, id })));
}

/** Ids may hold any text, half surrogate pairs included, which the language's own escaping refuses. */
const escapeId = (text: string): string =>
  text.replace(/[^A-Za-z0-9_.~-]/g, (unit) => `%${unit.charCodeAt(0).toString(16)}`);

const byCodeUnit = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function keyOf(check: Check, subjects: readonly Subject[], part: string | undefined): string {
  const named = subjects.map(({ type, id }) => `${type}:${escapeId(id)}`).join('+');
  return part === undefined ? `${check.id}/${named}` : `${check.id}/${named}/${escapeId(part)}`;
}

const factsOf = (measure: Found['measure']): string =>
  Object.entries(measure ?? {})
    .map(([name, value]) => `${name}=${Math.round(value * 1000) / 1000}`)
    .join(' ');

interface Named {
  readonly given: readonly Subject[];
  readonly part: string | undefined;
  readonly subjects: readonly Subject[];
  readonly key: string;
}

const named = (check: Check, given: readonly Subject[], part: string | undefined): Named => {
  const subjects = sortSubjects(given);
  return { given, part, subjects, key: keyOf(check, subjects, part) };
};

/**
 * What a check on whole takes named last. A reminder may stand for hundreds of modules: to sort and name them costs
 * more than to find them, and most moves leave them the same.
 */
const lastNamed = new WeakMap<Check, Named>();

function nameSubjects(check: Check, { subjects: given, part }: Found): Named {
  if (!check.whole) return named(check, given, part);
  const last = lastNamed.get(check);
  const isLast =
    last?.part === part &&
    last?.given.length === given.length &&
    given.every(({ type, id }, i) => type === last.given[i]?.type && id === last.given[i]?.id);
  if (last && isLast) return last;
  const fresh = named(check, given, part);
  lastNamed.set(check, fresh);
  return fresh;
}

function toNote(check: Check, take: string, found: Found): Note {
  const { headline, detail, remedy, measure, spots } = found;
  const { subjects, key } = nameSubjects(check, found);
  return {
    check: check.id,
    level: found.level ?? check.level,
    take,
    key,
    subjects,
    message: `${headline}. ${detail}`,
    remedy,
    ...(measure && { measure }),
    headline,
    detail,
    spots,
    mends: found.mends ?? [],
    facts: factsOf(measure),
  };
}

/** Notes on what a check finds, in the order in which it finds them. */
function notesOf(check: Check, take: string, found: Iterable<Found>): Note[] {
  const notes: Note[] = [];
  for (const each of found) if (notes.push(toNote(check, take, each)) >= MOST_PER_CHECK) break;
  return notes;
}

type NotesByCheck = ReadonlyMap<Check, readonly Note[]>;

/** Kept as long as the part, which stays the same while nothing in it changes. */
const keptNotes = new WeakMap<DerivedTake, NotesByCheck>();

/** What the checks that judge parts find in one; checks that find nothing are left out. */
function notesOfPart(part: DerivedTake): NotesByCheck {
  const kept = keptNotes.get(part);
  if (kept) return kept;
  const found = new Map<Check, readonly Note[]>();
  for (const check of checks) {
    if (check.whole) continue;
    const notes = notesOf(check, part.take.id, check.find(part));
    if (notes.length > 0) found.set(check, notes);
  }
  keptNotes.set(part, found);
  return found;
}

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

/** Everything that the checks find in a take: damage, fault, reminder; then the list's order; then key. */
export function checkTake(take: WholeTake): readonly Note[] {
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
