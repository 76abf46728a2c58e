import type { Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, filterKept, find, withField } from './change.ts';
import { refuseIfInUse } from './in-use.ts';

/** Takes a kind of ribbon out of the kit; refused while a take uses it. */
export interface RemoveRibbonKind {
  readonly type: 'remove-ribbon-kind';
  readonly kind: string;
}

export function removeRibbonKind(layout: Layout, edit: RemoveRibbonKind): Edited<Layout> {
  const { kit } = layout;
  const found = find(kit.ribbons, edit.kind, 'kind of ribbon');
  if (!found.ok) return found;
  const inUse = refuseIfInUse(layout, found.value, (take) => take.ribbons, 'ribbon');
  const ribbons = filterKept(kit.ribbons, (kind) => kind !== found.value);
  return inUse ?? ok(withField(layout, 'kit', withField(kit, 'ribbons', ribbons)));
}
