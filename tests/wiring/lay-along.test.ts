import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkTake } from '../../src/checks/run.ts';
import { applyEdit } from '../../src/edit/apply.ts';
import type { PlacedHeader } from '../../src/geometry/place.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout, Module, Ribbon, Take } from '../../src/layout/layout.ts';
import { type Berth, berthOn } from '../../src/wiring/berth.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import type { DerivedTake } from '../../src/wiring/derived-take.ts';
import { type LayOptions, layAlong } from '../../src/wiring/lay-along.ts';
import type { Laying } from '../../src/wiring/laying.ts';
import { arbitraryLayout } from '../support/arbitrary-layout.ts';
import { deepFreeze } from '../support/deep-freeze.ts';
import { runs } from '../support/runs.ts';

/** The demo's first take with some of its ribbons, and some modules elsewhere. */
function bare(keep: readonly string[] = [], places: Readonly<Record<string, number>> = {}): Layout {
  const demo = demoLayout();
  const take = demo.takes[0] as Take;
  const modules = take.modules.map(
    (module): Module => ({ ...module, atHp: places[module.id] ?? module.atHp }),
  );
  return deepFreeze({
    ...demo,
    takes: [{ ...take, modules, ribbons: take.ribbons.filter(({ id }) => keep.includes(id)) }],
  });
}

const derive = (layout: Layout): DerivedTake => deriveTake(layout.kit, layout.takes[0] as Take);

function headerOf(derived: DerivedTake, owner: string, id: string): PlacedHeader {
  const thing = derived.places.moduleById.get(owner) ?? derived.places.boardById.get(owner);
  const header = thing?.headers.find((one) => one.id === id);
  if (!header) throw new Error(`no header ${id} on ${owner}`);
  return header;
}

/** From a module's shore header to the middle of another module, both of the demo. */
function lay(layout: Layout, kind: string, from: string, to: string, options: LayOptions = {}): Laying {
  const derived = derive(layout);
  const start = berthOn(headerOf(derived, from, 'shore'));
  const laid = layAlong(derived, kind, start, headerOf(derived, to, 'shore').xMm, options);
  if (!laid.ok) throw new Error(laid.error);
  return laid.value;
}

const seats = ({ seats: list }: Laying): string[] =>
  list.map(
    ({ connector, on }) =>
      `${connector} ${'module' in on ? on.module : 'ribbon' in on ? on.ribbon : on.board}`,
  );

const landing = ({ landings }: Laying): number[] =>
  landings.flatMap(({ connector, lands }) => (lands ? [connector] : []));

/** What the checks say of a ribbon once it is in the take, by the connectors they name. */
function complaints(layout: Layout, take: Take, kind: string, laying: Laying) {
  const edit = {
    type: 'add-ribbon',
    take: take.id,
    kind,
    prefix: 'R',
    seats: laying.seats,
    ...(laying.stripe && { stripe: laying.stripe }),
  } as const;
  const edited = applyEdit(layout, edit);
  if (!edited.ok) throw new Error(edited.error.message);
  const after = edited.value.takes.find(({ id }) => id === take.id) as Take;
  const { id } = after.ribbons[after.ribbons.length - 1] as Ribbon;
  const derived = deriveTake(edited.value.kit, after);
  return {
    derived,
    id,
    notes: checkTake(derived).filter(({ subjects }) =>
      subjects.some((one) => one.type === 'ribbon' && one.id === id),
    ),
  };
}

const SEATS = ['displaced', 'off-pitch'];
const GAPS = ['short-ribbon', 'tight-bend', 'crowded', 'no-clearance', 'lead-short'];
const NEVER = ['crossed', 'double-seat', 'wrong-connector', 'lines-differ', 'looks-away', 'wrong-axis'];

