import type { PlacedHeader } from '../geometry/place.ts';
import { clash, type Group, headersOf, hostOf, type Patch, patchesOf } from './groups.ts';

const byCodeUnit = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** What a group takes from the others: kinds of ribbon, and room on the rows. */
function takes(group: Group, patches: readonly Patch[]): string {
  const kinds = group.placings.map(({ facts, kept }) => kept ?? facts.kind.id).sort(byCodeUnit);
  const room = patches.map(({ row, ...mm }) => JSON.stringify([row.index, mm])).sort(byCodeUnit);
  return JSON.stringify([hostOf(group)?.owner.id, hostOf(group)?.id, kinds, room]);
}

/**
 * Groups without those that pass over a header which another group of the same ribbons in the same place would link,
 * and which no other group could link then: leaving it out gains nothing.
 */
export function withoutBeaten(groups: readonly Group[], bodyMm: number): Group[] {
  const facts = groups.map((group) => {
    const patches = patchesOf(group);
    return {
      group,
      patches,
      headers: new Set(headersOf(group)),
      host: hostOf(group),
      key: takes(group, patches),
    };
  });
  type Facts = (typeof facts)[number];
  const on = new Map<PlacedHeader, Facts[]>();
  const alike = new Map<string, Facts[]>();
  for (const each of facts) {
    for (const header of each.headers) {
      const list = on.get(header) ?? [];
      list.push(each);
      on.set(header, list);
    }
    const list = alike.get(each.key) ?? [];
    list.push(each);
    alike.set(each.key, list);
  }
  const clashes = (a: Facts, b: Facts): boolean =>
    a.patches.some((one) => b.patches.some((other) => clash(one, other, bodyMm)));
  const known = new Map<string, boolean>();
  /** Whether a header that one group leaves out could be on a group of another host beside it. */
  const isWanted = (left: PlacedHeader, by: Facts): boolean => {
    const key = `${left.owner.id} ${left.id} ${by.key}`;
    const told = known.get(key);
    if (told !== undefined) return told;
    const wanted = (on.get(left) ?? []).some((other) => other.host !== by.host && !clashes(other, by));
    known.set(key, wanted);
    return wanted;
  };
  const isBeaten = (each: Facts): boolean =>
    (alike.get(each.key) ?? []).some(
      (other) =>
        other.headers.size > each.headers.size &&
        [...each.headers].every((header) => other.headers.has(header)) &&
        [...other.headers].every((header) => each.headers.has(header) || !isWanted(header, each)),
    );
  return facts.filter((each) => !isBeaten(each)).map(({ group }) => group);
}
