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

const areSame = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((item, i) => isSame(item, b[i]));

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
  let last: readonly T[] = [];
  return ({ parts }) => {
    const all = parts.flatMap(answerOf);
    if (!areSame(last, all)) last = all;
    return last;
  };
}

interface Judged<T> {
  readonly things: readonly T[];
  readonly found: readonly Found[];
}

/**
 * What a rule finds among the things of each row, asked again only for rows where one of them changed.
 * @param judge - yields what it finds among things of one row
 */
export function eachRow<T extends { readonly row: PlacedRow }>(
  judge: (things: readonly T[], take: WholeTake) => Iterable<Found>,
): (things: readonly T[], take: WholeTake) => Found[] {
  const keptIn = remember((_: WholeTake['kit']) => new WeakMap<PlacedRow, Judged<T>>());
  return (all, take) => {
    const kept = keptIn(take.kit);
    return [...groupBy(all, ({ row }) => row)].flatMap(([row, things]) => {
      const known = kept.get(row);
      if (known && areSame(known.things, things)) return known.found;
      const judged = { things, found: upTo(MOST_PER_CHECK, judge(things, take)) };
      kept.set(row, judged);
      return judged.found;
    });
  };
}
