import type { Note } from '../../src/checks/check.ts';
import { pressingNotes } from '../../src/checks/run.ts';
import { worstLossMv } from '../../src/electrical/best-feed.ts';
import type { Header, Kit, Ribbon, RibbonKind, Seat, Take } from '../../src/layout/layout.ts';
import { deriveTake } from '../../src/wiring/derive.ts';

/** Unlinked members, islands without power, money, ribbons, worst loss in mV. */
export type Outcome = readonly [number, number, number, number, number];

const SAME_MV = 2e-3;

export function compare(a: Outcome, b: Outcome): number {
  for (let i = 0; i < 5; i++) {
    const difference = (a[i] as number) - (b[i] as number);
    if (Math.abs(difference) > (i === 4 ? SAME_MV : 1e-6)) return difference;
  }
  return 0;
}

interface Place {
  readonly key: string;
  readonly on: Seat['on'];
  readonly bus: string;
  /** Along the row, mm; boards have none. */
  readonly xMm: number;
  readonly header?: Header;
}

/** A ribbon as it could be laid: on which headers, and of which modules. */
interface Way {
  readonly kind: string;
  readonly ribbon: Ribbon;
  readonly keys: readonly string[];
  readonly modules: readonly string[];
}

/** Much more than any tolerance. */
const FAR_MM = 5;

/** What the checks would find anyhow, seen at a glance: a ribbon too short or too stiff, its stripe at the wrong end. */
function isHopeless(
  kind: RibbonKind,
  stripe: string | undefined,
  seats: readonly (readonly [number, Place])[],
) {
  const members = seats.filter(([, { header }]) => header);
  if (kind.bus !== 'power' && members.filter(([, { header }]) => header?.role === 'host').length !== 1)
    return true;
  if (kind.lay === 'loose') return false;
  return members.some(([connector, { header, xMm }], i) => {
    if (header?.pin1 !== stripe) return true;
    const before = members[i - 1];
    if (!before) return false;
    const at = (c: number): number => kind.connectors[c]?.atMm ?? 0;
    const slack = at(connector) - at(before[0]) - Math.abs(xMm - before[1].xMm);
    return slack < -FAR_MM || (!kind.bends && slack > FAR_MM);
  });
}

/** All ways of putting connectors of a ribbon on places, two or more, in whatever order. */
function* waysOf(kind: RibbonKind, places: readonly Place[], isQuick: boolean): Generator<Way> {
  const own = places.filter(({ bus }) => bus === kind.bus);
  function* seatings(
    connector: number,
    seats: readonly (readonly [number, Place])[],
    stripe: 'down' | 'up' | undefined,
  ): Generator<readonly (readonly [number, Place])[]> {
    if (connector === kind.connectors.length) {
      if (seats.length > 1 && !(isQuick && isHopeless(kind, stripe, seats))) yield seats;
      return;
    }
    yield* seatings(connector + 1, seats, stripe);
    const last = seats[seats.length - 1]?.[1];
    for (const place of own) {
      if (seats.some(([, { key }]) => key === place.key)) continue;
      // A flat ribbon whose seats do not follow one another along the row is a fault anyhow.
      const isInOrder =
        kind.lay === 'loose' || !last || (stripe === 'up' ? place.xMm > last.xMm : place.xMm < last.xMm);
      if (isInOrder) yield* seatings(connector + 1, [...seats, [connector, place]], stripe);
    }
  }
  for (const stripe of kind.lay === 'flat' ? (['down', 'up'] as const) : [undefined])
    for (const seats of seatings(0, [], stripe))
      yield {
        kind: kind.id,
        ribbon: {
          id: '',
          kind: kind.id,
          ...(stripe && { stripe }),
          seats: seats.map(([connector, { on }]) => ({ connector, on })),
        },
        keys: seats.map(([, { key }]) => key),
        modules: seats.flatMap(([, { on }]) => ('module' in on ? [on.module] : [])),
      };
}

/** What further ribbons can take away; without plugs a ribbon that has no host never gets one. */
const OPEN = new Set(['unpowered', 'missing-voltage']);

