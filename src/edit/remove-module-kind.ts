import type { Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, filterKept, find, withField } from './change.ts';
import { refuseIfInUse } from './in-use.ts';

/** Takes a kind of module out of the kit; refused while a take uses it. */
export interface RemoveModuleKind {
  readonly type: 'remove-module-kind';
  readonly kind: string;
}

export function removeModuleKind(layout: Layout, edit: RemoveModuleKind): Edited<Layout> {
  const { kit } = layout;
  const found = find(kit.modules, edit.kind, 'kind of module');
  if (!found.ok) return found;
  const inUse = refuseIfInUse(layout, found.value, (take) => take.modules, 'module');
  const modules = filterKept(kit.modules, (kind) => kind !== found.value);
  return inUse ?? ok(withField(layout, 'kit', withField(kit, 'modules', modules)));
}
