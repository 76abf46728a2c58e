import type { Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, editTake, findAll, withField } from './change.ts';
import { dropRibbons } from './drop-seats.ts';

/**
 * Takes ribbons away, locked ones too, with the plugs of others that sit in them. Another ribbon that is left
 * without any seat, or with nothing but its board, goes with them unless it is locked.
 */
export interface RemoveRibbons {
  readonly type: 'remove-ribbons';
  readonly take: string;
  readonly ribbons: readonly string[];
}

export function removeRibbons(layout: Layout, edit: RemoveRibbons): Edited<Layout> {
  return editTake(layout, edit.take, (take) => {
    const found = findAll(take.ribbons, edit.ribbons, 'ribbon');
    if (!found.ok) return found;
    return ok(withField(take, 'ribbons', dropRibbons(take.ribbons, new Set(edit.ribbons))));
  });
}