/** A module or what a ribbon joins, which one lead feeds, or none. */
interface Island {
  readonly way?: Way;
  readonly modules: readonly string[];
}

/** A rack in which all wirings are tried. */
class Rack {
  readonly #kit: Kit;
  readonly #take: Take;
  readonly #places: readonly Place[];
  readonly #losses = new Map<Way | undefined, Map<Way, number>>();
  readonly #together = new Map<Way, Map<Way, boolean>>();
  readonly links: readonly Way[];
  readonly leads: readonly Way[];
  readonly wished: readonly string[];

  constructor(kit: Kit, take: Take, isQuick: boolean) {
    this.#kit = kit;
    this.#take = take;
    const kindOf = new Map(kit.modules.map((each) => [each.id, each]));
    const ofModules = take.modules.flatMap(({ id, kind, atHp }) =>
      (kindOf.get(kind)?.headers ?? []).map(
        (header): Place => ({
          key: `${id}/${header.id}`,
          on: { module: id, header: header.id },
          bus: header.bus,
          xMm: atHp * 5.08 + header.xMm,
          header,
        }),
      ),
    );
    const ofBoards = take.supplies.flatMap(({ boards }) =>
      boards.flatMap(({ id, headers }) =>
        headers.map(
          (header): Place => ({
            key: `${id}/${header.id}`,
            on: { board: id, header: header.id },
            bus: header.bus,
            xMm: 0,
          }),
        ),
      ),
    );
    this.#places = [...ofModules, ...ofBoards];
    const ways = kit.ribbons.flatMap((kind) =>
      [...waysOf(kind, this.#places, isQuick)].filter(({ ribbon }) => {
        const boards = ribbon.seats.filter(({ on }) => 'board' in on).length;
        // A lead goes from a board to a module: none is proposed from module to module.
        if (boards !== (kind.bus === 'power' ? 1 : 0)) return false;
        return this.notesOn([ribbon]).every(({ check }) => OPEN.has(check));
      }),
    );
    this.leads = ways.filter(({ modules, keys }) => modules.length < keys.length);
    this.links = ways.filter((way) => !this.leads.includes(way));
    const hosted = new Set(ofModules.filter(({ header }) => header?.role === 'host').map(({ bus }) => bus));
    this.wished = ofModules
      .filter(({ header, bus }) => header?.role === 'member' && hosted.has(bus))
      .map(({ key }) => key);
  }

  #derived(ribbons: readonly Ribbon[]) {
    return deriveTake(this.#kit, {
      ...this.#take,
      ribbons: ribbons.map((ribbon, i) => ({ ...ribbon, id: `r${i}` })),
    });
  }

  /** Damage and faults. */
  notesOn(ribbons: readonly Ribbon[]): readonly Note[] {
    return pressingNotes(this.#derived(ribbons));
  }

  worstMv(ribbons: readonly Ribbon[]): number {
    return worstLossMv(this.#derived(ribbons), new Set(this.#take.modules.map(({ id }) => id)));
  }

  /** Islands share nothing but the board, whose own lead has no resistance: each can be solved alone. */
  lossMv({ way }: Island, lead: Way): number {
    const known = this.#losses.get(way) ?? new Map<Way, number>();
    this.#losses.set(way, known);
    const told = known.get(lead) ?? this.worstMv([...(way ? [way.ribbon] : []), lead.ribbon]);
    known.set(lead, told);
    return told;
  }

  /** Whether the checks let two ribbons lie beside one another. */
  mayStand(a: Way, b: Way): boolean {
    const known = this.#together.get(a) ?? new Map<Way, boolean>();
    this.#together.set(a, known);
    const told = known.get(b) ?? this.notesOn([a.ribbon, b.ribbon]).every(({ check }) => OPEN.has(check));
    known.set(b, told);
    return told;
  }

  moneyFor(ways: readonly Way[]): number {
    return this.#kit.ribbons.reduce((sum, { id, owned, price }) => {
      const used = ways.filter(({ kind }) => kind === id).length;
      return sum + (owned === undefined ? 0 : Math.max(0, used - owned) * (price ?? 0));
    }, 0);
  }

  islandsOf(links: readonly Way[]): Island[] {
    const joined = new Set(links.flatMap(({ modules }) => modules));
    const draws = new Map(this.#kit.modules.map(({ id, draws: of }) => [id, Object.keys(of).length > 0]));
    const alone = this.#take.modules.filter(({ id, kind }) => !joined.has(id) && draws.get(kind));
    return [
      ...links.map((way) => ({ way, modules: way.modules })),
      ...alone.map(({ id }) => ({ modules: [id] })),
    ];
  }
}

