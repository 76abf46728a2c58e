import fc from 'fast-check';
import { applyEdit } from '../../src/edit/apply.ts';
import type { Edit } from '../../src/edit/edit.ts';
import type {
  Acceptance,
  Board,
  Built,
  Kit,
  Layout,
  Module,
  Ribbon,
  RibbonKind,
  Row,
  Seat,
  SeatedOn,
  Supply,
  Take,
} from '../../src/layout/layout.ts';
import { malformationsOf } from '../../src/layout/malformations.ts';
import { referenceIssues } from '../../src/layout/references.ts';
import { deepFreeze } from './deep-freeze.ts';

/** Invented data of the demo's scenario: enough kinds for every edit to have something to work on. */
const plainKit: Kit = {
  voltages: [
    { id: '+12', volts: 12 },
    { id: '+15', volts: 15 },
  ],
  buses: [
    { id: 'shore', name: 'Shore', pinout: ['GND', 'GND', '+12', 'mix'] },
    { id: 'tide', name: 'Tide', pinout: ['GND', 'sum'] },
    { id: 'surf', name: 'Surf', pinout: ['GND', 'foam'] },
  ],
  modules: [
    {
      id: 'cobble',
      name: 'Cobble',
      widthHp: 5,
      draws: { '+12': 40 },
      headers: [{ id: 'shore', bus: 'shore', role: 'member', xMm: 12.7, yMm: 38, pin1: 'up' }],
    },
    {
      id: 'jetty',
      name: 'Jetty',
      widthHp: 5,
      draws: {},
      headers: [
        { id: 'shore', bus: 'shore', role: 'host', xMm: 12.7, yMm: 38, pin1: 'up' },
        { id: 'tide', bus: 'tide', role: 'member', xMm: 12.7, yMm: 90 },
      ],
    },
    { id: 'boulder', name: 'Boulder', widthHp: 15, draws: {}, headers: [] },
    { id: 'gull', name: 'Gull', widthHp: 4.5, draws: {}, headers: [] },
    { id: 'mark', name: 'Mark 2', widthHp: 8, draws: {}, headers: [] },
  ],
  ribbons: [
    {
      id: 'shore3',
      name: 'Shore 3',
      bus: 'shore',
      lay: 'flat',
      connectors: [{ atMm: 0 }, { atMm: 25.4 }, { atMm: 50.8 }],
    },
    {
      id: 'extension',
      name: 'Extension',
      bus: 'shore',
      lay: 'flat',
      connectors: [{ atMm: 0, type: 'plug' }, { atMm: 25.4 }, { atMm: 50.8 }],
    },
    { id: 'lead', name: 'Lead', bus: 'shore', lay: 'loose', connectors: [{ atMm: 0 }, { atMm: 300 }] },
  ],
};

/** The kit with a key of a newer program on a bus, a kind, a header and a connector, to be kept. */
const kit: Kit = {
  ...plainKit,
  buses: plainKit.buses.map((bus) => ({ ...bus, later: 1 })),
  modules: plainKit.modules.map((kind) => ({
    ...kind,
    later: { kept: true },
    headers: kind.headers.map((header) => ({ ...header, later: 'header' })),
  })),
  ribbons: plainKit.ribbons.map((kind) => ({
    ...kind,
    later: null,
    connectors: kind.connectors.map((connector, i) => (i === 0 ? { ...connector, later: [0] } : connector)),
  })),
};

const board: Board = {
  id: 'board',
  name: 'Board',
  row: 'top',
  xMm: 200,
  headers: [{ id: 'p1', bus: 'shore' }],
};
const supply: Supply = { id: 'supply', name: 'Supply', ratings: { '+12': 1000 }, boards: [board] };

export const row = (id: string, widthHp = 60, more: Partial<Row> = {}): Row => ({
  id,
  widthHp,
  heightU: 3,
  depthMm: 60,
  ...more,
});

export const module = (id: string, kind: string, atHp: number, more: Partial<Module> = {}): Module => ({
  id,
  kind,
  row: 'top',
  atHp,
  ...more,
});

/** Seats each connector on what stands at its place: `'a'` is a module's shore header, `['s', 1]` a ribbon's socket. */
export const seats = (
  ...on: readonly (string | readonly [ribbon: string, connector: number] | null)[]
): Seat[] =>
  on.flatMap((target, connector): Seat[] => {
    if (target === null) return [];
    if (typeof target === 'string') return [{ connector, on: { module: target, header: 'shore' } }];
    return [{ connector, on: { ribbon: target[0], connector: target[1] } }];
  });

export const ribbon = (
  id: string,
  kind: string,
  on: readonly Seat[],
  more: Partial<Ribbon> = {},
): Ribbon => ({ id, kind, seats: on, ...more });

