import { count, figure, list, mm, namesOf } from '../checks/words.ts';
import { exceeds } from '../geometry/exceeds.ts';
import type { PlacedHeader, PlacedModule } from '../geometry/place.ts';
import type { RibbonFacts } from '../layout/kit-index.ts';
import { linkBuses, powerHeaders } from '../wiring/feed-plan.ts';
import { leadFor, leadWayMm } from '../wiring/lead.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import { type Group, headersOf, hostOf, membersOf } from './groups.ts';
import { atMm } from './placing.ts';
import { openWishes, type Task, type Wish } from './task.ts';

/** A module that a proposal leaves unlinked or without power, and what stands in the way: which rule, which figure. */
export interface Unlinked {
  readonly module: string;
  readonly why: string;
}

/** How far a kind of ribbon is from joining two headers. */
interface Obstacle {
  /** The less, the nearer it comes. */
  readonly mm: number;
  readonly words: string;
}

const lengthOf = (facts: RibbonFacts): number => atMm(facts, facts.connectors.length - 1);

function obstacleOf(
  facts: RibbonFacts,
  member: PlacedHeader,
  host: PlacedHeader,
  { base }: Task,
): Obstacle | undefined {
  const { limits } = base;
  const { name } = facts.kind;
  const to = host.owner.name;
  if (!facts.flat) {
    const needed = leadWayMm(member, host, base);
    const short = needed - lengthOf(facts);
    if (!exceeds(short, 0)) return undefined;
    return { mm: short, words: `${name} is ${mm(short)} too short to ${to} (lead-short)` };
  }
  if (member.row !== host.row)
    return { mm: 1e6, words: `${to} stands in another row, where no flat ribbon goes (out-of-line)` };
  if (member.axis !== 'vertical' || host.axis !== 'vertical')
    return { mm: 2e6, words: `a flat ribbon cannot leave a header that lies on its side (wrong-axis)` };
  if (member.pin1 && host.pin1 && member.pin1 !== host.pin1)
    return { mm: 9e5, words: `pin 1 is at the other end than at ${to} (stripe-reversed)` };
  const skew = Math.abs(member.yMm - host.yMm);
  const mostSkew = facts.bends ? limits.skewMm : limits.seatToleranceMm;
  if (exceeds(skew, mostSkew))
    return {
      mm: 8e5 + skew,
      words: `its header lies ${mm(skew)} higher or lower than that of ${to}, ${mm(mostSkew)} are allowed (out-of-line)`,
    };
  const distance = Math.abs(member.xMm - host.xMm);
  const lengths = facts.connectors.flatMap(({ atMm: a }, i) =>
    facts.connectors.slice(i + 1).map(({ atMm: b }) => b - a),
  );
  const longest = lengthOf(facts);
  if (exceeds(distance - longest, limits.seatToleranceMm))
    return {
      mm: distance - longest,
      words: `${name} is ${mm(distance - longest)} too short to ${to} (short-ribbon)`,
    };
  if (facts.bends)
    return {
      mm: 0,
      words: `the arches of ${name} do not fit on the way to ${to} (tight-bend, no-clearance)`,
    };
  const off = Math.min(...lengths.map((length) => Math.abs(length - distance)));
  if (!exceeds(off, limits.seatToleranceMm)) return undefined;
  return {
    mm: off,
    words: `it stands ${mm(off)} off the pitch of ${name} from ${to}, ${mm(limits.seatToleranceMm)} are allowed (off-pitch)`,
  };
}

const byNearness = (a: Obstacle, b: Obstacle): number => a.mm - b.mm;

/** Groups that would link headers. */
type GroupsOn = (headers: readonly PlacedHeader[]) => readonly Group[];

function groupsByHeader(groups: readonly Group[], open: readonly Wish[]): GroupsOn {
  const byHeader = new Map<PlacedHeader, Group[]>(
    open.flatMap(({ module }) => module.headers.map((header) => [header, []])),
  );
  if (open.length > 0)
    for (const group of groups) for (const header of headersOf(group)) byHeader.get(header)?.push(group);
  return (headers) => headers.flatMap((header) => byHeader.get(header) ?? []);
}

