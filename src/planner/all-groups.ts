import { exceeds } from '../geometry/exceeds.ts';
import type { PlacedHeader, PlacedRow } from '../geometry/place.ts';
import { groupBy } from '../layout/group-by.ts';
import type { BusFacts, RibbonFacts } from '../layout/kit-index.ts';
import { isUndemanding } from './beaten.ts';
import { flatPlacings } from './flat-placings.ts';
import {
  clash,
  clashesWithin,
  type Group,
  hasNoLooseEnd,
  headersOf,
  hostOf,
  islandOf,
  joinedTo,
  membersOf,
  patchesOf,
} from './groups.ts';
import { loosePlacings } from './loose-placings.ts';
import { isChainable, type Placing, type Room } from './placing.ts';
import type { Task } from './task.ts';

/** Every group that could be made, and whether that is really all of them. */
export interface Groups {
  readonly groups: readonly Group[];
  readonly complete: boolean;
}

/** Groups and ways to lay ribbons looked at for one bus before the search is no longer called complete. */
const MOST = 60_000;

const byCodeUnit = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** What two groups must have in common for one of them to be enough. */
function keyOf(group: Group): string {
  const seats = headersOf(group).map(({ owner, id }) => `${owner.id}/${id}`);
  const kinds = group.placings.map(({ facts, kept }) => kept ?? facts.kind.id);
  const patches = patchesOf(group).map(
    ({ row, fromMm, toMm, lowMm, highMm }) => `${row.index} ${fromMm} ${toMm} ${lowMm} ${highMm}`,
  );
  const sorted = (list: string[]) => list.sort(byCodeUnit).join(',');
  return `${sorted(seats)}|${sorted(kinds)}|${sorted(patches)}`;
}

/** Where a voltage goes it matters how long each piece is; elsewhere one group of a sort does. */
function howKey(group: Group): string {
  if (islandOf(group).length === 0) return '';
  const placings = group.placings.map(({ facts, seats }) => {
    const at = seats.map(({ connector }) => facts.connectors[connector]?.atMm ?? 0);
    return `${facts.kind.id} ${at.map((mm, i) => (i === 0 ? 0 : mm - (at[i - 1] as number)).toFixed(3))}`;
  });
  return JSON.stringify([placings, group.joints]);
}

function placingsOf(
  { base }: Task,
  facts: RibbonFacts,
  headers: readonly PlacedHeader[],
  keepAll: boolean,
  room: Room,
): { placings: readonly Placing[]; complete: boolean } {
  if (!facts.flat) return loosePlacings(base, facts, headers, keepAll, room);
  const upright = headers.filter(({ axis }) => axis === 'vertical');
  const rows = [...groupBy(upright, ({ row }): PlacedRow => row).values()];
  const found = rows.map((row) => flatPlacings(base, facts, row, keepAll, room));
  return {
    placings: found.flatMap(({ placings }) => placings),
    complete: found.every(({ complete }) => complete),
  };
}

/**
 * Headers that a ribbon of a kind had better take wherever it lies over them: what it passes over between two seats no
 * other could link then, where all ribbons lie flat and none is joined to another.
 */
function takenBy(facts: RibbonFacts, headers: readonly PlacedHeader[], members: number, { fed }: Task) {
  const mostCounts = headers.reduce((most, { counts }) => Math.max(most, counts), 0);
  if (exceeds((facts.connectors.length - 1) * mostCounts, members)) return NONE;
  const owners = groupBy(headers, ({ owner }) => owner);
  return new Set(
    headers.filter(
      (header) =>
        header.role === 'member' &&
        owners.get(header.owner)?.length === 1 &&
        isUndemanding(header, [facts], fed),
    ),
  );
}

const NONE: ReadonlySet<PlacedHeader> = new Set();

/**
 * All groups on one bus. Each ribbon of a group sits on at least one module.
 *
 * @param isThorough - those, too, that pass over a header which they could link and which no other could link then
 */
