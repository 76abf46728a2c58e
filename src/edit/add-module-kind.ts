import type { Layout, ModuleKind } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, withField } from './change.ts';
import { refuseModuleKind, withAdded } from './kind-faults.ts';

/** Adds a kind of module to the kit, under an id that no other has (`freshKindId` makes one). */
export interface AddModuleKind {
  readonly type: 'add-module-kind';
  readonly kind: ModuleKind;
  /** Id of the kind that it comes behind; absent: the last. */
  readonly after?: string;
}

export function addModuleKind(layout: Layout, { kind, after }: AddModuleKind): Edited<Layout> {
  const { kit } = layout;
  const kinds = refuseModuleKind(kit, kind) ?? withAdded(kit.modules, kind, 'kind of module', after);
  return kinds.ok ? ok(withField(layout, 'kit', withField(kit, 'modules', kinds.value))) : kinds;
}
