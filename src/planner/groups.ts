import { ribbonWidthMm } from '../geometry/connector.ts';
import { exceeds } from '../geometry/exceeds.ts';
import type { PlacedHeader, PlacedModule, PlacedRow } from '../geometry/place.ts';
import { faceOf, GND } from '../layout/defaults.ts';
import type { RibbonFacts } from '../layout/kit-index.ts';
import { remember } from '../layout/remember.ts';
import type { DerivedTake } from '../wiring/derived-take.ts';
import { isSocket, type Landing } from '../wiring/landing.ts';
import { leadWayMm } from '../wiring/lead.ts';
import { carries } from '../wiring/supply-net.ts';
import { atMm, type Placing } from './placing.ts';

/** A plug of one ribbon in a socket of another, both by index in the group. */
interface PlugIn {
  readonly plug: number;
  readonly plugConnector: number;
  readonly socket: number;
  readonly socketConnector: number;
}

/** What a flat ribbon covers of a row, mm. */
export interface Patch {
  readonly row: PlacedRow;
  readonly fromMm: number;
  readonly toMm: number;
  readonly lowMm: number;
  readonly highMm: number;
}

/** A host (or none, where what stays has none) with the members that ribbons join to it. */
export interface Group {
  readonly placings: readonly Placing[];
  readonly joints: readonly PlugIn[];
}

/** Asked for again and again while groups are compared. */
export const headersOf = remember(({ placings }: Group): readonly PlacedHeader[] => {
  const headers: PlacedHeader[] = [];
  for (const { seats } of placings) for (const { header } of seats) headers.push(header);
  return headers;
});

export const membersOf = (group: Group): readonly PlacedHeader[] =>
  headersOf(group).filter(({ role }) => role === 'member');

export const hostOf = (group: Group): PlacedHeader | undefined =>
  headersOf(group).find(({ role }) => role === 'host');

/** Supply lines that each connector of a ribbon carries. */
export const linesAt = remember(({ bus, ways }: RibbonFacts): readonly ReadonlySet<string>[] =>
  ways.map((count) => new Set([...bus.supplyPins.keys()].filter((line) => carries(bus, count, line)))),
);

const carriesVoltage = remember((lines: ReadonlySet<string>): boolean =>
  [...lines].some((line) => line !== GND),
);

/** Modules that share a voltage through a group's ribbons. */
export const islandOf = remember(({ placings }: Group): readonly PlacedModule[] => {
  const modules: PlacedModule[] = [];
  for (const { facts, seats } of placings)
    for (const { connector, header } of seats) {
      const module = header.owner as PlacedModule;
      const lines = linesAt(facts)[connector];
      if (lines && !header.isolated && carriesVoltage(lines) && !modules.includes(module))
        modules.push(module);
    }
  return modules.length > 1 ? modules : [];
});

function patchOf({ facts, seats }: Placing): Patch | undefined {
  const [first] = seats;
  if (!facts.flat || !first) return undefined;
  const half = ribbonWidthMm(facts.conductors) / 2;
  let [fromMm, lowMm] = [first.header.xMm, first.header.yMm];
  let [toMm, highMm] = [fromMm, lowMm];
  for (const { header } of seats) {
    fromMm = Math.min(fromMm, header.xMm);
    toMm = Math.max(toMm, header.xMm);
    lowMm = Math.min(lowMm, header.yMm);
    highMm = Math.max(highMm, header.yMm);
  }
  return { row: first.header.row, fromMm, toMm, lowMm: lowMm - half, highMm: highMm + half };
}

export const patchesOf = remember(({ placings }: Group): readonly Patch[] =>
  placings.flatMap((placing) => patchOf(placing) ?? []),
);

/** Whether two flat ribbons would lie in one place, as the check of that name asks. */
export const clash = (a: Patch, b: Patch, bodyMm: number): boolean =>
  a.row === b.row &&
  exceeds(Math.min(a.toMm, b.toMm) - Math.max(a.fromMm, b.fromMm), bodyMm) &&
  exceeds(Math.min(a.highMm, b.highMm) - Math.max(a.lowMm, b.lowMm), 0);