function whyNot(task: Task, { module, bus }: Wish, derived: WholeTake, groupsOn: GroupsOn): string {
  const own = module.headers.filter((header) => header.bus === bus && header.role === 'member');
  const hosts = task.base.places.modules.flatMap(({ headers }) =>
    headers.filter((header) => header.bus === bus && header.role === 'host' && header.owner !== module),
  );
  const kinds = [...task.base.kit.ribbons.values()].filter((facts) => facts.bus === bus);
  const { name, membersPerHost } = bus.bus;
  if (hosts.length === 0) return `no other module hosts ${name} (no-host)`;
  if (kinds.length === 0) return `the kit has no ribbon for ${name}`;
  const groups = groupsOn(own);
  const reaching = new Set(groups.flatMap((group) => hostOf(group) ?? []));
  if (reaching.size === 0) {
    const obstacles = own.flatMap((header) =>
      hosts.flatMap((host) => kinds.flatMap((facts) => obstacleOf(facts, header, host, task) ?? [])),
    );
    const [nearest] = obstacles.sort(byNearness);
    return nearest?.words ?? `no ribbon reaches it past what stands between (ribbons-clash)`;
  }
  const near = [...reaching].map(({ owner }) => owner as PlacedModule);
  const loads = derived.linkGroups.flatMap(({ links }) =>
    links
      .filter((link) => link.bus === bus)
      .map(({ hosts: at, members }) => ({
        host: at[0]?.module.id,
        members: members.reduce((sum, { counts }) => sum + counts, 0),
      })),
  );
  const isFull = ({ id }: PlacedModule): boolean =>
    membersPerHost !== undefined &&
    loads.some(({ host, members }) => host === id && members + (own[0]?.counts ?? 1) > membersPerHost);
  if (near.every(isFull))
    return `${namesOf(near)} ${near.length === 1 ? 'has' : 'have'} all ${membersPerHost} members that ${name} allows (over-members)`;
  const most = groups.reduce((max, group) => Math.max(max, membersOf(group).length), 0);
  return `any ribbon that takes it in leaves out as many others: the longest one there joins ${count(most, 'member')} to ${list(near.map((each) => each.name))}`;
}

function whyDark(module: PlacedModule, derived: WholeTake): string {
  const headers = powerHeaders(module, linkBuses(derived));
  if (headers.length === 0) return 'it has no power header, and no group that is fed takes it in (unpowered)';
  const reasons = headers
    .map((header) => leadFor(derived, header))
    .flatMap((choice) => (choice.ok ? [] : [choice.reason]));
  const [reason] = reasons;
  if (!reason) return 'no lead is left for it (unpowered)';
  if (reason.why === 'none reaches' && reason.wanted)
    return `no lead reaches a board: ${figure(reason.wanted.neededMm, 0)} mm are needed (lead-short)`;
  if (reason.why === 'a line is missing')
    return `no lead brings it ${list(reason.lines ?? [])} (missing-voltage)`;
  if (reason.why === 'no free header') return 'no header of a board is free (unpowered)';
  return 'no kind of lead fits its power header (unpowered)';
}

export function whyUnlinked(task: Task, derived: WholeTake, groups: readonly Group[]): Unlinked[] {
  const open = openWishes(task, derived);
  const groupsOn = groupsByHeader(groups, open);
  const told = new Set(open.map(({ module }) => module.id));
  const dark = derived.supplyNet.islands
    .filter(({ feeds }) => feeds.length === 0)
    .flatMap(({ modules }) => modules)
    .filter(({ id, facts }) => facts.draws.length > 0 && !told.has(id));
  return [
    ...open.map((wish) => ({
      module: wish.module.id,
      why: `Not linked: ${whyNot(task, wish, derived, groupsOn)}.`,
    })),
    ...dark.map((module) => ({ module: module.id, why: `Without power: ${whyDark(module, derived)}.` })),
  ];
}