export function groupsOn(task: Task, bus: BusFacts, isThorough = true): Groups {
  const { base, free, standing } = task;
  const { connectorBodyMm } = base.limits;
  const members = bus.bus.membersPerHost ?? Number.POSITIVE_INFINITY;
  const headers = free.get(bus) ?? [];
  const kinds = [...base.kit.ribbons.values()].filter((facts) => facts.bus === bus);
  const stays = standing.filter(({ placings }) => placings.some(({ facts }) => facts.bus === bus));
  const all = [...kinds, ...stays.flatMap(({ placings }) => placings.map(({ facts }) => facts))];
  const found = new Map<string | Group, Group>();
  /** Of one ribbon, that nothing can be joined to: as placings they all differ. */
  const distinct = new Set<Group>();
  const pool: Placing[] = [];
  const roots: Group[] = stays.filter((group) => hostOf(group) !== undefined);
  let complete = true;
  const isGreedy =
    !isThorough && stays.length === 0 && kinds.every((facts) => facts.flat && !isChainable(facts, all));
  for (const facts of kinds) {
    const chainable = isChainable(facts, all);
    const taken = isGreedy ? takenBy(facts, headers, members, task) : NONE;
    const room: Room = { members, hostless: chainable, taken, most: MOST };
    const { placings, complete: isAll } = placingsOf(task, facts, headers, chainable, room);
    complete &&= isAll;
    for (const placing of placings) {
      const hosts = placing.seats.filter(({ header }) => header.role === 'host').length;
      if (hosts === 0 && chainable) pool.push(placing);
      if (hosts !== 1 || (!chainable && placing.seats.length < 2)) continue;
      const group: Group = { placings: [placing], joints: [] };
      roots.push(group);
      if (!chainable && islandOf(group).length > 0) distinct.add(group);
    }
  }
  const queue = roots;
  const queued = new Set<string>();
  for (let i = 0; i < queue.length; i++) {
    if (queue.length > MOST) {
      complete = false;
      break;
    }
    const group = queue[i] as Group;
    const isNew = group.placings.some(({ kept }) => kept === undefined);
    if (isNew && hasNoLooseEnd(group)) {
      const clashes = standing.length > 0 && clashesWithStanding(task, group);
      if (!clashes) found.set(distinct.has(group) ? group : `${keyOf(group)}|${howKey(group)}`, group);
    }
    if (pool.length === 0) continue;
    const taken = new Set(headersOf(group).map(({ owner }) => owner));
    const counted = membersOf(group).reduce((sum, { counts }) => sum + counts, 0);
    for (const more of pool) {
      if (more.seats.some(({ header }) => taken.has(header.owner))) continue;
      const added = more.seats.reduce((sum, { header }) => sum + header.counts, 0);
      if (exceeds(counted + added, members)) continue;
      for (const joined of joinedTo(base, group, more)) {
        if (clashesWithin(joined, connectorBodyMm)) continue;
        const key = chainKey(joined);
        if (queued.has(key)) continue;
        queued.add(key);
        queue.push(joined);
      }
    }
  }
  return { groups: [...found.values()], complete };
}

/** Whether a new ribbon of a group would lie where something stays that it is not joined to. */
function clashesWithStanding({ base, standing }: Task, { placings }: Group): boolean {
  const others = standing.filter((each) => !each.placings.some((placing) => placings.includes(placing)));
  const there = others.flatMap(patchesOf);
  const added: Group = { placings: placings.filter(({ kept }) => kept === undefined), joints: [] };
  return patchesOf(added).some((patch) =>
    there.some((other) => clash(patch, other, base.limits.connectorBodyMm)),
  );
}

/** A group however its ribbons were found one after the other. */
function chainKey({ placings, joints }: Group): string {
  const names = placings.map(
    ({ facts, stripe, seats, kept }) =>
      `${kept ?? facts.kind.id}${stripe}${seats.map(({ connector, header }) => `${connector}>${header.owner.id}/${header.id}`)}`,
  );
  const links = joints.map(
    ({ plug, plugConnector, socket, socketConnector }) =>
      `${names[plug]}.${plugConnector}=${names[socket]}.${socketConnector}`,
  );
  return JSON.stringify([[...names].sort(byCodeUnit), links.sort(byCodeUnit)]);
}
