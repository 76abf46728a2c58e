import type { Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, editTake, filterKept, findAll, withField } from './change.ts';
import { dropSeats } from './drop-seats.ts';

/**
 * Takes modules off the rails, pinned ones too, with the seats on them. A ribbon that is left without any seat, and
 * a lead that is left with nothing but its board, go with them unless they are locked; boards are not touched.
 */
export interface RemoveModules {
  readonly type: 'remove-modules';
  readonly take: string;
  readonly modules: readonly string[];
}

export function removeModules(layout: Layout, edit: RemoveModules): Edited<Layout> {
  return editTake(layout, edit.take, (take) => {
    const found = findAll(take.modules, edit.modules, 'module');
    if (!found.ok) return found;
    const gone = new Set(edit.modules);
    const modules = filterKept(take.modules, ({ id }) => !gone.has(id));
    const ribbons = dropSeats(take.ribbons, ({ on }) => 'module' in on && gone.has(on.module));
    return ok(withField(withField(take, 'modules', modules), 'ribbons', ribbons));
  });
}
