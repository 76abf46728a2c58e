import type { Layout, Row } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { addCopies } from './add-copies.ts';
import { type Edited, editTake, findAll } from './change.ts';
import { clipOf } from './clip-of.ts';
import { findRoom } from './find-room.ts';

/**
 * Copies modules as a group to where `findRoom` says. Ribbons that sit on nothing but these modules and one
 * another are copied with them. Copies are neither pinned nor locked.
 */
export interface DuplicateModules {
  readonly type: 'duplicate-modules';
  readonly take: string;
  readonly modules: readonly string[];
}

export function duplicateModules(layout: Layout, edit: DuplicateModules): Edited<Layout> {
  return editTake(layout, edit.take, (take) => {
    const originals = findAll(take.modules, edit.modules, 'module');
    if (!originals.ok) return originals;
    if (originals.value.length === 0) return ok(take);
    const group = clipOf(layout.kit, take, originals.value);
    const home = take.rows.indexOf(group.rows[0] as Row);
    const room = findRoom(layout.kit, take, group, home, 'beside the originals');
    return addCopies(layout.kit, take, group, room);
  });
}
