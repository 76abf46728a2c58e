import { exceeds } from '../geometry/exceeds.ts';
import type { PlacedHeader, PlacedRow } from '../geometry/place.ts';
import { groupBy } from '../layout/group-by.ts';
import type { BusFacts, RibbonFacts } from '../layout/kit-index.ts';
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
import { flatPlacings, isChainable, loosePlacings, type Placing, type Room } from './placing.ts';
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

/** All groups on one bus. Each ribbon of a group sits on at least one module. */
export function groupsOn(task: Task, bus: BusFacts): Groups {
  const { base, free, standing } = task;
  const { connectorBodyMm } = base.limits;
  const members = bus.bus.membersPerHost ?? Number.POSITIVE_INFINITY;
  const room: Room = { members, most: MOST };
  const headers = free.get(bus) ?? [];
  const kinds = [...base.kit.ribbons.values()].filter((facts) => facts.bus === bus);
  const stays = standing.filter(({ placings }) => placings.some(({ facts }) => facts.bus === bus));
  const all = [...kinds, ...stays.flatMap(({ placings }) => placings.map(({ facts }) => facts))];
  const found = new Map<string, Group>();
  const pool: Placing[] = [];
  const roots: Group[] = stays.filter((group) => hostOf(group) !== undefined);
  let complete = true;
  for (const facts of kinds) {
    const chainable = isChainable(facts, all);
    const { placings, complete: isAll } = placingsOf(task, facts, headers, chainable, room);
    complete &&= isAll;
    for (const placing of placings) {
      const hosts = placing.seats.filter(({ header }) => header.role === 'host').length;
      if (hosts === 0 && chainable) pool.push(placing);
      if (hosts === 1 && (chainable || placing.seats.length > 1))
        roots.push({ placings: [placing], joints: [] });
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
      const others = standing.filter(
        ({ placings }) => !placings.some((each) => group.placings.includes(each)),
      );
      const there = others.flatMap(patchesOf);
      const clashes = patchesOf({ placings: group.placings.filter(({ kept }) => !kept), joints: [] }).some(
        (patch) => there.some((other) => clash(patch, other, connectorBodyMm)),
      );
      if (!clashes) found.set(`${keyOf(group)}|${howKey(group)}`, group);
    }
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
