import type { Layout, Ribbon, RibbonKind, Seat, Take } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import {
  type Edited,
  editTake,
  find,
  mapKept,
  refuse,
  refuseIfLocked,
  ribbonName,
  withField,
} from './change.ts';

/** Puts a ribbon of another kind in the place of one; what was seated stays seated. */
export interface ExchangeRibbon {
  readonly type: 'exchange-ribbon';
  readonly take: string;
  readonly ribbon: string;
  readonly kind: string;
  /**
   * The new connector for each connector in use, in the old one's order; rising. Absent: connectors keep their
   * numbers where the new kind has as many, else those in use take the first ones.
   */
  readonly connectors?: readonly number[];
}

/** Connectors that sit on something or that something is plugged into, rising. */
function usedConnectors(take: Take, ribbon: Ribbon): number[] {
  const own = ribbon.seats.map(({ connector }) => connector);
  const plugged = take.ribbons
    .flatMap(({ seats }) => seats)
    .flatMap(({ on }) => ('ribbon' in on && on.ribbon === ribbon.id ? [on.connector] : []));
  return [...new Set([...own, ...plugged])].sort((a, b) => a - b);
}

/** Old connector → new one, for those in use; a refusal where one would be left without a place. */
function renumber(
  used: readonly number[],
  before: RibbonKind,
  { kind, connectors }: { readonly kind: RibbonKind; readonly connectors: readonly number[] | undefined },
  name: string,
): Edited<ReadonlyMap<number, number>> {
  const sameNumbers = kind.connectors.length >= before.connectors.length;
  const places = connectors ?? used.map((connector, i) => (sameNumbers ? connector : i));
  const rises = places.every((place, i) => place > (places[i - 1] ?? -1));
  if (places.length !== used.length || !rises)
    return refuse(`${name} has ${used.length} connectors in use, each of which needs a place of its own`);
  if (!places.every((place) => kind.connectors[place]))
    return refuse(`${kind.name} has ${kind.connectors.length} connectors, too few for ${name}`);
  return ok(new Map(used.map((connector, i) => [connector, places[i] as number])));
}

/** Half-twists stay in their gaps as far as there are such; a loose ribbon has neither stripe edge nor twists. */
function dressed(ribbon: Ribbon, kind: RibbonKind): Ribbon {
  const isFlat = kind.lay === 'flat';
  const twists = isFlat ? ribbon.twists?.slice(0, kind.connectors.length - 1) : undefined;
  const kept = twists && twists.length === ribbon.twists?.length ? ribbon.twists : twists;
  const stripe = isFlat ? ribbon.stripe : undefined;
  return withField(withField(withField(ribbon, 'kind', kind.id), 'stripe', stripe), 'twists', kept);
}

/** The ribbons with the connectors of one numbered anew, on its own seats and on those made to it. */
function reseated(ribbon: Ribbon, changed: string, placeOf: ReadonlyMap<number, number>): Ribbon {
  const place = (connector: number): number => placeOf.get(connector) ?? connector;
  const move = (seat: Seat): Seat => {
    const own = ribbon.id === changed ? withField(seat, 'connector', place(seat.connector)) : seat;
    if (!('ribbon' in seat.on) || seat.on.ribbon !== changed) return own;
    return withField(own, 'on', withField(seat.on, 'connector', place(seat.on.connector)));
  };
  return withField(ribbon, 'seats', mapKept(ribbon.seats, move));
}

export function exchangeRibbon(layout: Layout, edit: ExchangeRibbon): Edited<Layout> {
  return editTake(layout, edit.take, (take) => {
    const found = find(take.ribbons, edit.ribbon, 'ribbon');
    if (!found.ok) return found;
    const before = find(layout.kit.ribbons, found.value.kind, 'kind of ribbon');
    if (!before.ok) return before;
    const kind = find(layout.kit.ribbons, edit.kind, 'kind of ribbon');
    if (!kind.ok) return kind;
    const locked = refuseIfLocked(found.value);
    if (locked) return locked;
    const asked = { kind: kind.value, connectors: edit.connectors };
    const places = renumber(usedConnectors(take, found.value), before.value, asked, ribbonName(found.value));
    if (!places.ok) return places;
    const ribbons = mapKept(take.ribbons, (ribbon) =>
      reseated(ribbon === found.value ? dressed(ribbon, kind.value) : ribbon, edit.ribbon, places.value),
    );
    return ok(withField(take, 'ribbons', ribbons));
  });
}
