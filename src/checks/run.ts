import type { DerivedTake } from '../wiring/derive.ts';
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

/** The key of what a check found. */
export function keyOf(check: string, subjects: readonly Subject[], part: string | undefined): string {
  const named = sortSubjects(subjects)
    .map(({ type, id }) => `${type}:${escapeId(id)}`)
    .join('+');
  return part === undefined ? `${check}/${named}` : `${check}/${named}/${escapeId(part)}`;
}

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
    key: keyOf(check.id, found.subjects, found.part),
    subjects,
    message: `${headline}. ${detail}`,
    remedy,
    ...(measure && { measure }),
    headline,
    detail,
    spots,
    facts: factsOf(measure),
  };
}

function notesOf(check: Check, derived: DerivedTake): Note[] {
  const notes: Note[] = [];
  const keys = new Set<string>();
  for (const found of check.find(derived)) {
    const note = toNote(check, derived.take.id, found);
    if (keys.has(note.key)) continue;
    keys.add(note.key);
    if (notes.push(note) >= MOST_PER_CHECK) break;
  }
  return notes.sort((a, b) => byCodeUnit(a.key, b.key));
}

/** Damage cannot be put away; anything else is while its facts are those that were judged. */
function markAccepted(notes: readonly Note[], derived: DerivedTake): readonly Note[] {
  const { accepted } = derived.take;
  if (!accepted?.length) return notes;
  const byKey = new Map(accepted.map((acceptance) => [acceptance.key, acceptance]));
  return notes.map((note) => {
    const acceptance = note.level === 'damage' ? undefined : byKey.get(note.key);
    const holds = acceptance && (acceptance.facts === undefined || acceptance.facts === note.facts);
    return holds ? { ...note, accepted: true } : note;
  });
}

/** Everything that the checks find in a take: damage, fault, reminder; then the list's order; then key. */
export function checkTake(derived: DerivedTake): readonly Note[] {
  const all = checks.flatMap((check) => notesOf(check, derived));
  const sorted = LEVELS.flatMap((level) => all.filter((note) => note.level === level));
  return markAccepted(sorted, derived);
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
