import type { Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import {
  type Edited,
  editRibbon,
  editTake,
  filterKept,
  refuseIfLocked,
  ribbonKindOf,
  ribbonName,
  withField,
} from './change.ts';
import { checkConnector } from './check-seat.ts';

/** Takes a ribbon's own connector off what it sits on. The ribbon stays, also without any seat. */
export interface Unseat {
  readonly type: 'unseat';
  readonly take: string;
  readonly ribbon: string;
  readonly connector: number;
}

export function unseat(layout: Layout, edit: Unseat): Edited<Layout> {
  return editTake(layout, edit.take, (take) =>
    editRibbon(take, edit.ribbon, (ribbon) => {
      const checked = checkConnector(ribbonKindOf(layout.kit, ribbon), edit.connector, ribbonName(ribbon));
      if (!checked.ok) return checked;
      const seats = filterKept(ribbon.seats, ({ connector }) => connector !== edit.connector);
      return refuseIfLocked(ribbon) ?? ok(withField(ribbon, 'seats', seats));
    }),
  );
}
