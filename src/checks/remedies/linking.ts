import type { PlacedHeader } from '../../geometry/place.ts';
import { fittingRibbons } from '../../wiring/fitting.ts';
import type { HeaderJoint } from '../../wiring/harness.ts';
import type { LaidRibbon } from '../../wiring/laid-ribbon.ts';
import { onHeader } from '../../wiring/landing.ts';
import type { LinkGroup } from '../../wiring/link-group.ts';
import type { WholeTake } from '../../wiring/whole-take.ts';
import type { Mend } from '../check.ts';
import { connectorName } from '../words.ts';
import { groupOf, modulesOf, ribbonsOf } from './cause.ts';
import { headersUnder, isFree, layAnewEdits, toBuyWords } from './lay-anew.ts';
import { lift } from './lift.ts';
import { mend, type Remedy } from './remedy.ts';

const seatsIn = ({ harnesses }: LinkGroup, role: 'host' | 'member', bus: string): HeaderJoint[] =>
  harnesses
    .flatMap(({ moduleSeats }) => moduleSeats)
    .filter(({ on: { header } }) => header.role === role && header.bus.bus.id === bus);

/** Buses of a group that its note may be about. */
const busesOf = ({ links }: LinkGroup): string[] => links.map(({ bus }) => bus.bus.id);

/** How much else is seated on the owner of a seat's header: with little, lifting it parts little. */
const otherUses = ({ on: { header } }: HeaderJoint, { wiring }: WholeTake): number =>
  header.owner.headers.filter((other) => other !== header && wiring.seatedOn.has(other)).length;

/** Lifts the last members, as many as are too many. */
export const overMembers: Remedy = function* (note, take) {
  const group = groupOf(note, take);
  if (!group) return;
  const { members = 0, allowed = 0 } = note.measure ?? {};
  for (const bus of busesOf(group)) {
    const seats = seatsIn(group, 'member', bus);
    const lifted: HeaderJoint[] = [];
    let over = members - allowed;
    for (const seat of [...seats].reverse()) {
      if (over <= 0) break;
      lifted.push(seat);
      over -= seat.on.header.counts;
    }
    if (lifted.length > 0) yield lift(take, lifted);
    // Any one member that makes up for it alone: those at the ends of the ribbons and without other wiring first.
    const alone = seats.filter(
      (seat) => seat.on.header.counts >= members - allowed && !lifted.includes(seat),
    );
    const byUse = alone.sort((a, b) => otherUses(a, take) - otherUses(b, take));
    for (const seat of byUse) yield lift(take, [seat]);
  }
};

/** Lifts all hosts but one: the one that stays is the one on which most else hangs. */
export const twoHosts: Remedy = function* (note, take) {
  const group = groupOf(note, take);
  if (!group) return;
  for (const bus of busesOf(group)) {
    const seats = seatsIn(group, 'host', bus);
    const byUse = [...seats].sort((a, b) => otherUses(b, take) - otherUses(a, take) || a.order - b.order);
    for (const stays of byUse) {
      const { name } = stays.on.header.owner;
      const lifted = seats.filter((seat) => seat !== stays);
      const staysLinked = headersUnder(stays.ribbon).length > 2;
      yield lift(take, lifted, staysLinked ? `${name} stays the host.` : undefined);
    }
    yield* parting(group, take);
  }
};

/** Parts two ribbons that are plugged into one another. */
function* parting(group: LinkGroup, take: WholeTake): Generator<Mend> {
  for (const joint of take.wiring.joints) {
    if (joint.on.type === 'connector' && joint.conducts && group.ribbons.includes(joint.ribbon))
      yield lift(take, [joint]);
  }
}