describe('a ribbon drawn along the row', () => {
  it('stiff, to the right seen from the rear: begins with its first connector, stripe down', () => {
    const laid = lay(bare(), 'shore-5', 'boulder-1', 'jetty-a');
    expect(laid.stripe).toBe('down');
    expect(seats(laid)).toEqual(['0 boulder-1', '2 cobble-2', '3 cobble-1', '4 jetty-a']);
    expect(landing(laid)).toEqual([0, 2, 3, 4]);
  });

  it('stiff, to the left: begins with its last connector', () => {
    const laid = lay(bare(), 'shore-5', 'jetty-a', 'boulder-1');
    expect(seats(laid)).toEqual(['0 boulder-1', '2 cobble-2', '3 cobble-1', '4 jetty-a']);
  });

  it('lets go of connectors again as the hand comes back', () => {
    const reach = (to: string) => seats(lay(bare(), 'shore-5', 'jetty-a', to)).length;
    expect(['boulder-1', 'cobble-2', 'cobble-1', 'jetty-a'].map(reach)).toEqual([4, 3, 2, 1]);
  });

  it('goes as far as it can for a hand infinitely far away', () => {
    const derived = derive(bare());
    const laid = layAlong(
      derived,
      'shore-5',
      berthOn(headerOf(derived, 'jetty-a', 'shore')),
      Number.POSITIVE_INFINITY,
    );
    expect(laid.ok && seats(laid.value)).toHaveLength(4);
  });

  it('shows by how much a header is missed, and leaves it free unless the hand is exactly on it', () => {
    const layout = bare([], { 'cobble-1': 15.5, 'cobble-2': 20 });
    const laid = lay(layout, 'shore-5', 'jetty-a', 'boulder-1');
    expect(seats(laid)).toEqual(['0 boulder-1', '2 cobble-2', '4 jetty-a']);
    const miss = laid.landings[3]?.miss;
    expect(miss?.header.owner.id).toBe('cobble-1');
    expect(miss?.dxMm).toBeCloseTo(2.54, 9);
    expect(miss?.displaced).toEqual({ rows: 1, pairs: 0 });
    const derived = derive(layout);
    const forced = lay(layout, 'shore-5', 'jetty-a', 'cobble-1', {
      onto: headerOf(derived, 'cobble-1', 'shore'),
    });
    expect(seats(forced)).toEqual(['3 cobble-1', '4 jetty-a']);
    expect(forced.landings.some(({ miss: off }) => off?.displaced)).toBe(true);
  });

  it('bending: as far as the hand, with its arches', () => {
    const laid = lay(bare(), 'shore-bend-4', 'cobble-4', 'jetty-b');
    expect(seats(laid)).toEqual(['0 cobble-4', '1 cobble-3', '2 boulder-2', '3 jetty-b']);
    expect(landing(laid)).toEqual([0, 1, 2, 3]);
    const [first] = laid.gaps;
    expect(first?.pair.lengthMm).toBe(36);
    expect(first?.arch?.heightMm).toBeGreaterThan(5);
  });

  it('bending: says how much is missing to the next header', () => {
    const laid = lay(bare([], { 'boulder-2': 38 }), 'shore-bend-3', 'cobble-4', 'boulder-2');
    expect(seats(laid)).toEqual(['0 cobble-4', '1 cobble-3']);
    expect(laid.landings[2]?.miss?.header.owner.id).toBe('boulder-2');
    // From 60 HP + 12.7 mm to 38 HP + 38.1 mm are 86.36 mm; there are 36 mm of ribbon.
    expect(laid.landings[2]?.miss?.missingMm).toBeCloseTo(86.36 - 36, 9);
  });

  it('turned: the stripe at the other edge, and connectors from the other end', () => {
    const laid = lay(bare(), 'shore-bend-4', 'cobble-4', 'jetty-b', { turned: true });
    expect(laid.stripe).toBe('up');
    expect(seats(laid)[0]).toMatch(/jetty-b|boulder-2/);
    expect(laid.seats.find(({ on }) => 'module' in on && on.module === 'cobble-4')?.connector).toBe(3);
  });

  it('skips connectors on the start', () => {
    const laid = lay(bare(), 'shore-7', 'boulder-1', 'jetty-a', { skip: 2 });
    expect(seats(laid)).toEqual(['2 boulder-1', '4 cobble-2', '5 cobble-1', '6 jetty-a']);
  });

  it('never brings a second host', () => {
    const laid = lay(bare(), 'shore-bend-7', 'cobble-4', 'jetty-a');
    expect(seats(laid).filter((seat) => seat.includes('jetty'))).toHaveLength(1);
  });

  it('plugs an extension into a free socket and goes on from there', () => {
    const derived = derive(bare(['t1']));
    const t1 = derived.wiring.ribbonById.get('t1');
    const jetty = headerOf(derived, 'jetty-a', 'tide');
    if (!t1) throw new Error('no ribbon');
    const socket: Berth = {
      on: { type: 'connector', ribbon: t1, connector: 0 },
      row: jetty.row,
      xMm: jetty.xMm + 58,
      yMm: 74,
    };
    const laid = layAlong(derived, 'tide-more', socket, headerOf(derived, 'jetty-b', 'tide').xMm);
    expect(laid.ok && seats(laid.value)).toEqual(['0 jetty-b', '2 t1']);
    expect(laid.ok && landing(laid.value)).toEqual([0, 2]);
    expect(laid.ok && laid.value.gaps[0]?.pair.lengthMm).toBe(174);
    expect(layAlong(derived, 'tide-3', socket, 0)).toEqual({ ok: false, error: 'no-mate' });
  });

  it('says why a ribbon cannot start', () => {
    const derived = derive(bare(['s1']));
    const why = (kind: string, owner: string, header: string) => {
      const laid = layAlong(derived, kind, berthOn(headerOf(derived, owner, header)), 0);
      return laid.ok ? undefined : laid.error;
    };
    expect(why('shore-5', 'jetty-a', 'shore')).toBe('taken');
    expect(why('shore-5', 'jetty-a', 'tide')).toBe('other-bus');
    expect(why('shore-5', 'board-1', '1')).toBe('other-bus');
  });
});

