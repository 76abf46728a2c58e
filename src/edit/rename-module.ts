import type { Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, editTake, find, mapKept, withField } from './change.ts';

/** Gives a module a label of its own; null or a blank one takes it away. */
export interface RenameModule {
  readonly type: 'rename-module';
  readonly take: string;
  readonly module: string;
  readonly label: string | null;
}

export function renameModule(layout: Layout, edit: RenameModule): Edited<Layout> {
  const label = edit.label?.trim() || undefined;
  return editTake(layout, edit.take, (take) => {
    const found = find(take.modules, edit.module, 'module');
    if (!found.ok) return found;
    const modules = mapKept(take.modules, (module) =>
      module === found.value ? withField(module, 'label', label) : module,
    );
    return ok(withField(take, 'modules', modules));
  });
}
