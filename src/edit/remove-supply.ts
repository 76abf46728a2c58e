import type { Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, editTake, find, withField } from './change.ts';
import { dropSeats } from './drop-seats.ts';

/**
 * Takes a supply out of the case with its boards and the seats on them. A ribbon that is left without any seat
 * goes as well unless it is locked.
 */
export interface RemoveSupply {
  readonly type: 'remove-supply';
  readonly take: string;
  readonly supply: string;
}

export function removeSupply(layout: Layout, edit: RemoveSupply): Edited<Layout> {
  return editTake(layout, edit.take, (take) => {
    const found = find(take.supplies, edit.supply, 'supply');
    if (!found.ok) return found;
    const boards = new Set(found.value.boards.map(({ id }) => id));
    const supplies = take.supplies.filter((supply) => supply !== found.value);
    const ribbons = dropSeats(take.ribbons, ({ on }) => 'board' in on && boards.has(on.board));
    return ok(withField(withField(take, 'supplies', supplies), 'ribbons', ribbons));
  });
}
