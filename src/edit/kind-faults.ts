import type { Issue, IssueList } from '../layout/issue.ts';
import type { Bus, Kit, Limits, ModuleKind, RibbonKind, Voltage } from '../layout/layout.ts';
import { malformationsOf } from '../layout/malformations.ts';
import { OPEN_LIMITS } from '../layout/open-limits.ts';
import { moduleKindIssues, ribbonKindIssues } from '../layout/references.ts';
import { ok } from '../layout/result.ts';
import { nouns } from '../layout/schema.ts';
import { type Edited, refuse } from './change.ts';

/*
 * What a kit could not be saved with, judged by the very rules by which a file is opened: an edit that breaks them
 * is refused, so that no layout is ever made that cannot be opened again.
 */

const words = ({ path, message }: Issue): string => (path ? `${path}: ${message}` : message);

const refuseFor = (name: unknown, { kept: [first] }: IssueList) =>
  first && refuse(`${named(name)} cannot be kept so: ${words(first)}`);

const named = (name: unknown): string => (typeof name === 'string' && name.trim()) || 'It';

const refuseIfNameless = ({ name }: { readonly name: string }, what: string) =>
  name.trim() ? undefined : refuse(`A ${what} needs a name`);

/** The refusal of a bus that could not be saved. */
export const refuseBus = (bus: Bus) =>
  refuseFor(bus.name, malformationsOf(bus, nouns.Bus)) ?? refuseIfNameless(bus, 'bus');

/** The refusal of a voltage that could not be saved. */
export const refuseVoltage = (voltage: Voltage) =>
  refuseFor(voltage.id, malformationsOf(voltage, nouns.Voltage));

/** The refusal of limits that could not be saved. */
export const refuseLimits = (limits: Partial<Limits>) =>
  refuseFor('The limits', malformationsOf(limits, nouns.Limits));

/** The refusal of a kind of module that could not be saved in this kit. */
export const refuseModuleKind = (kit: Kit, kind: ModuleKind) =>
  refuseFor(kind.name, malformationsOf(kind, nouns.ModuleKind)) ??
  refuseFor(kind.name, moduleKindIssues(kit, kind)) ??
  refuseIfNameless(kind, 'kind of module');

/** The refusal of a kind of ribbon that could not be saved in this kit. */
export const refuseRibbonKind = (kit: Kit, kind: RibbonKind) =>
  refuseFor(kind.name, malformationsOf(kind, nouns.RibbonKind)) ??
  refuseFor(kind.name, ribbonKindIssues(kit, kind)) ??
  refuseIfNameless(kind, 'kind of ribbon');

interface Identified {
  readonly id: string;
}

/**
 * The list with one thing more, behind another where one is named; refused for an id that is taken.
 *
 * @param what - what the list holds, in the singular: "bus"
 */
export function withAdded<T extends Identified>(
  list: readonly T[],
  thing: T,
  what: string,
  after?: string,
): Edited<readonly T[]> {
  const { most } = OPEN_LIMITS.kinds;
  if (list.some(({ id }) => id === thing.id)) return refuse(`There is already a ${what} "${thing.id}"`);
  if (list.length >= most) return refuse(`A kit holds at most ${most} of one sort`);
  if (after === undefined) return ok([...list, thing]);
  const at = list.findIndex(({ id }) => id === after) + 1;
  if (at === 0) return refuse(`There is no ${what} "${after}"`);
  return ok([...list.slice(0, at), thing, ...list.slice(at)]);
}
