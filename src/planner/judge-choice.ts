import type { Finding } from '../checks/check.ts';
import { pressingNotes } from '../checks/run.ts';
import { worstLossMv } from '../electrical/best-feed.ts';
import type { PlacedModule } from '../geometry/place.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import type { Choice, Judged } from './choose.ts';
import { type ProgramRow, togetherAtMost } from './engine.ts';
import { headersOf } from './groups.ts';
import { stopModules } from './leads.ts';
import type { Columns, PlanModel } from './model.ts';
import { derivedOf, type Task } from './task.ts';
import { writeTake } from './write-take.ts';

/** What one ribbon or its place can be blamed for; all other findings follow from what an island is made of. */
const OF_RIBBONS = new Set([
  'wrong-connector',
  'lines-differ',
  'double-seat',
  'loose-end',
  'wrong-axis',
  'looks-away',
  'crossed',
  'displaced',
  'off-pitch',
  'out-of-line',
  'short-ribbon',
  'tight-bend',
  'no-clearance',
  'ribbons-clash',
  'crowded',
  'stripe-reversed',
  'key-against',
  'lead-short',
  'over-members',
  'two-hosts',
  'no-host',
  'split-member',
]);

const OF_DEPTH = new Set(['too-deep', 'over-board']);
const OF_SUPPLIES = new Set(['overload', 'board-overload']);

export const worstLossOf = (take: WholeTake): number =>
  worstLossMv(take, new Set(take.places.modules.map(({ id }) => id)));

/** Damage and faults that a take has beyond those which its places alone make. */
export function conflictsOf({ base }: Task, take: WholeTake): Finding[] {
  const before = new Set(pressingNotes(base).map(({ key }) => key));
  return pressingNotes(take).filter(({ key }) => !before.has(key));
}

/** Judges a choice by the very checks that judge a drawing, and tells which rows would keep it from being made. */
export function judgeOf(task: Task, model: Columns & Partial<PlanModel>): (choice: Choice) => Judged {
  const boards = task.base.places.boards.length;
  return (choice) => {
    const { take, columnsOf } = writeTake(task, choice);
    const derived = derivedOf(task, take);
    const rows = conflictsOf(task, derived).flatMap((finding) =>
      rowsAgainst(finding, derived, choice, model, columnsOf, boards),
    );
    return { worstLossMv: worstLossOf(derived), broken: rows };
  };
}

function rowsAgainst(
  { check, subjects }: Finding,
  derived: WholeTake,
  choice: Choice,
  model: Columns & Partial<PlanModel>,
  columnsOf: ReadonlyMap<string, readonly number[]>,
  boards: number,
): ProgramRow[] {
  const modules = new Set(subjects.filter(({ type }) => type === 'module').map(({ id }) => id));
  const ribbons = subjects.filter(({ type }) => type === 'ribbon').map(({ id }) => id);
  if (OF_DEPTH.has(check)) {
    const all = [
      ...model.groups.filter(({ group }) => headersOf(group).some(({ owner }) => modules.has(owner.id))),
      ...model.leads.filter(({ lead }) => stopModules(lead).some(({ id }) => modules.has(id))),
    ];
    return all.map(({ column }) => togetherAtMost(0, [column]));
  }
  if (OF_SUPPLIES.has(check)) return boards < 2 ? [] : [everything(choice)];
  if (check === 'unpowered') return unpoweredRow(modules, choice, model);
  if (check === 'foreign-voltage') return [];
  if (OF_RIBBONS.has(check)) {
    const columns = new Set(ribbons.flatMap((id) => columnsOf.get(id) ?? []));
    return columns.size > 0 ? [togetherAtMost(columns.size - 1, [...columns])] : [];
  }
  const touched = islandsAround(derived, modules, ribbons);
  const columns = new Set([
    ...choice.groups
      .filter(({ group }) => headersOf(group).some(({ owner }) => touched.has(owner as PlacedModule)))
      .map(({ column }) => column),
    ...choice.leads
      .filter(({ lead }) => stopModules(lead).some((each) => touched.has(sameIn(derived, each))))
      .map(({ column }) => column),
  ]);
  const own = [...columns];
  return own.length > 0 ? [togetherAtMost(own.length - 1, own)] : [];
}

const sameIn = (derived: WholeTake, { id }: PlacedModule): PlacedModule =>
  derived.places.moduleById.get(id) as PlacedModule;

const everything = ({ groups, leads }: Choice): ProgramRow => {
  const columns = [...groups, ...leads].map(({ column }) => column);
  return togetherAtMost(columns.length - 1, columns);
};

/** All modules on whose islands a finding rests: what shares a board with them is in it, since it shares its lead. */
function islandsAround(
  derived: WholeTake,
  modules: ReadonlySet<string>,
  ribbons: readonly string[],
): Set<PlacedModule> {
  const { harnesses, places, supplyNet } = derived;
  const seeds = new Set([...modules].map((id) => places.moduleById.get(id) as PlacedModule));
  for (const { ribbons: own, moduleSeats } of harnesses)
    if (own.some(({ id }) => ribbons.includes(id)))
      for (const { on } of moduleSeats) seeds.add(on.header.owner as PlacedModule);
  const islands = new Set([...seeds].map((module) => supplyNet.islandOf(module)));
  const boards = new Set(
    [...islands].flatMap(({ feeds }) =>
      feeds.flatMap(({ harness }) => harness.boardSeats.map(({ on }) => on.header.owner)),
    ),
  );
  const beside = supplyNet.islands.filter(({ feeds }) =>
    feeds.some(({ harness }) => harness.boardSeats.some(({ on }) => boards.has(on.header.owner))),
  );
  return new Set([...islands, ...beside].flatMap(({ modules: own }) => own));
}

/** Modules that hang together want a lead, or to be linked otherwise; unless they are given up. */
function unpoweredRow(
  modules: ReadonlySet<string>,
  choice: Choice,
  model: Columns & Partial<PlanModel>,
): ProgramRow[] {
  const within = ({ id }: { readonly id: string }): boolean => modules.has(id);
  if (
    model.unfed?.some(
      ({ island, column }) => island.modules.some(within) && (choice.values[column] ?? 0) > 0.5,
    )
  )
    return [];
  const made = new Set(choice.groups.map(({ column }) => column));
  const touching = model.groups.filter(({ island }) => island.some(within));
  const own = touching.filter(({ column }) => made.has(column)).map(({ column }) => column);
  const others = touching.filter(({ column }) => !made.has(column)).map(({ column }) => column);
  const leads = model.leads.filter(({ lead }) => stopModules(lead).some(within)).map(({ column }) => column);
  return [
    {
      least: 1 - own.length,
      most: Number.POSITIVE_INFINITY,
      columns: [...leads, ...others, ...own],
      weights: [...leads.map(() => 1), ...others.map(() => 1), ...own.map(() => -1)],
    },
  ];
}
