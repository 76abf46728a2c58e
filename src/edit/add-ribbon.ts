import type { Layout, Ribbon, Seat, StripeEdge } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, editTake, find, withField } from './change.ts';
import { checkSeat } from './check-seat.ts';
import { freshRibbonId, labelsOf, nextMark } from './fresh.ts';

/** Lays a new ribbon of a kind; its id is what `freshRibbonId` says beforehand. */
export interface AddRibbon {
  readonly type: 'add-ribbon';
  readonly take: string;
  readonly kind: string;
  readonly seats: readonly Seat[];
  readonly stripe?: StripeEdge;
  readonly label?: string;
  /** Letters that are numbered on to make a label where none is given: `S` → `S3`. */
  readonly prefix: string;
}

export function addRibbon(layout: Layout, edit: AddRibbon): Edited<Layout> {
  return editTake(layout, edit.take, (take) => {
    const kind = find(layout.kit.ribbons, edit.kind, 'kind of ribbon');
    if (!kind.ok) return kind;
    for (const seat of edit.seats) {
      const checked = checkSeat(layout, take, kind.value, seat, kind.value.name);
      if (!checked.ok) return checked;
    }
    const ribbon: Ribbon = {
      id: freshRibbonId(take, edit.kind),
      kind: edit.kind,
      label: edit.label ?? nextMark(labelsOf(take.ribbons), edit.prefix),
      ...(edit.stripe && { stripe: edit.stripe }),
      seats: edit.seats,
    };
    return ok(withField(take, 'ribbons', [...take.ribbons, ribbon]));
  });
}