/** One take with two rows of 60 HP and one board, all else as given; frozen to the depth. */
export function littleLayout(parts: Partial<Take> = {}, others: readonly Take[] = []): Layout {
  const take: Take = {
    id: 'take',
    name: 'Take',
    rows: [row('top'), row('low')],
    supplies: [supply],
    modules: [],
    ribbons: [],
    ...parts,
  };
  return deepFreeze({
    format: 'ribbonwright',
    version: 1,
    title: 'Shoreline',
    kit,
    takes: [take, ...others],
  });
}

/** The layout after an edit that must not be refused. */
export function applied(layout: Layout, edit: Edit): Layout {
  const result = applyEdit(layout, edit);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

/** Why an edit is refused; undefined where it is not. */
export function refusalOf(layout: Layout, edit: Edit): string | undefined {
  const result = applyEdit(layout, edit);
  return result.ok ? undefined : result.error.message;
}

/** The first take, which `littleLayout` makes from its parts. */
export const takeOf = (layout: Layout): Take => layout.takes[0] as Take;

export const widthHpOf = ({ kind }: Module): number =>
  kit.modules.find(({ id }) => id === kind)?.widthHp ?? 0;

const duplicates = (list: readonly { readonly id: string }[]): string[] => {
  const ids = list.map(({ id }) => id);
  return ids.filter((id, i) => ids.indexOf(id) !== i);
};

/** What would keep a layout from being opened again, told by the words of opening too; empty for a sound one. */
export function flawsOf(layout: Layout): string[] {
  const { kit } = layout;
  const flaws = duplicates(layout.takes).map((id) => `two takes "${id}"`);
  for (const list of [kit.buses, kit.modules, kit.ribbons]) {
    flaws.push(...duplicates(list).map((id) => `two of "${id}" in the kit`));
  }
  if (layout.takes.length === 0) flaws.push('no take');
  flaws.push(...malformationsOf(layout).kept.map(({ path, message }) => `${path} ${message}`));
  flaws.push(...referenceIssues(layout).kept.map(({ path, message }) => `${path} ${message}`));
  for (const take of layout.takes) {
    for (const list of [take.rows, take.modules, take.ribbons]) {
      flaws.push(...duplicates(list).map((id) => `two of "${id}" in ${take.id}`));
    }
    const rows = new Set(take.rows.map(({ id }) => id));
    for (const { id, kind, row: rowId, atHp } of take.modules) {
      if (!kit.modules.some((known) => known.id === kind)) flaws.push(`${id} is of no kind`);
      if (!rows.has(rowId)) flaws.push(`${id} stands in no row`);
      if (!Number.isFinite(atHp) || Object.is(atHp, -0)) flaws.push(`${id} stands nowhere`);
    }
    for (const { id, kind, seats: drawn } of take.ribbons) {
      for (const seat of drawn) {
        if (!hasConnector(kit, kind, seat.connector)) flaws.push(`${id} has no connector ${seat.connector}`);
        if (!exists(kit, take, seat.on)) flaws.push(`${id} sits on nothing`);
      }
    }
  }
  return flaws;
}

const kindOfRibbon = ({ ribbons }: Kit, id: string): RibbonKind | undefined =>
  ribbons.find((kind) => kind.id === id);

const hasConnector = (of: Kit, kind: string, connector: number): boolean =>
  kindOfRibbon(of, kind)?.connectors[connector] !== undefined;

function exists(kit: Kit, take: Take, on: SeatedOn): boolean {
  if ('module' in on) {
    const kindId = take.modules.find(({ id }) => id === on.module)?.kind;
    return kit.modules.some(
      ({ id, headers }) => id === kindId && headers.some(({ id: h }) => h === on.header),
    );
  }
  if ('board' in on) {
    const boards = take.supplies.flatMap((each) => each.boards);
    return boards.some(({ id, headers }) => id === on.board && headers.some((h) => h.id === on.header));
  }
  const other = take.ribbons.find(({ id }) => id === on.ribbon);
  return other !== undefined && hasConnector(kit, other.kind, on.connector);
}

const hp = fc.oneof(
  fc.integer({ min: -2, max: 60 }),
  fc.integer({ min: 0, max: 120 }).map((halves) => halves / 2),
  fc.double({ min: 0, max: 60, noNaN: true }),
);

const maybe = <T>(value: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> =>
  fc.option(value, { nil: undefined, freq: 2 });

/** The object without the fields that are undefined. */
const defined = <T extends object>(object: T): T =>
  Object.fromEntries(Object.entries(object).filter(([, value]) => value !== undefined)) as T;

/** A key from a newer program, to be kept. */
const later = maybe(fc.constant({ kept: true }));

const anyModules = (rows: readonly Row[]): fc.Arbitrary<Module[]> =>
  fc
    .array(
      fc.record({
        kind: fc.constantFrom(...kit.modules.map(({ id }) => id)),
        row: fc.constantFrom(...rows.map(({ id }) => id)),
        atHp: hp,
        label: maybe(fc.constantFrom('Cobble', 'Cobble 1', 'Cobble 2', 'Left', 'Mark 2')),
        pinned: maybe(fc.boolean()),
        later,
      }),
      { maxLength: 8 },
    )
    .map((modules) => modules.map((each, i) => defined({ id: `${each.kind}-${i}`, ...each }) as Module));

type Drawn = Omit<Ribbon, 'seats'> & { readonly picks: readonly number[] };

const drawnRibbons: fc.Arbitrary<Drawn[]> = fc
  .array(
    fc.record({
      kind: fc.constantFrom(...kit.ribbons.map(({ id }) => id)),
      label: maybe(fc.constantFrom('S1', 'S2', 'T1', 'Long one')),
      locked: maybe(fc.boolean()),
      stripe: maybe(fc.constantFrom('up' as const, 'down' as const)),
      twists: maybe(fc.constantFrom([1], [0, 1])),
      picks: fc.array(fc.nat({ max: 40 }), { maxLength: 4 }),
      later,
    }),
    { maxLength: 6 },
  )
  .map((ribbons) =>
    ribbons.map((each, i) => defined({ id: `${each.kind}-${i}`, ...each, ...edgeOf(each) }) as Drawn),
  );

/** A loose ribbon has neither edge nor twist. */
const edgeOf = ({ kind }: { readonly kind: string }) =>
  kindOfRibbon(kit, kind)?.lay === 'loose' ? { stripe: undefined, twists: undefined } : {};

/** Everything in a take that a connector can be put on. */
export function targetsIn(
  modules: readonly Module[],
  ribbons: readonly Pick<Ribbon, 'id' | 'kind'>[],
  { modules: kinds, ribbons: ribbonKinds }: Pick<Kit, 'modules' | 'ribbons'> = kit,
): SeatedOn[] {
  const onModules = modules.flatMap(({ id, kind }) => {
    const headers = kinds.find((known) => known.id === kind)?.headers ?? [];
    return headers.map((header): SeatedOn => ({ module: id, header: header.id }));
  });
  const inRibbons = ribbons.flatMap(({ id, kind }) => {
    const connectors = ribbonKinds.find((known) => known.id === kind)?.connectors ?? [];
    return connectors.map((_, connector): SeatedOn => ({ ribbon: id, connector }));
  });
  return [...onModules, { board: board.id, header: 'p1' }, ...inRibbons];
}

function seated(modules: readonly Module[], ribbons: readonly Drawn[]): Ribbon[] {
  const targets = targetsIn(modules, ribbons);
  return ribbons.map(({ picks, ...each }) => {
    const connectors = kindOfRibbon(kit, each.kind)?.connectors.length ?? 1;
    const drawn = picks.map(
      (pick, i): Seat => ({
        connector: i % connectors,
        on: targets[pick % targets.length] as SeatedOn,
      }),
    );
    return { ...each, seats: drawn };
  });
}

const acceptances: fc.Arbitrary<Acceptance[]> = fc
  .uniqueArray(fc.constantFrom('overlap/a', 'off-row/b', 'crossed/c'), { minLength: 1 })
  .map((keys) => keys.map((key) => ({ key, why: 'seen' })));

/** What was done and measured before: tests of what the ribbons were then, and a current of every module. */
const recordOf = (built: Built, modules: readonly Module[], ribbons: readonly Drawn[]): Built => ({
  ...built,
  harnessTests: ribbons.map(({ id }) => ({ ribbons: [id], test: 'stripe', of: 'as it was' })),
  doneSteps: [{ step: 'supply-alone', at: '2026-03-14' }],
  readings: modules.map(({ id }, i) => ({ on: 'module', id, line: '+12', ma: i * 10 })),
});

const anyTake = (id: string): fc.Arbitrary<Take> =>
  fc
    .record({
      widths: fc.array(fc.integer({ min: 20, max: 60 }), { minLength: 1, maxLength: 3 }),
      heightU: fc.constantFrom(3, 1),
      accepted: maybe(acceptances),
      built: maybe(fc.record({ on: fc.constant('a bench') })),
      later,
    })
    .chain(({ widths, heightU, ...rest }) => {
      const rows = widths.map((widthHp, i) =>
        row(['top', 'low', 'base'][i] as string, widthHp, i ? { heightU } : {}),
      );
      return fc.tuple(anyModules(rows), drawnRibbons).map(([modules, ribbons]) =>
        defined<Take>({
          id,
          name: id,
          rows,
          supplies: [supply],
          modules,
          ribbons: seated(modules, ribbons),
          ...rest,
          built: rest.built && recordOf(rest.built, modules, ribbons),
        } as Take),
      );
    });

/** Sound layouts of one or two takes with pins, locks, seats, joints and keys from a newer program; frozen. */
export const anyLayout: fc.Arbitrary<Layout> = fc
  .tuple(anyTake('take-1'), maybe(anyTake('take-2')))
  .map(([first, second]) => {
    const takes = second ? [first, second] : [first];
    const layout = { format: 'ribbonwright', version: 1, title: 'Any', kit, takes, later: 1 } as const;
    return deepFreeze<Layout>(layout);
  });
