import type { Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, editTake, findAll, mapKept, withField } from './change.ts';

/** Pins modules to their places, or lets them go. */
export interface PinModules {
  readonly type: 'pin-modules';
  readonly take: string;
  readonly modules: readonly string[];
  readonly pinned: boolean;
}

export function pinModules(layout: Layout, edit: PinModules): Edited<Layout> {
  return editTake(layout, edit.take, (take) => {
    const found = findAll(take.modules, edit.modules, 'module');
    if (!found.ok) return found;
    const named = new Set(edit.modules);
    const modules = mapKept(take.modules, (module) => {
      if (!named.has(module.id) || (module.pinned === true) === edit.pinned) return module;
      return withField(module, 'pinned', edit.pinned ? true : undefined);
    });
    return ok(withField(take, 'modules', modules));
  });
}