/** The best of all ways to feed what some ribbons join, as long as it is better than what is known. */
function bestFeeding(rack: Rack, links: readonly Way[], unlinked: number, known: Outcome | undefined) {
  const islands = rack.islandsOf(links);
  const options = islands.map(({ modules }) =>
    rack.leads.filter((lead) => modules.includes(lead.modules[0] ?? '')),
  );
  let best = known;
  const look = (i: number, leads: readonly Way[], dark: number, lossMv: number): void => {
    const so: Outcome = [
      unlinked,
      dark,
      rack.moneyFor([...links, ...leads]),
      links.length + leads.length,
      lossMv,
    ];
    if (best && compare(so, best) >= 0) return;
    const island = islands[i];
    if (!island) {
      // Better as far as can be reckoned: the checks and the solver have the last word on the whole of it.
      const ribbons = [...links, ...leads].map(({ ribbon }) => ribbon);
      const notes = rack.notesOn(ribbons);
      if (!notes.every(({ check, subjects }) => check === 'unpowered' && subjects.length === 1)) return;
      const whole: Outcome = [unlinked, notes.length, so[2], so[3], rack.worstMv(ribbons)];
      if (compare(whole, so) !== 0) throw new Error(`reckoned ${so}, found ${whole}`);
      best = whole;
      return;
    }
    for (const lead of options[i] ?? []) {
      if (leads.some(({ keys }) => keys.some((key) => lead.keys.includes(key)))) continue;
      look(i + 1, [...leads, lead], dark, Math.max(lossMv, rack.lossMv(island, lead)));
    }
    // Only a module alone may stay without power.
    if (island.modules.length === 1) look(i + 1, leads, dark + 1, lossMv);
  };
  look(0, [], 0, 0);
  return best;
}

/**
 * The best wiring of a small take by trying all of them: every way of laying every ribbon, every set of these that
 * share no header, every way of feeding what they join. Knows nothing of how the planner searches: what is left out is
 * what cannot be better than what was found, by what it leaves unlinked, costs and loses already.
 *
 * @param isQuick - ways that are seen to be hopeless at a glance are not shown to the checks
 */
export function bestOfAll(kit: Kit, take: Take, isQuick = true): Outcome | undefined {
  const rack = new Rack(kit, take, isQuick);
  const links = [...rack.links].sort((a, b) => b.keys.length - a.keys.length);
  /** What ways from here on could still link. */
  const ahead: ReadonlySet<string>[] = [];
  for (let i = links.length - 1, set = new Set<string>(); i >= 0; i--) {
    set = new Set([...set, ...(links[i] as Way).keys]);
    ahead[i] = set;
  }
  let best: Outcome | undefined;
  const look = (from: number, made: readonly Way[]): void => {
    const linked = new Set(made.flatMap(({ keys }) => keys));
    const unlinked = rack.wished.filter((key) => !linked.has(key)).length;
    best = bestFeeding(rack, made, unlinked, best);
    for (let i = from; i < links.length; i++) {
      const open = rack.wished.filter((key) => !linked.has(key) && !ahead[i]?.has(key)).length;
      if (best && open > best[0]) return;
      const way = links[i] as Way;
      if (way.keys.some((key) => linked.has(key)) || !made.every((other) => rack.mayStand(other, way)))
        continue;
      look(i + 1, [...made, way]);
    }
  };
  look(0, []);
  return best;
}
