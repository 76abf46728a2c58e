import fc from 'fast-check';
import type {
  Board,
  Bus,
  Connector,
  Header,
  Kit,
  Layout,
  Module,
  ModuleKind,
  Ribbon,
  RibbonKind,
  Row,
  Seat,
  Supply,
  Take,
} from '../../src/layout/layout.ts';

/*
 * Random layouts that open, rich in wiring that is right, nearly right and wrong: places lie on a grid of half
 * an HP, headers at a few heights, so that ribbons often land or miss by a pin.
 */

const BUSES: readonly Bus[] = [
  { id: 'shore', name: 'Shore', pinout: ['-12', 'GND', 'GND', '+12', 'mix', 'strike'], membersPerHost: 3 },
  { id: 'inlet', name: 'Inlet', pinout: ['-12', 'GND', 'GND', '+12', '', 'strike'] },
  { id: 'dry', name: 'Dry', pinout: ['GND', 'left', 'right', 'GND'], membersPerHost: 2 },
  { id: 'power', name: 'Power', pinout: ['-12', '-12', 'GND', 'GND', '+12', '+12'] },
  { id: 'wide', name: 'Wide', pinout: ['-12', '-12', 'GND', 'GND', '+12', '+12', '+5', 'gate'] },
];

const busId = fc.constantFrom('shore', 'shore', 'shore', 'shore', 'power', 'power', 'inlet', 'dry', 'wide');
const optional = <K extends string, V>(key: K, value: fc.Arbitrary<V>) =>
  fc
    .option(value, { nil: undefined })
    .map((v) => (v === undefined ? {} : ({ [key]: v } as { [key in K]: V })));

/** Any data, but for the keys that no document may use. */
const anyData = fc
  .jsonValue({ maxDepth: 2 })
  .filter((data) => !/"(__proto__|constructor|prototype)":/.test(JSON.stringify(data)));

/** Keys that this program does not know, to be kept everywhere. */
const unknownKeys = fc.oneof(
  { weight: 5, arbitrary: fc.constant({}) },
  { weight: 1, arbitrary: fc.record({ later: anyData }) },
);

const pinEnd = fc.oneof(
  { weight: 8, arbitrary: fc.constant({ pin1: 'down' } as const) },
  { weight: 1, arbitrary: fc.constantFrom({ pin1: 'up' } as const, {}) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      { axis: 'horizontal', pin1: 'left' } as const,
      { axis: 'horizontal' } as const,
    ),
  },
);

const header = (id: string): fc.Arbitrary<Header> =>
  fc
    .tuple(
      busId,
      fc.constantFrom('host', 'member', 'member'),
      fc.integer({ min: 0, max: 4 }),
      fc.constantFrom(38, 38, 38, 38, 40.54, 60),
      pinEnd,
      fc.record({ keyed: fc.boolean(), passes: fc.boolean(), isolated: fc.boolean() }),
      optional('counts', fc.integer({ min: 0, max: 3 })),
      optional('zMm', fc.integer({ min: 10, max: 50 })),
      unknownKeys,
    )
    .map(([bus, role, place, yMm, ends, flags, counts, z, unknown]) => ({
      ...unknown,
      id,
      bus,
      role: role as Header['role'],
      xMm: 5.08 + place * 5.08,
      yMm,
      ...ends,
      ...flags,
      ...counts,
      ...z,
    }));

const headers = fc
  .integer({ min: 0, max: 3 })
  .chain((n) => fc.tuple(...Array.from({ length: n }, (_, i) => header(`h${i}`))));

const draw = fc.constantFrom(0, 30, 120.5, null);

const moduleKind = (id: string): fc.Arbitrary<ModuleKind> =>
  fc
    .tuple(
      fc.integer({ min: 2, max: 30 }),
      headers,
      fc.record({ '+12': draw, '-12': draw }, { requiredKeys: [] }),
      optional('depthMm', fc.integer({ min: 5, max: 70 })),
      optional('depthIs', fc.constantFrom('with-plugs', 'without-plugs')),
      optional('heightU', fc.constantFrom(3, 3, 3, 3, 1)),
      optional('known', fc.constantFrom('measured', 'guessed')),
      unknownKeys,
    )
    .map(([half, list, draws, depth, depthIs, height, known, unknown]) => ({
      ...unknown,
      id,
      name: `Kind ${id}`,
      widthHp: half / 2,
      draws,
      headers: list,
      ...depth,
      ...(depthIs as Pick<ModuleKind, 'depthIs'>),
      ...height,
      ...(known as Pick<ModuleKind, 'known'>),
    }));

const gap = fc.constantFrom(5.08, 7.62, 25.4, 30.48, 36, 50.8);

