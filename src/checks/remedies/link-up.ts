import { markLetter } from '../../edit/mark-letter.ts';
import type { PlacedHeader, PlacedModule } from '../../geometry/place.ts';
import type { BusFacts, RibbonFacts } from '../../layout/kit-index.ts';
import type { Ribbon } from '../../layout/layout.ts';
import type { Result } from '../../layout/result.ts';
import { type Berth, berthOn } from '../../wiring/berth.ts';
import type { LaidRibbon } from '../../wiring/laid-ribbon.ts';
import { onHeader } from '../../wiring/landing.ts';
import { layAlong } from '../../wiring/lay-along.ts';
import { layLoose } from '../../wiring/lay-loose.ts';
import type { Laying, WhyNot } from '../../wiring/laying.ts';
import { ownedLeft, stockRank } from '../../wiring/stock.ts';
import type { WholeTake } from '../../wiring/whole-take.ts';
import type { Mend, Note } from '../check.ts';
import { freeBuses } from '../rules/unlinked.ts';
import { connectorName, namesOf } from '../words.ts';
import { modulesOf } from './cause.ts';
import { toBuyWords } from './lay-anew.ts';
import { freeHeaders, mayReach, nearness } from './linking.ts';
import { mend, type Remedy } from './remedy.ts';

/** Members, hosts and sockets that are looked at, and the ways tried for each: the search must not grow with the take. */
const MOST_MEMBERS = 12;
const MOST_STARTS = 12;
const MOST_SEATS = 4;
const MOST_LOOSE = 4;

/** Headers by which the modules of a note could become members, in the order of the rows. */
function membersOf(note: Note, take: WholeTake): PlacedHeader[] {
  const headers = modulesOf(note, take).flatMap((module) => {
    const free = new Set(freeBuses(module, take));
    return module.headers.filter(({ role, bus }) => role === 'member' && free.has(bus));
  });
  const inPlace = headers.sort((a, b) => a.row.index - b.row.index || a.xMm - b.xMm);
  return inPlace.slice(0, MOST_MEMBERS);
}

interface HostedRibbon {
  readonly laid: LaidRibbon;
  readonly host: PlacedModule;
}

/** Ribbons by which a host of a bus is reached already, and the host. */
const hostedBy = ({ linkGroups }: WholeTake, bus: BusFacts): HostedRibbon[] =>
  linkGroups.flatMap(({ ribbons, links }) => {
    const host = links.find((link) => link.bus === bus)?.hosts[0];
    return host ? ribbons.map((laid) => ({ laid, host: host.module })) : [];
  });

/** "Link Cobble 3 and Cobble 4 to Jetty A by Shore, 3 bending". */
const label = (members: readonly PlacedHeader[], host: PlacedModule, by: string): string =>
  `Link ${namesOf(members.map(({ owner }) => owner))} to ${host.name} by ${by}`;

/** A connector that is left free on a ribbon of a host's, onto a member that it may reach. */
function* byFreeConnector(take: WholeTake, members: readonly PlacedHeader[], bus: BusFacts): Generator<Mend> {
  for (const { laid, host } of hostedBy(take, bus)) {
    if (laid.ribbon.locked) continue;
    let tried = 0;
    for (const header of members) {
      for (const [connector, joints] of laid.uses.entries()) {
        if (joints.length > 0 || tried >= MOST_SEATS || !mayReach(laid, connector, header)) continue;
        tried++;
        yield mend(label([header], host, connectorName({ ribbon: laid, connector })), [
          { type: 'seat-connector', take: take.take.id, ribbon: laid.id, connector, on: onHeader(header) },
        ]);
      }
    }
  }
}

interface NewRibbon {
  readonly facts: RibbonFacts;
  readonly laid: Pick<Ribbon, 'seats' | 'stripe'>;
  readonly members: readonly PlacedHeader[];
  readonly host: PlacedModule;
}

/** Where a new ribbon could start: at a host, in a free socket of one of its ribbons, or at a member that is to be linked. */
function startsOf(take: WholeTake, members: readonly PlacedHeader[], bus: BusFacts): Berth[] {
  const hosts = freeHeaders(take, (header) => header.role === 'host' && header.bus === bus);
  const near = hosts.sort((a, b) => nearness(a, members) - nearness(b, members)).map(berthOn);
  const sockets = hostedBy(take, bus).flatMap(({ laid }) => socketsOf(laid));
  return [...near.slice(0, MOST_STARTS / 2), ...sockets, ...members.map(berthOn)].slice(0, MOST_STARTS);
}

/** The free sockets of a ribbon, as if they lay where its nearest seat is: the laying itself knows better. */
function socketsOf(laid: LaidRibbon): Berth[] {
  const seat = laid.uses.flat().find(({ on }) => on.type === 'header');
  if (seat?.on.type !== 'header') return [];
  const place = berthOn(seat.on.header);
  return laid.uses.flatMap((joints, connector): Berth[] =>
    joints.length === 0 ? [{ ...place, on: { type: 'connector', ribbon: laid, connector } }] : [],
  );
}

