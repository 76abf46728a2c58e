import type { Kit, Layout, Module, Ribbon, SeatedOn, Take } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, editTake, findAll, kindOf, tidyHp, withField } from './change.ts';
import { findRoom } from './find-room.ts';
import { freshId, labelsOf, nameOfCopy, nextMark } from './fresh.ts';

/**
 * Copies modules as a group to where `findRoom` says. Ribbons that sit on nothing but these modules and one
 * another are copied with them. Copies are neither pinned nor locked.
 */
export interface DuplicateModules {
  readonly type: 'duplicate-modules';
  readonly take: string;
  readonly modules: readonly string[];
}

interface Copied {
  readonly modules: readonly Module[];
  /** Id of an original → id of its copy. */
  readonly idOf: ReadonlyMap<string, string>;
}

function copyModules(kit: Kit, take: Take, originals: readonly Module[]): Copied {
  const { rows, hp } = findRoom(kit, take, originals);
  const rowIds = take.rows.map(({ id }) => id);
  const all = [...take.modules];
  const idOf = new Map<string, string>();
  for (const original of originals) {
    const kindName = kindOf(kit, original).name;
    const names = all.map((module) => module.label || kindOf(kit, module).name);
    const copy: Module = {
      ...withField(original, 'pinned', undefined),
      id: freshId(all, original.kind),
      row: rowIds[rowIds.indexOf(original.row) + rows] as string,
      atHp: tidyHp(original.atHp + hp),
      label: nameOfCopy(names, original.label || kindName, kindName),
    };
    all.push(copy);
    idOf.set(original.id, copy.id);
  }
  return { modules: all, idOf };
}

/** Ribbons that sit somewhere, and nowhere but on the modules and on one another. */
function ribbonsWithin(take: Take, modules: ReadonlyMap<string, unknown>): readonly Ribbon[] {
  let within = take.ribbons.filter(({ seats }) => seats.length > 0);
  for (;;) {
    const ids = new Set(within.map(({ id }) => id));
    const isWithin = (on: SeatedOn) =>
      'module' in on ? modules.has(on.module) : 'ribbon' in on && ids.has(on.ribbon);
    const kept = within.filter(({ seats }) => seats.every(({ on }) => isWithin(on)));
    if (kept.length === within.length) return kept;
    within = kept;
  }
}

function labelOfCopy(labels: readonly string[], label: string): string {
  const [, letters] = /^([A-Z]+)\d+$/.exec(label) ?? [];
  return letters ? nextMark(labels, letters) : nameOfCopy(labels, label);
}

function copyRibbons(take: Take, moduleIdOf: ReadonlyMap<string, string>): readonly Ribbon[] {
  const originals = ribbonsWithin(take, moduleIdOf);
  if (originals.length === 0) return take.ribbons;
  const all = [...take.ribbons];
  const idOf = new Map<string, string>();
  for (const original of originals) {
    const label = original.label && labelOfCopy(labelsOf(all), original.label);
    const id = freshId(all, original.kind);
    all.push({ ...withField(original, 'locked', undefined), id, ...(label && { label }) });
    idOf.set(original.id, id);
  }

  const onCopy = (on: SeatedOn): SeatedOn => {
    if ('module' in on) return { ...on, module: moduleIdOf.get(on.module) ?? on.module };
    if ('ribbon' in on) return { ...on, ribbon: idOf.get(on.ribbon) ?? on.ribbon };
    return on;
  };
  return all.map((ribbon, i) => {
    if (i < take.ribbons.length) return ribbon;
    return { ...ribbon, seats: ribbon.seats.map((seat) => ({ ...seat, on: onCopy(seat.on) })) };
  });
}

export function duplicateModules(layout: Layout, edit: DuplicateModules): Edited<Layout> {
  return editTake(layout, edit.take, (take) => {
    const originals = findAll(take.modules, edit.modules, 'module');
    if (!originals.ok) return originals;
    if (originals.value.length === 0) return ok(take);
    const { modules, idOf } = copyModules(layout.kit, take, originals.value);
    return ok(withField(withField(take, 'modules', modules), 'ribbons', copyRibbons(take, idOf)));
  });
}
