import type { Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, editTake, findAll, mapKept, withField } from './change.ts';

/** Locks ribbons as they lie, or lets them be changed again. */
export interface LockRibbon {
  readonly type: 'lock-ribbon';
  readonly take: string;
  readonly ribbons: readonly string[];
  readonly locked: boolean;
}

export function lockRibbon(layout: Layout, edit: LockRibbon): Edited<Layout> {
  return editTake(layout, edit.take, (take) => {
    const found = findAll(take.ribbons, edit.ribbons, 'ribbon');
    if (!found.ok) return found;
    const named = new Set(edit.ribbons);
    const ribbons = mapKept(take.ribbons, (ribbon) => {
      if (!named.has(ribbon.id) || (ribbon.locked === true) === edit.locked) return ribbon;
      return withField(ribbon, 'locked', edit.locked ? true : undefined);
    });
    return ok(withField(take, 'ribbons', ribbons));
  });
}