const ribbonKind = (id: string): fc.Arbitrary<RibbonKind> =>
  fc
    .tuple(
      busId,
      fc.constantFrom('stiff', 'bending', 'loose'),
      fc.array(gap, { minLength: 1, maxLength: 4 }),
      fc.array(
        fc.tuple(
          fc.constantFrom('socket', 'socket', 'socket', 'socket', 'socket', 'plug'),
          optional('face', fc.constantFrom('panel', 'panel', 'panel', 'rear')),
          optional('key', fc.constantFrom('none', 'with-stripe', 'against-stripe')),
          optional('ways', fc.constantFrom(2, 4)),
        ),
        { minLength: 5, maxLength: 5 },
      ),
      fc.boolean(),
    )
    .map(([bus, lay, gaps, kinds, plain]) => {
      let atMm = 0;
      const connectors = [0, ...gaps].map((step, i): Connector => {
        atMm += lay === 'loose' ? step * 8 : step;
        const [type, face, key, ways] = kinds[i] ?? ['socket', {}, {}, {}];
        return plain ? { atMm } : ({ atMm, type, ...face, ...key, ...ways } as Connector);
      });
      return {
        id,
        name: `Ribbon ${id}`,
        bus,
        lay: lay === 'loose' ? 'loose' : 'flat',
        ...(lay === 'bending' && { bends: true }),
        connectors,
      };
    });

const several = <T>(n: number, prefix: string, one: (id: string) => fc.Arbitrary<T>): fc.Arbitrary<T[]> =>
  fc.tuple(...Array.from({ length: n }, (_, i) => one(`${prefix}${i}`)));

const limits = fc.oneof(
  { weight: 4, arbitrary: fc.constant({}) },
  { weight: 1, arbitrary: fc.constant({ limits: { seatToleranceMm: 0.5, bendRadiusMm: 9 } }) },
);

const kit: fc.Arbitrary<Kit> = fc
  .tuple(several(4, 'k', moduleKind), several(4, 'r', ribbonKind), limits, unknownKeys)
  .map(([modules, ribbons, changed, unknown]) => ({
    ...unknown,
    voltages: [
      { id: '+12', volts: 12 },
      { id: '-12', volts: -12, dropMv: 100 },
      { id: '+5', volts: 5 },
    ],
    buses: BUSES,
    modules,
    ribbons,
    ...changed,
  }));

const row = (id: string): fc.Arbitrary<Row> =>
  fc.record(
    {
      id: fc.constant(id),
      widthHp: fc.constantFrom(40, 60),
      heightU: fc.constantFrom(3, 3, 3, 3, 1),
      depthMm: fc.constantFrom(40, 60),
      gapMm: fc.integer({ min: 0, max: 30 }),
    },
    { requiredKeys: ['id', 'widthHp', 'heightU', 'depthMm'] },
  );

const board = (id: string, rows: readonly Row[]): fc.Arbitrary<Board> =>
  fc
    .tuple(
      fc.constantFrom(...rows.map((r) => r.id)),
      fc.integer({ min: 0, max: 40 }),
      fc.constantFrom(0, 60),
      fc.constantFrom(0, 15),
      fc.constantFrom('power', 'wide', 'shore'),
      fc.constantFrom('down', 'up', undefined),
      fc.boolean(),
      optional('lead', fc.constantFrom({ lengthMm: 300, awg: 18 }, { lengthMm: 0, awg: 22 })),
      optional('limits', fc.constantFrom({ '+12': 50 }, { '+12': 400, '-12': 20 })),
    )
    .map(([rowId, at, widthMm, riseMm, bus, pin1, keyed, lead, limits]) => ({
      id,
      name: `Board ${id}`,
      row: rowId,
      xMm: at * 5.08,
      widthMm,
      riseMm,
      ...lead,
      ...limits,
      headers: [0, 1, 2].map((i) => ({ id: `p${i}`, bus, dxMm: i * 12.7, keyed, ...(pin1 && { pin1 }) })),
    }));

const supplies = (rows: readonly Row[]): fc.Arbitrary<Supply[]> =>
  fc
    .tuple(
      several(2, 'b', (id) => board(id, rows)),
      fc.integer({ min: 0, max: 2 }),
      fc.constantFrom({ '+12': 500, '-12': 500 }, { '+12': 500 }, { '+12': 900, '-12': 0, '+5': 100 }),
    )
    .map(([boards, n, ratings]) =>
      boards.slice(0, n).map((one, i) => ({ id: `s${i}`, name: `Supply ${i}`, ratings, boards: [one] })),
    );

const modules = (kinds: readonly ModuleKind[], rows: readonly Row[]): fc.Arbitrary<Module[]> =>
  fc
    .array(
      fc.tuple(
        fc.constantFrom(...kinds.map(({ id }) => id)),
        fc.constantFrom(...rows.map(({ id }) => id)),
        fc.integer({ min: -1, max: 24 }).map((fifth) => fifth * 5),
        fc.constantFrom(0, 0, 0, 0, 1),
        optional('label', fc.constantFrom('Name', 'Ünïcode ✓')),
        optional('pinned', fc.boolean()),
      ),
      { maxLength: 9 },
    )
    .map((list) =>
      list.map(([kind, rowId, half, odd, label, pinned], i) => ({
        id: `m${i}`,
        kind,
        row: rowId,
        atHp: (half + odd) / 2,
        ...label,
        ...pinned,
      })),
    );

