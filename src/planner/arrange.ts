import { pressingNotes } from '../checks/run.ts';
import { indexKit, type KitIndex, resolve } from '../layout/kit-index.ts';
import type { Kit, Module, Row, Take } from '../layout/layout.ts';
import { deriveTake } from '../wiring/derive.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import type { Progress, Score } from './choose.ts';
import type { Engine } from './engine.ts';
import { keepWhatDoes } from './keep-what-does.ts';
import { leastRowsOf, leastScoreOf } from './place-bounds.ts';
import { Places } from './places.ts';
import { type Proposal, proposeWiring } from './propose-wiring.ts';
import { compareScores } from './score-of.ts';
import { taskOf } from './task.ts';

/** Modules that stand side by side: a host and its members, or one module alone. */
interface Block {
  readonly modules: readonly Module[];
  /** Where its host stands, if that is pinned. */
  readonly near?: Module;
}

/** Hosts and the members that are to stand beside them. */
type Grouping = ReadonlyMap<Module, readonly Module[]>;

const isHost = (kit: KitIndex, { kind }: Module): boolean =>
  resolve(kit.modules, kind).kind.headers.some(({ role }) => role === 'host');

const hostedBy = (kit: KitIndex, { kind }: Module): readonly string[] =>
  resolve(kit.modules, kind)
    .kind.headers.filter(({ role }) => role === 'host')
    .map(({ bus }) => bus);

const memberOf = (kit: KitIndex, { kind }: Module): readonly string[] =>
  resolve(kit.modules, kind)
    .kind.headers.filter(({ role }) => role === 'member')
    .map(({ bus }) => bus);

/** Members that one ribbon of a bus joins to a host at most, and that the host takes. */
function roomOf(kit: KitIndex, bus: string): number {
  const longest = Math.max(
    0,
    ...[...kit.ribbons.values()]
      .filter(({ kind }) => kind.bus === bus)
      .map(({ connectors }) => connectors.length),
  );
  return Math.max(
    1,
    Math.min(kit.buses.get(bus)?.bus.membersPerHost ?? Number.POSITIVE_INFINITY, longest - 1),
  );
}

/** Who stands with whom now. */
function asItIs(take: WholeTake, hosts: readonly Module[]): Grouping {
  const grouping = new Map<Module, Module[]>(hosts.map((host) => [host, []]));
  for (const { links } of take.linkGroups)
    for (const { hosts: at, members } of links) {
      const list = at[0] && grouping.get(at[0].module.module);
      for (const { module } of members) if (list && !hosts.includes(module.module)) list.push(module.module);
    }
  return grouping;
}

/** Members to the hosts in turn, or each host filled before the next. */
function dealt(
  kit: KitIndex,
  hosts: readonly Module[],
  members: readonly Module[],
  inTurn: boolean,
): Grouping {
  const grouping = new Map<Module, Module[]>(hosts.map((host) => [host, []]));
  members.forEach((member) => {
    const buses = memberOf(kit, member);
    const open = hosts.filter((host) => {
      const bus = hostedBy(kit, host).find((each) => buses.includes(each));
      return bus !== undefined && (grouping.get(host)?.length ?? 0) < roomOf(kit, bus);
    });
    const fewest = [...open].sort((a, b) => (grouping.get(a)?.length ?? 0) - (grouping.get(b)?.length ?? 0));
    const host = inTurn ? fewest[0] : open[0];
    if (host) grouping.get(host)?.push(member);
  });
  return grouping;
}

/** Blocks in the order in which they look for a place: hosts of hosts, then groups, then whoever stands alone. */
function blocksOf(
  kit: KitIndex,
  grouping: Grouping,
  movable: readonly Module[],
  hostFirst: boolean,
): Block[] {
  const widthOf = ({ kind }: Module): number => resolve(kit.modules, kind).kind.widthHp;
  const grouped = new Set<Module>();
  const blocks: Block[] = [];
  const hosts = [...grouping].sort(
    ([a], [b]) => Number(memberOf(kit, a).length > 0) - Number(memberOf(kit, b).length > 0),
  );
  for (const [host, all] of hosts) {
    const members = all
      .filter((member) => movable.includes(member) && !grouped.has(member))
      .sort((a, b) => widthOf(a) - widthOf(b));
    for (const module of [host, ...members]) grouped.add(module);
    const along = hostFirst ? members : [...members].reverse();
    if (!movable.includes(host)) {
      if (along.length > 0) blocks.push({ modules: along, near: host });
    } else blocks.push({ modules: hostFirst ? [host, ...along] : [...along, host] });
  }
  const alone = movable.filter((module) => !grouped.has(module)).sort((a, b) => widthOf(b) - widthOf(a));
  return [...blocks, ...alone.map((module) => ({ modules: [module] }))];
}

function packed(
  take: WholeTake,
  blocks: readonly Block[],
  pinned: readonly Module[],
  rows: readonly Row[],
): Take | undefined {
  const places = new Places(take.kit, take.places.boards, pinned);
  for (const { modules, near } of blocks) {
    if (places.together(modules, rows, near)) continue;
    for (const module of modules)
      if (!places.together([module], rows, near ?? places.placed.at(-1))) return undefined;
  }
  const byId = new Map(places.placed.map((module) => [module.id, module]));
  return { ...take.take, modules: take.take.modules.map((module) => byId.get(module.id) ?? module) };
}

