import type { Layout, Module } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, editTake, find, kindOf, refuseIfNoPlace, tidyHp, withField } from './change.ts';
import { freshModuleId, nextInSeries } from './fresh.ts';
import { pushNeighbours } from './push.ts';

/** Puts a new module of a kind on the rails; its id is what `freshModuleId` says beforehand. */
export interface PlaceModule {
  readonly type: 'place-module';
  readonly take: string;
  readonly kind: string;
  readonly row: string;
  readonly atHp: number;
  /** Neighbours give way. */
  readonly push?: boolean;
}

export function placeModule(layout: Layout, edit: PlaceModule): Edited<Layout> {
  return editTake(layout, edit.take, (take) => {
    const kind = find(layout.kit.modules, edit.kind, 'kind of module');
    if (!kind.ok) return kind;
    const row = find(take.rows, edit.row, 'row');
    if (!row.ok) return row;
    const noPlace = refuseIfNoPlace([edit]);
    if (noPlace) return noPlace;

    const names = take.modules.map((module) => module.label || kindOf(layout.kit, module).name);
    const module: Module = {
      id: freshModuleId(take, edit.kind),
      kind: edit.kind,
      row: edit.row,
      atHp: tidyHp(edit.atHp),
      label: nextInSeries(names, kind.value.name),
    };
    const modules = [...take.modules, module];
    const pushed = edit.push ? pushNeighbours(layout.kit, take, modules, new Set([module.id])) : modules;
    return ok(withField(take, 'modules', pushed));
  });
}
