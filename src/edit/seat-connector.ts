import type { Layout, Seat, SeatedOn } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import {
  type Edited,
  editRibbon,
  editTake,
  refuseIfLocked,
  ribbonKindOf,
  ribbonName,
  withField,
} from './change.ts';
import { checkSeat } from './check-seat.ts';

/** Seats a connector on a header or in another ribbon's connector, off whatever it sat on before. */
export interface SeatConnector {
  readonly type: 'seat-connector';
  readonly take: string;
  readonly ribbon: string;
  readonly connector: number;
  readonly on: SeatedOn;
}

function isSame(a: SeatedOn, b: SeatedOn): boolean {
  if ('module' in a) return 'module' in b && a.module === b.module && a.header === b.header;
  if ('board' in a) return 'board' in b && a.board === b.board && a.header === b.header;
  return 'ribbon' in b && a.ribbon === b.ribbon && a.connector === b.connector;
}

/** The new seat stands where the connector's first one stood: of two on one header the first conducts. */
function reseat(seats: readonly Seat[], connector: number, on: SeatedOn): readonly Seat[] {
  const first = seats.findIndex((seat) => seat.connector === connector);
  const old = seats[first];
  if (!old) return [...seats, { connector, on }];
  const others = (seat: Seat) => seat.connector !== connector;
  const seat = isSame(old.on, on) ? old : { ...old, on };
  const reseated = [...seats.slice(0, first), seat, ...seats.slice(first).filter(others)];
  return seat === old && reseated.length === seats.length ? seats : reseated;
}

export function seatConnector(layout: Layout, edit: SeatConnector): Edited<Layout> {
  return editTake(layout, edit.take, (take) =>
    editRibbon(take, edit.ribbon, (ribbon) => {
      const kind = ribbonKindOf(layout.kit, ribbon);
      const checked = checkSeat(layout, take, kind, edit, ribbonName(ribbon));
      if (!checked.ok) return checked;
      const seats = reseat(ribbon.seats, edit.connector, edit.on);
      return refuseIfLocked(ribbon) ?? ok(withField(ribbon, 'seats', seats));
    }),
  );
}