/** Every place in a take on which a ribbon can be started, and the rows' own ways. */
const startsOf = ({ places, wiring }: DerivedTake): Berth[] => [
  ...places.modules.flatMap(({ headers }) => headers.map(berthOn)),
  ...places.modules.flatMap(({ headers }) =>
    headers
      .slice(0, 1)
      .flatMap((header) =>
        wiring.ribbons.flatMap((ribbon) =>
          ribbon.uses.map(
            (_, connector): Berth => ({ ...berthOn(header), on: { type: 'connector', ribbon, connector } }),
          ),
        ),
      ),
  ),
];

/** Lays a ribbon and lets go: what was shown and what the checks then say must be the same. */
function agree(
  layout: Layout,
  kind: string,
  start: Berth,
  towards: number,
  options: LayOptions,
): Laying | undefined {
  const take = layout.takes[0] as Take;
  const before = deriveTake(layout.kit, take);
  const laid = layAlong(before, kind, start, towards, options);
  if (!laid.ok) return undefined;
  const { value: laying } = laid;
  const { derived, id, notes } = complaints(layout, take, kind, laying);
  const said = (...checks: string[]) => notes.filter(({ check }) => checks.includes(check));
  const names = (...checks: string[]) =>
    said(...checks)
      .map(({ check }) => check)
      .sort();
  expect(said(...NEVER).map(({ headline }) => headline)).toEqual([]);

  const mine = derived.wiring.ribbonById.get(id);
  const strays = mine ? (derived.lies.get(mine)?.strays ?? []) : [];
  const missed = laying.landings.filter(({ on, miss }) => on && miss && !laying.facts.bends);
  expect(missed.map(({ connector, miss }) => [connector, miss?.dxMm, miss?.dyMm, miss?.displaced])).toEqual(
    strays.map(({ seat, dxMm, dyMm, displaced }) => [seat.connector, dxMm, dyMm, displaced]),
  );
  const named = (displaced: boolean) =>
    strays.filter((stray) => (stray.displaced !== undefined) === displaced).length;
  expect(names('displaced')).toHaveLength(named(true));
  expect(names('off-pitch').length).toBeLessThanOrEqual(named(false));

  const pairs = derived.neighbours.filter(({ a, b }) => a.ribbon === mine || b.ribbon === mine);
  expect(laying.gaps.map(({ pair }) => pair.lengthMm.toFixed(6)).sort()).toEqual(
    pairs.map(({ lengthMm }) => lengthMm.toFixed(6)).sort(),
  );
  expect(names(...GAPS)).toEqual(
    laying.gaps.flatMap(({ flaws }) => flaws.filter((flaw) => flaw !== 'out-of-line')).sort(),
  );
  const bad = notes.some(({ check }) => [...SEATS, ...GAPS, 'out-of-line'].includes(check));
  expect(laying.landings.some(({ on, lands }) => on && !lands)).toBe(bad);
  return laying;
}

const options = fc.record({ turned: fc.boolean(), skip: fc.nat({ max: 2 }), exact: fc.boolean() });

/** The header exactly under the hand, if it is to be exact. */
function optionsAt(
  { places }: DerivedTake,
  start: Berth,
  towards: number,
  { exact, ...rest }: LayOptions & { exact: boolean },
): LayOptions {
  const headers = places.modules.flatMap((module) => module.headers);
  const onto = headers.find(({ xMm, row }) => Math.abs(xMm - towards) < 4 && row === start.row);
  return { ...rest, ...(exact && onto && { onto }) };
}

const hand = fc.integer({ min: -3000, max: 3000 }).map((tenths) => tenths / 10);
const pick = fc.nat({ max: 9999 });