/** A flat ribbon from a start as far as it goes. */
function laidFrom(
  take: WholeTake,
  facts: RibbonFacts,
  start: Berth,
  towards: 1 | -1,
  members: readonly PlacedHeader[],
): NewRibbon | undefined {
  return linkBy(
    take,
    facts,
    start,
    members,
    layAlong(take, facts.kind.id, start, towards * Number.POSITIVE_INFINITY),
  );
}

/** A ribbon as it would be laid, if all of it lands and a host comes together with members. */
function linkBy(
  take: WholeTake,
  facts: RibbonFacts,
  start: Berth,
  members: readonly PlacedHeader[],
  laying: Result<Laying, WhyNot>,
): NewRibbon | undefined {
  if (!laying.ok) return undefined;
  const { landings, gaps, seats, stripe } = laying.value;
  if (landings.some(({ on, lands }) => on && !lands) || gaps.some(({ flaws }) => flaws.length > 0))
    return undefined;
  const headers = landings.flatMap(({ on }) => (on?.type === 'header' ? [on.header] : []));
  const linked = members.filter((member) => headers.includes(member));
  const host = hostOf(take, facts.bus, start, headers);
  return host && linked.length > 0
    ? { facts, laid: { seats, ...(stripe && { stripe }) }, members: linked, host }
    : undefined;
}

function hostOf(
  take: WholeTake,
  bus: BusFacts,
  { on }: Berth,
  headers: readonly PlacedHeader[],
): PlacedModule | undefined {
  if (on.type === 'connector') return hostedBy(take, bus).find(({ laid }) => laid === on.ribbon)?.host;
  const owner = headers.find(({ role }) => role === 'host')?.owner;
  return owner?.type === 'module' ? owner : undefined;
}

const BOTH_WAYS = [1, -1] as const;

/** A hanging ribbon from a host, or a free socket of one of its ribbons, to one of the members that are nearest. */
function hangingFrom(
  take: WholeTake,
  facts: RibbonFacts,
  start: Berth,
  members: readonly PlacedHeader[],
): NewRibbon[] {
  const far = ({ row, xMm, yMm }: PlacedHeader): number =>
    Math.abs(xMm - start.xMm) + Math.abs(row.bottomMm + yMm - start.row.bottomMm - start.yMm);
  const nearest = members.toSorted((a, b) => far(a) - far(b)).slice(0, MOST_LOOSE);
  return nearest.flatMap((member) => {
    const laying = layLoose(take, facts.kind.id, [start, berthOn(member)]);
    return linkBy(take, facts, start, [member], laying) ?? [];
  });
}

/** Ribbons over several headers, and hanging ones: those at hand first, then those that link most. */
function newRibbons(take: WholeTake, members: readonly PlacedHeader[], bus: BusFacts): NewRibbon[] {
  const starts = startsOf(take, members, bus);
  const kinds = [...take.kit.ribbons.values()].filter((facts) => facts.bus === bus);
  const found = kinds.flatMap((facts) =>
    starts.flatMap((start) =>
      facts.flat
        ? BOTH_WAYS.flatMap((towards) => laidFrom(take, facts, start, towards, members) ?? [])
        : hangingFrom(take, facts, start, members),
    ),
  );
  const rank = ({ facts }: NewRibbon): number => stockRank(ownedLeft(take.take, facts.kind));
  const spare = ({ facts, laid }: NewRibbon): number => facts.connectors.length - laid.seats.length;
  // What lies in line is out of the way, what hangs is not.
  const hangs = ({ facts }: NewRibbon): number => (facts.flat ? 0 : 1);
  return found.sort(
    (a, b) =>
      rank(a) - rank(b) || b.members.length - a.members.length || hangs(a) - hangs(b) || spare(a) - spare(b),
  );
}

function layMend(take: WholeTake, { facts, laid, members, host }: NewRibbon): Mend {
  const { kind, bus } = facts;
  return mend(label(members, host, `${kind.name}${toBuyWords(ownedLeft(take.take, kind))}`), [
    { type: 'add-ribbon', take: take.take.id, kind: kind.id, ...laid, prefix: markLetter(bus.bus) },
  ]);
}

/** Links modules to a host: by a connector that its ribbon has left, by a ribbon of its own, or plugged into one. */
export const unlinked: Remedy = function* (note, take) {
  const all = membersOf(note, take);
  const buses = new Set(all.map(({ bus }) => bus));
  for (const bus of buses) {
    const members = all.filter((header) => header.bus === bus);
    yield* byFreeConnector(take, members, bus);
    for (const ribbon of newRibbons(take, members, bus)) yield layMend(take, ribbon);
  }
};
