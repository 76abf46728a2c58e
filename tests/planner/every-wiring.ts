import { checkTake } from '../../src/checks/run.ts';
import { worstLossMv } from '../../src/electrical/best-feed.ts';
import type { Kit, Ribbon, RibbonKind, Seat, Take } from '../../src/layout/layout.ts';
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
}

/** All ways of putting connectors of a ribbon on places, two or more, in whatever order. */
function* waysOf(kind: RibbonKind, places: readonly Place[]): Generator<Ribbon> {
  const stripes = kind.lay === 'flat' ? (['down', 'up'] as const) : [undefined];
  function* seatings(
    connector: number,
    seats: readonly Seat[],
    taken: ReadonlySet<string>,
    stripe: 'down' | 'up' | undefined,
    last?: Place,
  ): Generator<readonly Seat[]> {
    if (connector === kind.connectors.length) {
      if (seats.length > 1) yield seats;
      return;
    }
    yield* seatings(connector + 1, seats, taken, stripe, last);
    for (const place of places) {
      const { key, on, bus } = place;
      if (bus !== kind.bus || taken.has(key)) continue;
      // A flat ribbon whose seats do not follow one another along the row is a fault anyhow.
      const isInOrder =
        kind.lay === 'loose' || !last || (stripe === 'up' ? place.xMm > last.xMm : place.xMm < last.xMm);
      if (isInOrder)
        yield* seatings(
          connector + 1,
          [...seats, { connector, on }],
          new Set([...taken, key]),
          stripe,
          place,
        );
    }
  }
  for (const stripe of stripes)
    for (const seats of seatings(0, [], new Set(), stripe))
      yield { id: '', kind: kind.id, ...(stripe && { stripe }), seats };
}

const keysOf = ({ seats }: Ribbon): string[] => seats.map(({ on }) => JSON.stringify(on));

/** What further ribbons can take away; without plugs a ribbon that has no host never gets one. */
const OPEN = new Set(['unpowered']);

/**
 * The best wiring of a small take by trying all of them: every way of laying every ribbon, every set of these that
 * share no header, judged by the checks. Knows nothing of how the planner searches.
 */
export function bestOfAll(kit: Kit, take: Take): Outcome | undefined {
  const conflicts = (ribbons: readonly Ribbon[]) => {
    const derived = deriveTake(kit, {
      ...take,
      ribbons: ribbons.map((ribbon, i) => ({ ...ribbon, id: `r${i}` })),
    });
    const notes = checkTake(derived).filter(({ level }) => level !== 'reminder');
    return { derived, notes };
  };
  const kindOf = new Map(kit.modules.map((each) => [each.id, each]));
  const places: Place[] = [
    ...take.modules.flatMap(({ id, kind, atHp }) =>
      (kindOf.get(kind)?.headers ?? []).map(
        (header): Place => ({
          key: `${id}/${header.id}`,
          on: { module: id, header: header.id },
          bus: header.bus,
          xMm: atHp * 5.08 + header.xMm,
        }),
      ),
    ),
    ...take.supplies.flatMap(({ boards }) =>
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
    ),
  ];
  const ways = kit.ribbons.flatMap((kind) =>
    [...waysOf(kind, places)].filter((ribbon) => {
      const boards = ribbon.seats.filter(({ on }) => 'board' in on).length;
      // A lead goes from a board to a module: none is proposed from module to module.
      if (boards !== (kind.bus === 'power' ? 1 : 0)) return false;
      return conflicts([ribbon]).notes.every(({ check }) => OPEN.has(check) || check === 'missing-voltage');
    }),
  );
  const price = new Map(kit.ribbons.map((kind) => [kind.id, kind]));
  const moneyFor = (ribbons: readonly Ribbon[]): number => {
    const used = new Map<string, number>();
    for (const { kind } of ribbons) used.set(kind, (used.get(kind) ?? 0) + 1);
    return [...used].reduce((sum, [id, count]) => {
      const kind = price.get(id);
      return sum + (kind?.owned === undefined ? 0 : Math.max(0, count - kind.owned) * (kind.price ?? 0));
    }, 0);
  };
  const hosts = new Set(
    take.modules.flatMap(({ kind }) =>
      (kindOf.get(kind)?.headers ?? []).filter(({ role }) => role === 'host').map(({ bus }) => bus),
    ),
  );
  const wished = take.modules.flatMap(({ id, kind }) =>
    (kindOf.get(kind)?.headers ?? [])
      .filter(({ role, bus }) => role === 'member' && hosts.has(bus))
      .map((header) => JSON.stringify({ module: id, header: header.id })),
  );
  ways.sort((a, b) => b.seats.length - a.seats.length);
  const keys = ways.map(keysOf);
  /** What ways from here on could still link. */
  const ahead: ReadonlySet<string>[] = [];
  for (let i = ways.length - 1, set = new Set<string>(); i >= 0; i--) {
    set = new Set([...set, ...(keys[i] as string[])]);
    ahead[i] = set;
  }
  let best: Outcome | undefined;
  const look = (from: number, ribbons: readonly Ribbon[], taken: ReadonlySet<string>): void => {
    const unlinked = wished.filter((key) => !taken.has(key)).length;
    const money = moneyFor(ribbons);
    const atBest: Outcome = [unlinked, 0, money, ribbons.length, 0];
    if (!best || compare(atBest, best) < 0) {
      const { derived, notes } = conflicts(ribbons);
      const isAllowed = notes.every(({ check, subjects }) => check === 'unpowered' && subjects.length === 1);
      if (isAllowed) {
        const ids = new Set(take.modules.map(({ id }) => id));
        const outcome: Outcome = [unlinked, notes.length, money, ribbons.length, worstLossMv(derived, ids)];
        if (!best || compare(outcome, best) < 0) best = outcome;
      }
    }
    for (let i = from; i < ways.length; i++) {
      const open = wished.filter((key) => !taken.has(key) && !ahead[i]?.has(key)).length;
      if (best && compare([open, 0, money, ribbons.length + 1, 0], best) > 0) continue;
      const own = keys[i] as string[];
      if (own.some((key) => taken.has(key))) continue;
      look(i + 1, [...ribbons, ways[i] as Ribbon], new Set([...taken, ...own]));
    }
  };
  look(0, [], new Set());
  return best;
}
