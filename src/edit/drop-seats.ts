import type { Ribbon, Seat } from '../layout/layout.ts';
import { filterKept, mapKept, withField } from './change.ts';

/** Whether a seat cannot stay, and on which ribbon it stands. */
type Gone = (seat: Seat, ribbon: Ribbon) => boolean;

/**
 * Ribbons without the seats that cannot stay. A ribbon that this leaves without any seat of its own is pulled out
 * too, with the plugs that sit in it, and so on; a locked one stays as a spare, as does one that had no seat
 * before.
 */
export function dropSeats(ribbons: readonly Ribbon[], isGone: Gone): readonly Ribbon[] {
  const pulledOut = new Set<string>();
  const thinned = mapKept(ribbons, (ribbon) => {
    const seats = filterKept(ribbon.seats, (seat) => !isGone(seat, ribbon));
    const isLeftBare = seats.length === 0 && ribbon.seats.length > 0;
    if (isLeftBare && !ribbon.locked) pulledOut.add(ribbon.id);
    return withField(ribbon, 'seats', seats);
  });
  return dropRibbons(thinned, pulledOut);
}

/** Ribbons without the named ones and without the seats in them. */
export function dropRibbons(ribbons: readonly Ribbon[], ids: ReadonlySet<string>): readonly Ribbon[] {
  if (ids.size === 0) return ribbons;
  const rest = ribbons.filter(({ id }) => !ids.has(id));
  return dropSeats(rest, ({ on }) => 'ribbon' in on && ids.has(on.ribbon));
}