interface End {
  readonly on: Seat['on'];
  readonly bus: string;
  /** From the left end of its row. */
  readonly xMm: number;
}

/** Everything that a seat may name. */
interface Ends {
  readonly headers: readonly End[];
  readonly ribbons: readonly { readonly id: string; readonly connectors: number }[];
}

function ribbonSeats(kind: RibbonKind, own: string, ends: Ends): fc.Arbitrary<Seat[]> {
  const fitting = ends.headers.filter(({ bus }) => bus === kind.bus);
  const choices: fc.Arbitrary<Seat['on']>[] = [
    ...(fitting.length ? [fc.constantFrom(...fitting.map(({ on }) => on))] : []),
    ...(ends.headers.length ? [fc.constantFrom(...ends.headers.map(({ on }) => on))] : []),
    ...ends.ribbons
      .filter(({ id }) => id !== own)
      .slice(0, 2)
      .map(({ id, connectors }) =>
        fc.integer({ min: 0, max: connectors - 1 }).map((connector) => ({ ribbon: id, connector })),
      ),
  ];
  if (choices.length === 0) return fc.constant([]);
  const on = fc.oneof(...choices.map((arbitrary, i) => ({ weight: i === 0 ? 8 : 1, arbitrary })));
  const connector = fc.integer({ min: 0, max: kind.connectors.length - 1 });
  const anyhow = fc.array(fc.record({ connector, on }), { maxLength: kind.connectors.length + 1 });
  const inOrder = fc
    .subarray([...fitting], { maxLength: Math.min(fitting.length, kind.connectors.length) })
    .map((some) =>
      [...some].sort((a, b) => b.xMm - a.xMm).map((end, i): Seat => ({ connector: i, on: end.on })),
    );
  return fc.oneof({ weight: 3, arbitrary: inOrder }, { weight: 1, arbitrary: anyhow });
}

function ribbons(theKit: Kit, take: Pick<Take, 'modules' | 'supplies'>): fc.Arbitrary<Ribbon[]> {
  const ofModules = take.modules.flatMap(({ id, kind, atHp }) =>
    (theKit.modules.find((candidate) => candidate.id === kind)?.headers ?? []).map((h) => ({
      on: { module: id, header: h.id },
      bus: h.bus,
      xMm: atHp * 5.08 + h.xMm,
    })),
  );
  const ofBoards = take.supplies
    .flatMap(({ boards }) => boards)
    .flatMap(({ id, xMm, headers: list }) =>
      list.map((h) => ({ on: { board: id, header: h.id }, bus: h.bus, xMm: xMm + (h.dxMm ?? 0) })),
    );
  return fc.array(fc.constantFrom(...theKit.ribbons), { maxLength: 6 }).chain((kinds) => {
    const laid = kinds.map(({ connectors }, i) => ({ id: `w${i}`, connectors: connectors.length }));
    const ends = { headers: [...ofModules, ...ofBoards], ribbons: laid };
    return fc.tuple(
      ...kinds.map((kind, i) =>
        fc
          .tuple(
            ribbonSeats(kind, `w${i}`, ends),
            fc.constantFrom('down', 'down', 'up', undefined),
            fc.array(fc.constantFrom(0, 0, 1, 2), { maxLength: kind.connectors.length - 1 }),
            fc.boolean(),
          )
          .map(([seats, stripe, twists, twisted]): Ribbon => {
            const flat = kind.lay === 'flat';
            return {
              id: `w${i}`,
              kind: kind.id,
              ...(flat && stripe && { stripe }),
              ...(flat && twisted && { twists }),
              seats,
            } as Ribbon;
          }),
      ),
    );
  });
}

const take = (theKit: Kit, id: string): fc.Arbitrary<Take> =>
  fc
    .integer({ min: 1, max: 2 })
    .chain((n) => several(n, 'row', row))
    .chain((rows) =>
      fc.tuple(supplies(rows), modules(theKit.modules, rows)).chain(([supplyList, moduleList]) =>
        fc
          .tuple(ribbons(theKit, { modules: moduleList, supplies: supplyList }), unknownKeys)
          .map(([ribbonList, unknown]) => ({
            ...unknown,
            id,
            name: `Take ${id}`,
            rows,
            supplies: supplyList,
            modules: moduleList,
            ribbons: ribbonList,
          })),
      ),
    );

/** Layouts of one or two takes, each of which opens. */
export const arbitraryLayout: fc.Arbitrary<Layout> = kit.chain((theKit) =>
  fc
    .tuple(
      fc.integer({ min: 1, max: 2 }).chain((n) => several(n, 't', (id) => take(theKit, id))),
      optional('notes', fc.string()),
      unknownKeys,
    )
    .map(([takes, notes, unknown]) => ({
      ...unknown,
      format: 'ribbonwright',
      version: 1,
      title: 'Any',
      ...notes,
      kit: theKit,
      takes,
    })),
);
