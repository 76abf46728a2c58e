import type { PlacedRow } from '../geometry/place.ts';
import { groupBy } from '../layout/group-by.ts';
import { remember } from '../layout/remember.ts';
import type { DerivedTake } from '../wiring/derived-take.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import type { Found } from './check.ts';
import { MOST_PER_CHECK, upTo } from './most.ts';

/*
 * Rules on whole takes see hundreds of modules and ribbons at every move of a drag, of which hardly one has
 * changed. What is here lets them look at that one only, and say again what they said of the others.
 */

/** Whether two answers say the same, field by field. */
function isSame(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const [mine, theirs] = [a as Record<string, unknown>, b as Record<string, unknown>];
  for (const key in mine) if (!Object.is(mine[key], theirs[key])) return false;
  return true;
}

/** One list of all; the language's own way of flattening takes several times as long. */
function joined<T>(lists: Iterable<readonly T[]>): T[] {
  const all: T[] = [];
  for (const list of lists) for (const item of list) all.push(item);
  return all;
}

const isSameList = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a === b || (a.length === b.length && a.every((item, i) => isSame(item, b[i])));

/**
 * What a rule wants to know of each part of a take, as one list. A part is asked once: it stays the same as long
 * as nothing in it changes. The list is the very same as the one before where all in it says the same, so that
 * what follows from it can be kept by it.
 * @param ask - answers with objects of one kind, whose fields are compared by identity
 */
export function eachPart<T>(
  ask: (part: DerivedTake) => readonly T[],
): (take: Pick<WholeTake, 'parts'>) => readonly T[] {
  const answerOf = remember(ask);
  let asked: WholeTake['parts'] = [];
  let answers: readonly (readonly T[])[] = [];
  let all: readonly T[] = [];
  return ({ parts }) => {
    // Most parts stand where they stood, and to see that costs less than to look the answer up.
    const now = parts.map((part, i) => (part === asked[i] ? (answers[i] as readonly T[]) : answerOf(part)));
    asked = parts;
    const saysTheSame =
      now.length === answers.length &&
      now.every((answer, i) => isSameList(answer, answers[i] as readonly T[]));
    answers = now;
    if (!saysTheSame) all = joined(now);
    return all;
  };
}

interface Judged<T> {
  readonly kit: WholeTake['kit'];
  readonly things: readonly T[];
  readonly byRow: ReadonlyMap<PlacedRow, readonly T[]>;
  readonly found: ReadonlyMap<PlacedRow, readonly Found[]>;
}

type InRow = { readonly row: PlacedRow };

/** Rows in which something stands or stood that is not the same in both lists; all of them where their lengths differ. */
function rowsChanged<T extends InRow>(
  before: readonly T[],
  now: readonly T[],
): ReadonlySet<PlacedRow> | 'all' {
  if (before.length !== now.length) return 'all';
  const changed = new Set<PlacedRow>();
  for (let i = 0; i < now.length; i++) {
    const [was, is] = [before[i] as T, now[i] as T];
    if (was !== is && !isSame(was, is)) changed.add(was.row).add(is.row);
  }
  return changed;
}

/**
 * What a rule finds among the things of each row, asked again only for rows where one of them changed.
 * @param judge - yields what it finds among things of one row
 */
export function eachRow<T extends InRow>(
  judge: (things: readonly T[], take: WholeTake) => Iterable<Found>,
): (things: readonly T[], take: WholeTake) => Found[] {
  let last: Judged<T> | undefined;
  return (things, take) => {
    const { kit } = take;
    const changed = last?.kit === kit ? rowsChanged(last.things, things) : 'all';
    const isStill = (row: PlacedRow): boolean => changed !== 'all' && !changed.has(row);
    const byRow = new Map(last?.byRow);
    const found = new Map(last?.found);
    if (changed === 'all') {
      byRow.clear();
      found.clear();
      for (const [row, group] of groupBy(things, ({ row }) => row)) byRow.set(row, group);
    } else {
      for (const row of changed) {
        byRow.set(
          row,
          things.filter((thing) => thing.row === row),
        );
      }
    }
    for (const [row, group] of byRow) {
      if (!isStill(row)) found.set(row, upTo(MOST_PER_CHECK, judge(group, take)));
    }
    last = { kit, things, byRow, found };
    return joined(found.values());
  };
}
