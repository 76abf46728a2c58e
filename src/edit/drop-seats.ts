import type { Ribbon, Seat } from '../layout/layout.ts';
import { UnionFind } from '../wiring/union-find.ts';
import { filterKept, mapKept, withField } from './change.ts';

/** Whether a seat cannot stay, and on which ribbon it stands. */
type Gone = (seat: Seat, ribbon: Ribbon) => boolean;

/**
 * Ribbons that a loss of seats leaves without any module, hanging on one header of a board: a lead, with all that
 * is plugged into it. What hangs on two headers still joins something, and what never had a module was drawn so.
 */
function stranded(before: readonly Ribbon[], after: readonly Ribbon[]): ReadonlySet<string> {
  const lost = after.filter((ribbon, i) => ribbon !== before[i]);
  if (lost.length === 0) return new Set();
  const indexOf = new Map(after.map(({ id }, i) => [id, i]));
  const sets = new UnionFind(after.length);
  after.forEach(({ seats }, i) => {
    for (const { on } of seats) if ('ribbon' in on) sets.join(i, indexOf.get(on.ribbon) ?? i);
  });
  const holds = after.map(() => ({ modules: 0, boards: 0 }));
  after.forEach(({ seats }, i) => {
    const hold = holds[sets.find(i)];
    for (const { on } of seats) {
      if (hold && 'module' in on) hold.modules++;
      if (hold && 'board' in on) hold.boards++;
    }
  });
  const touched = new Set(lost.map(({ id }) => sets.find(indexOf.get(id) as number)));
  const isStranded = (_: Ribbon, i: number): boolean => {
    const hold = holds[sets.find(i)];
    return touched.has(sets.find(i)) && hold?.modules === 0 && hold.boards === 1;
  };
  return new Set(after.filter(isStranded).map(({ id }) => id));
}

/**
 * Ribbons without the seats that cannot stay. A ribbon that this leaves without any seat of its own is pulled out
 * too, with the plugs that sit in it, and so on; and so is a lead that is left with nothing but its board. A
 * locked one stays, as does one that had no seat before. A ribbon that still holds on one module stays: another
 * module may come in place of the one that is gone, and until then it has a loose end, which is a finding.
 */
export function dropSeats(ribbons: readonly Ribbon[], isGone: Gone): readonly Ribbon[] {
  const pulledOut = new Set<string>();
  const thinned = mapKept(ribbons, (ribbon) => {
    const seats = filterKept(ribbon.seats, (seat) => !isGone(seat, ribbon));
    const isLeftBare = seats.length === 0 && ribbon.seats.length > 0;
    if (isLeftBare && !ribbon.locked) pulledOut.add(ribbon.id);
    return withField(ribbon, 'seats', seats);
  });
  const onBoard = stranded(ribbons, thinned);
  for (const { id, locked } of thinned) if (onBoard.has(id) && !locked) pulledOut.add(id);
  return dropRibbons(thinned, pulledOut);
}

/** Ribbons without the named ones and without the seats in them. */
export function dropRibbons(ribbons: readonly Ribbon[], ids: ReadonlySet<string>): readonly Ribbon[] {
  if (ids.size === 0) return ribbons;
  const rest = ribbons.filter(({ id }) => !ids.has(id));
  return dropSeats(rest, ({ on }) => 'ribbon' in on && ids.has(on.ribbon));
}