/** Leaves a member on one of its links. */
export const splitMember: Remedy = function* (note, take) {
  const [module] = modulesOf(note, take);
  const ribbons = ribbonsOf(note, take);
  const seats = take.wiring.joints.filter(
    (joint): joint is HeaderJoint =>
      joint.conducts &&
      joint.on.type === 'header' &&
      joint.on.header.owner === module &&
      joint.on.header.role === 'member' &&
      ribbons.includes(joint.ribbon),
  );
  const members = (ribbon: LaidRibbon): number => headersUnder(ribbon).length;
  const bySize = [...seats].sort((a, b) => members(b.ribbon) - members(a.ribbon) || a.order - b.order);
  for (const stays of bySize) {
    const lifted = bySize.filter(({ ribbon }) => ribbon !== stays.ribbon);
    yield lift(take, lifted, `It stays on ${stays.ribbon.name}.`);
  }
};

/** Headers to try for a ribbon without a host. */
const MOST_HOSTS = 4;

/** Brings in a host: by a connector that is left free, or a ribbon of another kind over the same headers and its. */
export const noHost: Remedy = function* (note, take) {
  const group = groupOf(note, take);
  if (!group) return;
  for (const laid of ribbonsOf(note, take)) {
    const headers = headersUnder(laid);
    const hosts = freeHeaders(take, (header) => header.role === 'host' && header.bus === laid.facts.bus).sort(
      (a, b) => nearness(a, headers) - nearness(b, headers),
    );
    for (const host of hosts.slice(0, MOST_HOSTS)) {
      yield* withHeader(laid, headers, host, take);
    }
  }
};

export const freeHeaders = (
  { places, wiring }: WholeTake,
  isWanted: (header: PlacedHeader) => boolean,
): PlacedHeader[] =>
  places.modules
    .flatMap(({ headers }) => headers)
    .filter((header) => isWanted(header) && !wiring.seatedOn.has(header));

/** How far a header lies from the nearest of others, along the row and across rows, mm. */
export const nearness = (header: PlacedHeader, others: readonly PlacedHeader[]): number =>
  Math.min(
    ...others.map(
      ({ row, xMm, yMm }) =>
        Math.abs(xMm - header.xMm) +
        (row === header.row ? 0 : Math.abs(row.bottomMm + yMm - header.row.bottomMm - header.yMm)),
    ),
  );

/** A first look at whether a free connector could be where a header is; whether it may is tried. */
export function mayReach({ facts, uses }: LaidRibbon, connector: number, header: PlacedHeader): boolean {
  const atMm = (c: number): number => facts.connectors[c]?.atMm ?? 0;
  return uses.every((joints, seated) =>
    joints.every(({ conducts, on }) => {
      if (!conducts || on.type !== 'header') return true;
      const way = Math.abs(atMm(seated) - atMm(connector));
      const distance = nearness(header, [on.header]);
      return distance <= way + PLAY_MM && (!facts.flat || facts.bends || distance >= way - PLAY_MM);
    }),
  );
}

/** More than any tolerance of a seat. */
const PLAY_MM = 3;

/** A ribbon over one more header: by a free connector as it lies, else laid anew, of its own kind first. */
export function* withHeader(
  laid: LaidRibbon,
  headers: readonly PlacedHeader[],
  header: PlacedHeader,
  take: WholeTake,
): Generator<Mend> {
  const named = { type: 'seat-connector', take: take.take.id, ribbon: laid.id } as const;
  for (const [connector, joints] of laid.uses.entries()) {
    if (joints.length > 0 || !mayReach(laid, connector, header)) continue;
    const label = `Seat ${connectorName({ ribbon: laid, connector })}, on ${header.owner.name} too`;
    yield mend(label, [{ ...named, connector, on: onHeader(header) }]);
  }
  if (!isFree(laid)) return;
  const all = [...headers, header];
  const { id } = laid.facts.kind;
  const fitting = fittingRibbons(take, all);
  const own = fitting.filter(({ kind }) => kind === id);
  const others = fitting.filter(({ kind }) => kind !== id);
  for (const fit of [...own, ...others.slice(0, 2)]) {
    const kind = take.kit.ribbons.get(fit.kind)?.kind.name;
    const label =
      fit.kind === id
        ? `Lay ${laid.name} anew, on ${header.owner.name} too`
        : `Use ${kind}${toBuyWords(fit.ownedLeft)} for ${laid.name}, on ${header.owner.name} too`;
    yield mend(label, layAnewEdits(take, laid, all, fit));
  }
}