/** The demo's kit with modules at any half HP, some of them out of line or in one another's way. */
const crowd: fc.Arbitrary<Layout> = fc
  .tuple(
    fc.array(
      fc.tuple(
        fc.constantFrom('cobble', 'cobble', 'boulder', 'jetty', 'harbour'),
        fc.constantFrom(0, 5, 5, 5, 5.5, 6, 10),
      ),
      {
        minLength: 2,
        maxLength: 12,
      },
    ),
    fc.boolean(),
    fc.constantFrom(56, 38),
  )
  .map(([row, joined, depthMm]) => {
    const demo = demoLayout();
    const take = demo.takes[0] as Take;
    let atHp = 0;
    const modules = row.map(([kind, stepHp], i): Module => {
      const module = { id: `m${i}`, kind, row: 'upper', atHp };
      atHp += kind === 'boulder' ? 10 + stepHp : stepHp;
      return module;
    });
    const [first, second] = modules.filter(({ kind }) => kind === 'jetty');
    const ribbon: Ribbon[] =
      joined && first
        ? [
            {
              id: 't',
              kind: 'tide-3',
              seats: [
                { connector: 2, on: { module: first.id, header: 'tide' } },
                ...(second ? [{ connector: 1, on: { module: second.id, header: 'tide' } }] : []),
              ],
            },
          ]
        : [];
    const rows = take.rows.map((one) => ({ ...one, depthMm }));
    return { ...demo, takes: [{ ...take, rows, supplies: [], modules, ribbons: ribbon }] };
  });

describe('what is shown to land and the notes after letting go never disagree', () => {
  it('in a crowd of modules', () => {
    const seen = { missed: 0, several: 0, flawed: 0 };
    fc.assert(
      fc.property(crowd, pick, hand, options, (layout, picked, offMm, wanted) => {
        const before = derive(layout);
        const kinds = layout.kit.ribbons.filter(({ lay: how }) => how === 'flat');
        const ways = startsOf(before).flatMap((start) =>
          kinds.flatMap(({ id }) => (layAlong(before, id, start, 0).ok ? [{ id, start }] : [])),
        );
        const way = ways[picked % Math.max(1, ways.length)];
        if (!way) return;
        const towards = way.start.xMm + offMm;
        const laid = agree(layout, way.id, way.start, towards, optionsAt(before, way.start, towards, wanted));
        if (laid?.landings.some(({ miss }) => miss)) seen.missed++;
        if ((laid?.seats.length ?? 0) > 2) seen.several++;
        if (laid?.gaps.some(({ flaws }) => flaws.length > 0)) seen.flawed++;
      }),
      runs(600),
    );
    expect(Math.min(...Object.values(seen)), JSON.stringify(seen)).toBeGreaterThan(5);
  });

  it('on an extension, through the socket to the seats beyond', () => {
    let reached = 0;
    const steps = fc.array(fc.constantFrom(5, 7.5, 10, 15, 20), { minLength: 3, maxLength: 6 });
    fc.assert(
      fc.property(steps, fc.nat({ max: 2 }), hand, options, (list, socket, offMm, wanted) => {
        const demo = demoLayout();
        const take = demo.takes[0] as Take;
        let atHp = 0;
        const modules = list.map((step, i): Module => {
          atHp += step;
          return { id: `m${i}`, kind: 'jetty', row: 'upper', atHp };
        });
        const seated = [0, 1, 2].filter((connector) => connector !== socket).slice(0, 1 + (list.length % 2));
        const t: Ribbon = {
          id: 't',
          kind: 'tide-3',
          seats: seated.map((connector, i) => ({
            connector,
            on: { module: `m${seated.length - 1 - i}`, header: 'tide' },
          })),
        };
        const layout = { ...demo, takes: [{ ...take, supplies: [], modules, ribbons: [t] }] };
        const before = derive(layout);
        const ribbon = before.wiring.ribbonById.get('t');
        if (!ribbon) throw new Error('no ribbon');
        const near = berthOn(headerOf(before, 'm0', 'tide'));
        const start: Berth = {
          ...near,
          on: { type: 'connector', ribbon, connector: socket },
          xMm: near.xMm + offMm / 10,
        };
        const towards = start.xMm + Math.abs(offMm);
        const laid = agree(layout, 'tide-more', start, towards, optionsAt(before, start, towards, wanted));
        if (laid && laid.gaps.length > 0) reached++;
      }),
      runs(200),
    );
    expect(reached).toBeGreaterThan(20);
  });

  it('in any layout', () => {
    let compared = 0;
    fc.assert(
      fc.property(arbitraryLayout, pick, hand, options, (layout, picked, offMm, wanted) => {
        const take = layout.takes[0] as Take;
        const before = deriveTake(layout.kit, take);
        const kinds = layout.kit.ribbons.filter(({ lay: how }) => how === 'flat');
        const ways = startsOf(before).flatMap((start) =>
          kinds.flatMap(({ id }) => (layAlong(before, id, start, 0).ok ? [{ id, start }] : [])),
        );
        const way = ways[picked % Math.max(1, ways.length)];
        if (!way) return;
        const towards = way.start.xMm + offMm;
        if (agree(layout, way.id, way.start, towards, optionsAt(before, way.start, towards, wanted)))
          compared++;
      }),
      runs(600),
    );
    expect(compared).toBeGreaterThan(100);
  });
});
