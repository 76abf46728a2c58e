import type { Layout, Ribbon, Seat } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import {
  type Edited,
  editTake,
  find,
  mapKept,
  refuse,
  refuseIfLocked,
  ribbonKindOf,
  ribbonName,
  withField,
} from './change.ts';

/**
 * Turns a flat ribbon by 180° in its plane, so that its stripe changes edges and its connectors lie in the
 * opposite order along the row.
 */
export interface TurnRibbon {
  readonly type: 'turn-ribbon';
  readonly take: string;
  readonly ribbon: string;
  /**
   * keep: every connector stays with its header, whatever that does to the order. mirror: connectors are
   * numbered from the other end, so that the same headers stay seated in order; exact where the ribbon reads
   * the same from both ends.
   */
  readonly seats: 'keep' | 'mirror';
}

/** Down is what an absent stripe means. */
const flip = (ribbon: Ribbon): Ribbon =>
  withField(ribbon, 'stripe', ribbon.stripe === 'up' ? undefined : 'up');

/** Numbers the connectors of one ribbon from its other end, on its own seats and on those made to it. */
function mirrorSeats(ribbon: Ribbon, turned: string, last: number): Ribbon {
  const mirror = (seat: Seat): Seat => {
    const own = ribbon.id === turned ? withField(seat, 'connector', last - seat.connector) : seat;
    if (!('ribbon' in seat.on) || seat.on.ribbon !== turned) return own;
    return withField(own, 'on', withField(seat.on, 'connector', last - seat.on.connector));
  };
  return withField(ribbon, 'seats', mapKept(ribbon.seats, mirror));
}

export function turnRibbon(layout: Layout, edit: TurnRibbon): Edited<Layout> {
  return editTake(layout, edit.take, (take) => {
    const found = find(take.ribbons, edit.ribbon, 'ribbon');
    if (!found.ok) return found;
    const kind = ribbonKindOf(layout.kit, found.value);
    const locked = refuseIfLocked(found.value);
    if (locked) return locked;
    if (kind.lay !== 'flat') return refuse(`${ribbonName(found.value)} hangs loose and has no way round`);

    const last = kind.connectors.length - 1;
    const ribbons = mapKept(take.ribbons, (ribbon) => {
      const turned = ribbon === found.value ? flip(ribbon) : ribbon;
      return edit.seats === 'mirror' ? mirrorSeats(turned, edit.ribbon, last) : turned;
    });
    return ok(withField(take, 'ribbons', ribbons));
  });
}
