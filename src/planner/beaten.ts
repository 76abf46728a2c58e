import type { PlacedHeader, PlacedModule } from '../geometry/place.ts';
import type { RibbonFacts } from '../layout/kit-index.ts';
import { clash, type Group, headersOf, hostOf, linesAt, type Patch, patchesOf } from './groups.ts';
import type { Task } from './task.ts';

const byCodeUnit = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Small numbers for lengths, of which there are few: they make shorter keys. */
class Lengths {
  readonly #known = new Map<number, number>();

  of(mm: number): number {
    const told = this.#known.get(mm) ?? this.#known.size;
    this.#known.set(mm, told);
    return told;
  }
}

/** What a group takes from the others: its host, kinds of ribbon, and room on the rows. */
function keyOf(group: Group, lengths: Lengths): string {
  const host = hostOf(group);
  const kinds = group.placings.map(({ facts, kept }) => kept ?? facts.kind.id);
  const room = patchesOf(group).map(
    ({ row, fromMm, toMm, lowMm, highMm }) =>
      `${row.index} ${lengths.of(fromMm)} ${lengths.of(toMm)} ${lengths.of(lowMm)} ${lengths.of(highMm)}`,
  );
  if (kinds.length > 1) kinds.sort(byCodeUnit);
  if (room.length > 1) room.sort(byCodeUnit);
  return `${host?.owner.id}|${host?.id}|${kinds.join()}|${room.join()}`;
}

/** Whether a module can be joined to whatever ribbons of some kinds feed, and asks no more than these bring. */
export function isUndemanding(
  { owner, isolated }: PlacedHeader,
  kinds: readonly RibbonFacts[],
  fed: ReadonlySet<PlacedModule>,
): boolean {
  const module = owner as PlacedModule;
  if (isolated || kinds.every(({ bus }) => !bus.carriesVoltage)) return true;
  return (
    !fed.has(module) &&
    module.facts.needs.every((line) =>
      kinds.every((facts) => linesAt(facts).every((lines) => lines.has(line))),
    )
  );
}

/** Groups that take the same from the others. */
interface Alike {
  readonly host: PlacedHeader | undefined;
  readonly patches: readonly Patch[];
  readonly groups: Group[];
  /** Whether a header could be on a group of another host beside these; asked once. */
  readonly wanted: Map<PlacedHeader, boolean>;
}

/**
 * Groups without those that pass over a header which another group of the same ribbons in the same place would link,
 * and which no other group could link then: leaving it out gains nothing.
 */
export function withoutBeaten({ base, fed }: Task, groups: readonly Group[]): Group[] {
  const bodyMm = base.limits.connectorBodyMm;
  const lengths = new Lengths();
  const byKey = new Map<string, Alike>();
  /** By header, then by host. */
  const on = new Map<PlacedHeader, Map<PlacedHeader | undefined, Set<Alike>>>();
  for (const group of groups) {
    const key = keyOf(group, lengths);
    const alike = byKey.get(key) ?? {
      host: hostOf(group),
      patches: patchesOf(group),
      groups: [] as Group[],
      wanted: new Map(),
    };
    if (alike.groups.push(group) === 1) byKey.set(key, alike);
    for (const header of headersOf(group)) {
      const byHost = on.get(header) ?? new Map<PlacedHeader | undefined, Set<Alike>>();
      on.set(header, byHost);
      const there = byHost.get(alike.host);
      if (there) there.add(alike);
      else byHost.set(alike.host, new Set([alike]));
    }
  }
  /** Also one whose module has another header for the bus, or asks for more. */
  const isWanted = (left: PlacedHeader, { host, patches, groups: [own], wanted }: Alike): boolean => {
    const told = wanted.get(left);
    if (told !== undefined) return told;
    const kinds = own?.placings.map(({ facts }) => facts) ?? [];
    const isClear = (other: Alike): boolean =>
      !patches.some((one) => other.patches.some((each) => clash(one, each, bodyMm)));
    const is =
      left.owner.headers.some(
        ({ bus, role }, i, all) => all[i] !== left && bus === left.bus && role === left.role,
      ) ||
      !isUndemanding(left, kinds, fed) ||
      [...(on.get(left) ?? [])].some(([other, groups]) => other !== host && [...groups].some(isClear));
    wanted.set(left, is);
    return is;
  };
  const beaten = new Set<Group>();
  for (const alike of byKey.values()) {
    if (alike.groups.length < 2) continue;
    const all = alike.groups.map((group) => ({ group, headers: new Set(headersOf(group)) }));
    for (const { group, headers } of all) {
      const isMore = (other: ReadonlySet<PlacedHeader>): boolean => {
        if (other.size <= headers.size) return false;
        for (const header of headers) if (!other.has(header)) return false;
        for (const header of other) if (!headers.has(header) && isWanted(header, alike)) return false;
        return true;
      };
      if (all.some((other) => isMore(other.headers))) beaten.add(group);
    }
  }
  return groups.filter((group) => !beaten.has(group));
}