/** A trial is short: nobody waits for news of it. */
function endOf<T>(run: Generator<unknown, T>): T {
  for (let step = run.next(); ; step = run.next()) if (step.done) return step.value;
}

const OF_PLACES = new Set(['overlap', 'off-row', 'wrong-height', 'too-deep', 'over-board']);

const rowsUsed = ({ modules }: Take): number => new Set(modules.map(({ row }) => row)).size;

/** A proposal with places of its own. */
export interface Arrangement extends Proposal {
  readonly rows: number;
  /** Faults of places alone that stay: pinned modules that overlap, say. */
  readonly misplaced: number;
  /** Nothing stands in fewer rows. */
  readonly leastRows: number;
}

/** Sets of rows to try, fewest first: those with pinned modules and the first of the others. */
function rowSets(take: Take, pinned: readonly Module[]): Row[][] {
  const must = take.rows.filter(({ id }) => pinned.some(({ row }) => row === id));
  const others = take.rows.filter((row) => !must.includes(row));
  const inOrder = (set: readonly Row[]) => take.rows.filter((row) => set.includes(row));
  const sets = must.length > 0 ? [must] : [];
  for (const row of others) sets.push(inOrder([...must, row]));
  for (let more = 2; more <= others.length; more++) sets.push(inOrder([...must, ...others.slice(0, more)]));
  return sets;
}

/**
 * Places modules anew and wires them: hosts with their members side by side, in as few rows as are found to do, and of
 * several ways the one that is wired best. Pinned modules stay, and so do those on which locked ribbons sit. Proven
 * is what no places could better (`place-bounds.ts`); the worst loss never is.
 */
export function* proposeArrangement(
  kit: Kit,
  take: Take,
  engine: Engine,
): Generator<Progress, Arrangement | undefined> {
  const derived = deriveTake(kit, take);
  const index = indexKit(kit);
  const held = new Set(
    take.ribbons
      .filter(({ locked }) => locked)
      .flatMap(({ seats }) => seats.flatMap(({ on }) => ('module' in on ? [on.module] : []))),
  );
  const pinned = take.modules.filter(({ id, pinned: stays }) => stays || held.has(id));
  const movable = take.modules.filter((module) => !pinned.includes(module));
  const hosts = take.modules.filter((module) => isHost(index, module));
  const members = take.modules.filter(
    (module) => !hosts.includes(module) && memberOf(index, module).length > 0,
  );
  const groupings = [
    asItIs(derived, hosts),
    dealt(index, hosts, members, true),
    dealt(index, hosts, members, false),
  ];
  const leastRows = leastRowsOf(derived, pinned);
  const least = leastScoreOf(taskOf(kit, take));
  let best = undefined as Arrangement | undefined;
  const isBetter = (a: Arrangement, b: Arrangement): boolean => {
    const byPlaces = a.misplaced - b.misplaced || a.rows - b.rows;
    return byPlaces !== 0 ? byPlaces < 0 : compareScores(a.score, b.score) < 0;
  };
  const seen = new Set<string>();
  const tries: Take[] = [take];
  for (const rows of rowSets(take, pinned)) {
    for (const grouping of groupings)
      for (const hostFirst of [true, false]) {
        const placed = packed(derived, blocksOf(index, grouping, movable, hostFirst), pinned, rows);
        const key = JSON.stringify(placed?.modules);
        if (!placed || seen.has(key)) continue;
        seen.add(key);
        tries.push(placed);
      }
    if (tries.length > 1) break;
  }
  const compareWith = (each: Take, wired: Proposal): void => {
    const misplaced = pressingNotes(deriveTake(kit, { ...each, ribbons: [] })).filter(({ check }) =>
      OF_PLACES.has(check),
    );
    const found: Arrangement = {
      ...wired,
      rows: rowsUsed(wired.take),
      misplaced: misplaced.length,
      leastRows,
      optimal: false,
      bound: 0,
      proven: 0,
    };
    if (!best || isBetter(found, best)) best = found;
  };
  for (const [i, each] of tries.entries()) {
    yield { step: 'placing', found: i + 1, of: tries.length };
    const wired = endOf(proposeWiring(kit, each, engine, { isTrial: true }));
    if (wired) compareWith(each, wired);
  }
  // Where boards have too few headers, say, only the engine wires them; then few places must do.
  for (const each of best ? [] : tries.slice(0, MOST_WITH_ENGINE)) {
    const wired = yield* proposeWiring(kit, each, engine);
    if (wired) compareWith(each, wired);
  }
  if (!best) return undefined;
  const { modules } = best.take;
  const kept = keepWhatDoes(taskOf(kit, { ...take, modules }), best.take);
  const proven = best.rows > leastRows ? 0 : provenBy(least, best.score);
  return { ...best, take: kept, proven, bound: proven < 2 ? 0 : least.cost };
}

/** Arrangements that are wired with the engine where nothing else wires any. */
const MOST_WITH_ENGINE = 4;

/** Numbers of a score, from the first, that are as low as they can be wherever modules stand. */
function provenBy(least: Omit<Score, 'worstLossMv'>, score: Score): number {
  const levels = ['unlinked', 'unfed', 'cost', 'unpriced', 'ribbons'] as const;
  const open = levels.findIndex((level) => score[level] > least[level] + 1e-6);
  return open < 0 ? levels.length : open;
}
