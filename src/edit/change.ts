import { placeTake } from '../geometry/place.ts';
import { indexKit, resolve } from '../layout/kit-index.ts';
import type { Kit, Layout, Module, ModuleKind, Ribbon, RibbonKind, Take } from '../layout/layout.ts';
import { OPEN_LIMITS } from '../layout/open-limits.ts';
import { remember } from '../layout/remember.ts';
import { fail, ok, type Result } from '../layout/result.ts';

/** Why an edit was not carried out, in plain English, for the person who asked for it. */
export interface EditRefusal {
  readonly message: string;
}

export type Edited<T> = Result<T, EditRefusal>;

export const refuse = (message: string) => fail<EditRefusal>({ message });

interface Identified {
  readonly id: string;
}

/** Kept with the list: while a ribbon is laid, each move looks for the same modules in the same list. */
const indexById = remember(
  (list: readonly Identified[]): ReadonlyMap<string, Identified> =>
    new Map(list.map((item) => [item.id, item])),
);

/** @param what - what the list holds, in the singular: "module" */
export function find<T extends Identified>(list: readonly T[], id: string, what: string): Edited<T> {
  const found = indexById(list).get(id) as T | undefined;
  return found ? ok(found) : refuse(`There is no ${what} "${id}"`);
}

/** The named items, each once, in the order of the list. */
export function findAll<T extends Identified>(
  list: readonly T[],
  ids: Iterable<string>,
  what: string,
): Edited<readonly T[]> {
  const missing = new Set(ids);
  const found = list.filter(({ id }) => missing.delete(id));
  const [first] = missing;
  return first === undefined ? ok(found) : refuse(`There is no ${what} "${first}"`);
}

/**
 * The object with one field set, or without it where the value is undefined. Every other key is kept, also
 * those that this program does not know; the very object where nothing changes.
 */
export function withField<T extends object, K extends keyof T>(object: T, key: K, value: T[K]): T {
  if (object[key] === value) return object;
  if (value !== undefined) return { ...object, [key]: value };
  const { [key]: _dropped, ...rest } = object;
  return rest as T;
}

/** Like `map`, but the very list where no item changes. */
export function mapKept<T>(list: readonly T[], change: (item: T) => T): readonly T[] {
  const changed = list.map(change);
  return changed.some((item, i) => item !== list[i]) ? changed : list;
}

/** Like `filter`, but the very list where every item stays. */
export function filterKept<T>(list: readonly T[], stays: (item: T) => boolean): readonly T[] {
  const kept = list.filter(stays);
  return kept.length === list.length ? list : kept;
}

/** The layout with one take changed; everything else keeps its identity. */
export function editTake(layout: Layout, id: string, change: (take: Take) => Edited<Take>): Edited<Layout> {
  const found = find(layout.takes, id, 'take');
  if (!found.ok) return found;
  const changed = change(found.value);
  if (!changed.ok) return changed;
  const takes = mapKept(layout.takes, (take) => (take === found.value ? changed.value : take));
  return ok(withField(layout, 'takes', takes));
}

/** The take with one ribbon changed. */
export function editRibbon(take: Take, id: string, change: (ribbon: Ribbon) => Edited<Ribbon>): Edited<Take> {
  const found = find(take.ribbons, id, 'ribbon');
  if (!found.ok) return found;
  const changed = change(found.value);
  if (!changed.ok) return changed;
  const ribbons = mapKept(take.ribbons, (ribbon) => (ribbon === found.value ? changed.value : ribbon));
  return ok(withField(take, 'ribbons', ribbons));
}

export const kindOf = (kit: Kit, module: Module): ModuleKind =>
  resolve(indexKit(kit).modules, module.kind).kind;

export const ribbonKindOf = (kit: Kit, ribbon: Ribbon): RibbonKind =>
  resolve(indexKit(kit).ribbons, ribbon.kind).kind;

export const ribbonName = (ribbon: Ribbon): string => ribbon.label || ribbon.id;

/** The refusal to change a ribbon that is locked; none where it is not. */
export const refuseIfLocked = (ribbon: Ribbon) =>
  ribbon.locked ? refuse(`${ribbonName(ribbon)} is locked`) : undefined;

/** The refusal to move modules of which every one is pinned; none where one is free. */
export function refuseIfPinned(kit: Kit, take: Take, modules: readonly Module[]) {
  const [first] = modules;
  if (!first || !modules.every(({ pinned }) => pinned)) return undefined;
  if (modules.length > 1) return refuse(`All ${modules.length} modules are pinned`);
  const { name } = resolve(placeTake(indexKit(kit), take).moduleById, first.id);
  return refuse(`${name} is pinned`);
}

/** The refusal of places that a layout could not be saved with. */
export const refuseIfNoPlace = (places: readonly { readonly atHp: number }[]) =>
  places.every(({ atHp }) => Math.abs(atHp) <= OPEN_LIMITS.size.most)
    ? undefined
    : refuse('A place on the rails must be a number');

/** A place on the rail without the noise of float arithmetic: thousandths of an HP. */
export const tidyHp = (atHp: number): number => Math.round(atHp * 1000) / 1000 + 0;

/** Places closer than this are one place, HP. */
export const NOISE_HP = 0.0005;
