import type { Layout, Seat } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { deriveTake } from '../wiring/derive.ts';
import { type Landings, slideBy, slideOnto } from '../wiring/slide.ts';
import {
  type Edited,
  editRibbon,
  editTake,
  mapKept,
  refuse,
  refuseIfLocked,
  ribbonKindOf,
  ribbonName,
  withField,
} from './change.ts';
import { checkSeat } from './check-seat.ts';

/**
 * Slides a flat ribbon along the row, or into another one, with all its seats on modules: those that find a
 * header again sit on it, the others are lifted. Joints with other ribbons stay. One that slides nowhere is left
 * as it is.
 */
export interface SlideRibbon {
  readonly type: 'slide-ribbon';
  readonly take: string;
  readonly ribbon: string;
  readonly to: SlideTo;
}

/** So many headers on, rightward seen from the front; or until a seated connector sits on a header. */
type SlideTo =
  | { readonly headers: number }
  | { readonly connector: number; readonly on: { readonly module: string; readonly header: string } };

/** Of two seats of one connector the first finds the header. */
function reseat(seats: readonly Seat[], landings: Landings): readonly Seat[] {
  const left = new Map(landings);
  const moved = mapKept(seats, (seat) => {
    if (!('module' in seat.on)) return seat;
    const header = left.get(seat.connector);
    if (!header) return seat;
    const { id } = header.owner;
    const isThere = seat.on.module === id && seat.on.header === header.id;
    return isThere ? seat : { ...seat, on: { ...seat.on, module: id, header: header.id } };
  });
  return moved.filter(({ connector, on }) => !('module' in on) || left.delete(connector));
}

export function slideRibbon(layout: Layout, { take: takeId, ribbon: id, to }: SlideRibbon): Edited<Layout> {
  return editTake(layout, takeId, (take) =>
    editRibbon(take, id, (ribbon) => {
      const name = ribbonName(ribbon);
      const kind = ribbonKindOf(layout.kit, ribbon);
      if (kind.lay !== 'flat') return refuse(`${name} hangs loose and does not slide`);
      if ('headers' in to && !Number.isSafeInteger(to.headers))
        return refuse('A ribbon slides by whole headers');
      if ('connector' in to) {
        const checked = checkSeat(layout, take, kind, to, name);
        if (!checked.ok) return checked;
        const isSeated = ribbon.seats.some(
          ({ connector, on }) => connector === to.connector && 'module' in on,
        );
        if (!isSeated) return refuse(`Connector ${to.connector + 1} of ${name} sits on no module`);
      }
      const locked = refuseIfLocked(ribbon);
      if (locked) return locked;
      const derived = deriveTake(layout.kit, take);
      const landings =
        'headers' in to
          ? slideBy(derived, id, to.headers)
          : slideOnto(derived, id, to.connector, to.on.module, to.on.header);
      return ok(landings ? withField(ribbon, 'seats', reseat(ribbon.seats, landings)) : ribbon);
    }),
  );
}