/** The seats nearest to a connector, one to each side of it. */
function around({ seats }: Placing, connector: number): Landing[] {
  const before = seats.filter((seat) => seat.connector < connector).at(-1);
  const after = seats.find((seat) => seat.connector > connector);
  return [before, after].filter((seat) => seat !== undefined);
}

/** Whether a plug of one ribbon may be seated in a socket of another, with ribbon enough on all ways through it. */
function mayJoin(take: DerivedTake, plug: Placing, p: number, socket: Placing, s: number): boolean {
  if ((plug.facts.ways[p] ?? 0) > (socket.facts.ways[s] ?? 0)) return false;
  const bothFlat = plug.facts.flat && socket.facts.flat;
  if (bothFlat) {
    const face = ({ facts }: Placing, c: number) => faceOf(facts.connectors[c] ?? { atMm: 0 });
    if (face(plug, p) === face(socket, s) || plug.stripe !== socket.stripe) return false;
  }
  const { seatToleranceMm, skewMm } = take.limits;
  return around(plug, p).every((a) =>
    around(socket, s).every((b) => {
      const lengthMm =
        Math.abs(atMm(plug.facts, p) - atMm(plug.facts, a.connector)) +
        Math.abs(atMm(socket.facts, s) - atMm(socket.facts, b.connector));
      if (!bothFlat) return !exceeds(leadWayMm(a.header, b.header, take), lengthMm);
      if (a.header.row !== b.header.row || exceeds(Math.abs(a.header.yMm - b.header.yMm), skewMm))
        return false;
      return !exceeds(Math.abs(a.header.xMm - b.header.xMm), lengthMm + seatToleranceMm);
    }),
  );
}

/** Connectors of a group's ribbon that nothing sits on or in. */
function openEnds({ placings, joints }: Group, i: number): { sockets: number[]; plugs: number[] } {
  const { facts, seats } = placings[i] as Placing;
  const used = new Set(seats.map(({ connector }) => connector));
  for (const { plug, plugConnector, socket, socketConnector } of joints) {
    if (plug === i) used.add(plugConnector);
    if (socket === i) used.add(socketConnector);
  }
  const open = facts.connectors.map((_, c) => c).filter((c) => !used.has(c));
  return { sockets: open.filter((c) => isSocket(facts, c)), plugs: open.filter((c) => !isSocket(facts, c)) };
}

/** Every way of joining one more ribbon to a group. */
export function* joinedTo(take: DerivedTake, group: Group, more: Placing): Generator<Group> {
  const { placings, joints } = group;
  const added = placings.length;
  const own = openEnds({ placings: [more], joints: [] }, 0);
  for (const [i, placing] of placings.entries()) {
    const { sockets, plugs } = openEnds(group, i);
    const withJoint = (joint: PlugIn): Group => ({
      placings: [...placings, more],
      joints: [...joints, joint],
    });
    for (const s of sockets)
      for (const p of own.plugs)
        if (mayJoin(take, more, p, placing, s))
          yield withJoint({ plug: added, plugConnector: p, socket: i, socketConnector: s });
    for (const p of plugs)
      for (const s of own.sockets)
        if (mayJoin(take, placing, p, more, s))
          yield withJoint({ plug: i, plugConnector: p, socket: added, socketConnector: s });
  }
}

/** Whether ribbons of one group that are not joined to each other would lie in one place. */
export function clashesWithin({ placings, joints }: Group, bodyMm: number): boolean {
  const patches = placings.map(patchOf);
  const joined = new Set(joints.flatMap(({ plug, socket }) => [`${plug} ${socket}`, `${socket} ${plug}`]));
  return patches.some((a, i) =>
    patches.some((b, j) => a && b && j > i && !joined.has(`${i} ${j}`) && clash(a, b, bodyMm)),
  );
}

/** Whether each ribbon has two connectors in use. */
export const hasNoLooseEnd = (group: Group): boolean =>
  group.placings.every(({ seats }, i) => {
    const joints = group.joints.filter(({ plug, socket }) => plug === i || socket === i);
    return seats.length + joints.length !== 1;
  });
