import type { Layout, RibbonKind } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, withField } from './change.ts';
import { refuseRibbonKind, withAdded } from './kind-faults.ts';

/** Adds a kind of ribbon to the kit, under an id that no other has (`freshKindId` makes one). */
export interface AddRibbonKind {
  readonly type: 'add-ribbon-kind';
  readonly kind: RibbonKind;
  /** Id of the kind that it comes behind; absent: the last. */
  readonly after?: string;
}

export function addRibbonKind(layout: Layout, { kind, after }: AddRibbonKind): Edited<Layout> {
  const { kit } = layout;
  const kinds = refuseRibbonKind(kit, kind) ?? withAdded(kit.ribbons, kind, 'kind of ribbon', after);
  return kinds.ok ? ok(withField(layout, 'kit', withField(kit, 'ribbons', kinds.value))) : kinds;
}
