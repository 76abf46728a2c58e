import fc from 'fast-check';
import { clipOf } from '../../src/edit/clip-of.ts';
import type { Edit } from '../../src/edit/edit.ts';
import type {
  Bus,
  Layout,
  ModuleKind,
  Ribbon,
  RibbonKind,
  Seat,
  Take,
  Voltage,
} from '../../src/layout/layout.ts';
import { HARNESS_TESTS } from '../../src/wiring/harness-tests.ts';
import { targetsIn } from '../support/little-layout.ts';

/** Numbers from which `editFrom` makes its choices: what they choose from is only known when it comes to it. */
export const anyDraw = fc.array(fc.nat({ max: 119 }), { minLength: 12, maxLength: 12 });

class Draw {
  readonly #numbers: readonly number[];
  #at = 0;

  constructor(numbers: readonly number[]) {
    this.#numbers = numbers;
  }

  number(): number {
    return this.#numbers[this.#at++ % this.#numbers.length] as number;
  }

  /** An item; the fallback of an empty list. */
  of<T>(list: readonly T[], fallback: T): T {
    return list.length > 0 ? (list[this.number() % list.length] as T) : fallback;
  }

  flag(): boolean {
    return this.number() % 2 === 1;
  }

  hp(): number {
    return this.number() / 2 - 2;
  }
}

const NOBODY = 'nobody';
const idsOf = (list: readonly { readonly id: string }[]): string[] => list.map(({ id }) => id);

type Make = (draw: Draw, layout: Layout, take: Take) => Edit;

const someOf = (draw: Draw, list: readonly { readonly id: string }[]): string[] => [
  draw.of(idsOf(list), NOBODY),
  draw.of(idsOf(list), NOBODY),
];

const seatFor = (draw: Draw, { kit }: Layout, take: Take): Seat => ({
  connector: draw.number() % 3,
  on: draw.of(targetsIn(take.modules, take.ribbons, kit), { board: NOBODY, header: NOBODY }),
});

const boardIds = ({ supplies }: Take): string[] => idsOf(supplies.flatMap(({ boards }) => boards));

/** Also what no layout could be opened with again. */
const figures = [0, 1, 40, 84.5, 20_000, -1, -0, Number.NaN, Number.POSITIVE_INFINITY, 1e12];
const names = ['Upper', ' ', 'x'.repeat(1001), 'Row 2'];

const figure = (draw: Draw): number => (draw.flag() ? draw.of([0, 1, 12.5, 84], 0) : draw.of(figures, 0));
/** One of many, mostly fit to be saved: a blank name, an odd pinout and a missing bus are among them. */
const busFor = (draw: Draw, layout: Layout): Bus => ({
  id: draw.flag() ? draw.of(idsOf(layout.kit.buses), NOBODY) : `bus-${draw.number() % 4}`,
  name: draw.of(['Reef', 'Sand', 'Reef', ''], ''),
  pinout: draw.of([['GND', '+12'], ['GND', ''], ['GND'], ['mix', 'GND', '+12', 'GND']], []),
  ...(draw.flag() && { membersPerHost: draw.number() % 5 }),
});

/** Also ids that are taken, by a signal or GND among others, and figures that no kit could be saved with. */
const voltageFor = (draw: Draw): Voltage => ({
  id: draw.of(['+15', '-15', '+12', 'mix', 'GND', ''], ''),
  volts: draw.of([15, -15, 12, 0, Number.NaN], 15),
  ...(draw.flag() && { dropMv: figure(draw) }),
});

const busIdFor = (draw: Draw, layout: Layout): string =>
  draw.number() % 8 === 0 ? NOBODY : draw.of(idsOf(layout.kit.buses), NOBODY);

const moduleKindFor = (draw: Draw, layout: Layout, id: string): ModuleKind => ({
  id,
  name: draw.of(['Pebble', 'Lagoon', ' '], 'Dune'),
  widthHp: draw.of([5, 7.5, 20], 5),
  ...(draw.flag() && { depthMm: draw.number() - 3 }),
  draws: draw.of([{}, { '+12': null }, { '+12': 20 }], {}),
  headers: draw.of([[], ['shore'], ['shore', 'tide'], ['out']], []).map((header) => ({
    id: header,
    bus: busIdFor(draw, layout),
    role: 'member',
    xMm: 10,
    yMm: draw.number(),
  })),
  ...(draw.flag() && { owned: 2 }),
});

const ribbonKindFor = (draw: Draw, layout: Layout, id: string): RibbonKind => ({
  id,
  name: draw.of(['Reef × 2', 'Long one'], 'Any'),
  bus: busIdFor(draw, layout),
  lay: draw.flag() ? 'flat' : 'loose',
  connectors: draw
    .of(
      [
        [0, 25.4],
        [0, 36, 72],
        [0, 10, 20, 30],
        [0, 5, 5],
      ],
      [0, 1],
    )
    .map((atMm, i) => ({ atMm, ...(i === 0 && draw.flag() && { type: 'plug' as const }) })),
});

/** A kind that there is, or a new id. */
const kindIdFor = (draw: Draw, kinds: readonly { readonly id: string }[]): string =>
  draw.number() % 4 === 0 ? draw.of(idsOf(kinds), NOBODY) : `kind-${draw.number() % 5}`;

const afterFor = (draw: Draw, kinds: readonly { readonly id: string }[]) =>
  draw.flag() && { after: draw.of(idsOf(kinds), NOBODY) };

/** The kind as it is, or another in its place. */
const changedFrom = <K extends { readonly id: string }>(
  draw: Draw,
  kinds: readonly K[],
  other: (id: string) => K,
): K => {
  const id = draw.of(idsOf(kinds), NOBODY);
  const same = draw.number() % 5 === 0 && kinds.find((kind) => kind.id === id);
  return same || other(id);
};

const markFor = (draw: Draw) => ({
  ...(draw.flag() && { by: draw.of(names, '') }),
  ...(draw.flag() && { at: '2026-03-14' }),
});

/** One maker for each command; a new command without one does not compile. */
const makers: { readonly [T in Edit['type']]: Make } = {
  'accept-finding': (draw, _, take) => ({
    type: 'accept-finding',
    take: take.id,
    key: draw.of(['overlap/a', 'off-row/b', 'tight-bend/d'], ''),
    ...(draw.flag() && { facts: 'sharedHp=1' }),
    ...(draw.flag() && { why: 'seen' }),
  }),
  'add-board': (draw, _, take) => ({
    type: 'add-board',
    take: take.id,
    supply: draw.of(idsOf(take.supplies), NOBODY),
    ...(draw.flag() && { like: draw.of(boardIds(take), NOBODY) }),
    row: draw.of(idsOf(take.rows), NOBODY),
    xMm: figure(draw),
    ...(draw.flag() && { fields: { widthMm: figure(draw), name: draw.of(names, '') } }),
  }),
  'add-bus': (draw, layout) => ({ type: 'add-bus', bus: busFor(draw, layout) }),
  'add-voltage': (draw) => ({ type: 'add-voltage', voltage: voltageFor(draw) }),
  'change-bus': (draw, layout) => ({
    type: 'change-bus',
    bus: changedFrom(draw, layout.kit.buses, (id) => ({ ...busFor(draw, layout), id })),
  }),
  'change-voltage': (draw, layout) => ({
    type: 'change-voltage',
    id: draw.of(idsOf(layout.kit.voltages), NOBODY),
    voltage: voltageFor(draw),
  }),
  'remove-bus': (draw, layout) => ({ type: 'remove-bus', bus: draw.of(idsOf(layout.kit.buses), NOBODY) }),
  'remove-voltage': (draw, layout) => ({
    type: 'remove-voltage',
    voltage: draw.of(idsOf(layout.kit.voltages), NOBODY),
  }),
  'set-limits': (draw) => ({
    type: 'set-limits',
    limits: {
      seatToleranceMm: draw.flag() ? figure(draw) : null,
      ...(draw.flag() && { headroom: figure(draw) }),
      ...(draw.flag() && { contactMilliohm: draw.flag() ? figure(draw) : null }),
    },
  }),
  'add-module-kind': (draw, layout) => ({
    type: 'add-module-kind',
    kind: moduleKindFor(draw, layout, kindIdFor(draw, layout.kit.modules)),
    ...afterFor(draw, layout.kit.modules),
  }),
  'add-ribbon': (draw, layout, take) => ({
    type: 'add-ribbon',
    take: take.id,
    kind: draw.of(idsOf(layout.kit.ribbons), NOBODY),
    seats: draw.flag() ? [seatFor(draw, layout, take)] : [],
    prefix: 'S',
  }),
  'add-row': (draw, _, take) => ({
    type: 'add-row',
    take: take.id,
    ...(draw.flag() && { like: draw.of(idsOf(take.rows), NOBODY) }),
    ...(draw.flag() && { at: draw.number() % 4 }),
    ...(draw.flag() && { fields: { heightU: figure(draw), gapMm: draw.flag() ? figure(draw) : null } }),
  }),
  'add-supply': (draw, _, take) => ({
    type: 'add-supply',
    take: take.id,
    ...(draw.flag() && { like: draw.of(idsOf(take.supplies), NOBODY) }),
  }),
  'add-ribbon-kind': (draw, layout) => ({
    type: 'add-ribbon-kind',
    kind: ribbonKindFor(draw, layout, kindIdFor(draw, layout.kit.ribbons)),
    ...afterFor(draw, layout.kit.ribbons),
  }),
  'add-take': (draw, layout) => ({
    type: 'add-take',
    ...(draw.flag() && { from: draw.of(idsOf(layout.takes), NOBODY) }),
    ...(draw.flag() && { name: 'Another' }),
  }),
  'adopt-measured': (draw, layout, take) => ({
    type: 'adopt-measured',
    take: take.id,
    kind: draw.of(idsOf(layout.kit.modules), NOBODY),
  }),
  'bring-back': (draw, _, take) => ({
    type: 'bring-back',
    take: take.id,
    key: draw.of(
      (take.accepted ?? []).map(({ key }) => key),
      NOBODY,
    ),
  }),
  'change-board': (draw, _, take) => ({
    type: 'change-board',
    take: take.id,
    board: draw.of(boardIds(take), NOBODY),
    ...(draw.flag() && {
      fields: {
        ...(draw.flag() && { row: draw.of(idsOf(take.rows), NOBODY) }),
        ...(draw.flag() && { name: draw.of(names, '') }),
        xMm: figure(draw),
        yMm: draw.flag() ? figure(draw) : null,
      },
    }),
    ...(draw.flag() && { lead: draw.flag() ? { lengthMm: figure(draw), awg: figure(draw) } : null }),
    ...(draw.flag() && { limits: { '+12': draw.flag() ? figure(draw) : null } }),
    ...(draw.flag() && { supply: draw.of(idsOf(take.supplies), NOBODY) }),
  }),
  'change-row': (draw, _, take) => ({
    type: 'change-row',
    take: take.id,
    row: draw.of(idsOf(take.rows), NOBODY),
    fields: {
      widthHp: figure(draw),
      ...(draw.flag() && { heightU: figure(draw) }),
      ...(draw.flag() && { name: draw.flag() ? draw.of(names, '') : null }),
      ...(draw.flag() && { gapMm: draw.flag() ? figure(draw) : null }),
    },
  }),
  'change-supply': (draw, _, take) => ({
    type: 'change-supply',
    take: take.id,
    supply: draw.of(idsOf(take.supplies), NOBODY),
    ...(draw.flag() && { name: draw.of(names, '') }),
    ...(draw.flag() && {
      ratings: { [draw.of(['+12', '+12', NOBODY], '')]: draw.flag() ? figure(draw) : null },
    }),
  }),
  'change-module-kind': (draw, layout) => ({
    type: 'change-module-kind',
    kind: changedFrom(draw, layout.kit.modules, (id) => moduleKindFor(draw, layout, id)),
  }),
  'change-ribbon-kind': (draw, layout) => ({
    type: 'change-ribbon-kind',
    kind: changedFrom(draw, layout.kit.ribbons, (id) => ribbonKindFor(draw, layout, id)),
  }),
  'exchange-ribbon': (draw, layout, take) => ({
    type: 'exchange-ribbon',
    take: take.id,
    ribbon: draw.of(idsOf(take.ribbons), NOBODY),
    kind: draw.of(idsOf(layout.kit.ribbons), NOBODY),
    ...(draw.flag() && { connectors: [draw.number() % 2, 2] }),
  }),
  'duplicate-modules': (draw, _, take) => ({
    type: 'duplicate-modules',
    take: take.id,
    modules: someOf(draw, take.modules),
  }),
  'lay-out-rows': (draw, _, take) => ({
    type: 'lay-out-rows',
    take: take.id,
    rows: Array.from({ length: draw.number() % 4 }, () => ({
      widthHp: draw.of([84, 104, 60], 84),
      heightU: draw.of([3, 1], 3),
    })),
    ...(draw.flag() && { depthMm: figure(draw) }),
  }),
  'label-ribbon': (draw, _, take) => ({
    type: 'label-ribbon',
    take: take.id,
    ribbon: draw.of(idsOf(take.ribbons), NOBODY),
    label: draw.of(['S9', 'Long one', ' ', null], null),
  }),
  'lock-ribbon': (draw, _, take) => ({
    type: 'lock-ribbon',
    take: take.id,
    ribbons: someOf(draw, take.ribbons),
    locked: draw.flag(),
  }),
  'mark-in-case': (draw, layout) => ({
    type: 'mark-in-case',
    inCase: draw.flag() ? draw.of(idsOf(layout.takes), NOBODY) : null,
  }),
  'move-modules': (draw, _, take) => ({
    type: 'move-modules',
    take: take.id,
    moves: someOf(draw, take.modules).map((module) => ({
      module,
      row: draw.of(idsOf(take.rows), NOBODY),
      atHp: draw.hp(),
    })),
    push: draw.flag(),
  }),
  'move-row': (draw, _, take) => ({
    type: 'move-row',
    take: take.id,
    row: draw.of(idsOf(take.rows), NOBODY),
    to: draw.number() % 5,
  }),
  'move-take': (draw, layout) => ({
    type: 'move-take',
    take: draw.of(idsOf(layout.takes), NOBODY),
    to: draw.number() % 5,
  }),
  'note-measured': (draw, layout, take) => {
    const on = draw.flag() ? 'module' : 'supply';
    return {
      type: 'note-measured',
      take: take.id,
      on,
      id: draw.of(idsOf(on === 'module' ? take.modules : take.supplies), NOBODY),
      line: draw.of(idsOf(layout.kit.voltages), NOBODY),
      quantity: draw.flag() ? 'ma' : 'volts',
      value: draw.number() % 4 === 0 ? null : figure(draw),
      ...markFor(draw),
    };
  },
  'order-ribbons': (draw, _, take) => ({
    type: 'order-ribbons',
    take: take.id,
    ribbons: someOf(draw, take.ribbons),
    to: draw.flag() ? 'front' : 'back',
  }),
  paste: (draw, layout, take) => {
    const from = draw.of(layout.takes, take);
    const chosen = new Set(someOf(draw, from.modules));
    const row = draw.of(idsOf(take.rows), NOBODY);
    return {
      type: 'paste',
      take: take.id,
      clip: clipOf(
        layout.kit,
        from,
        from.modules.filter(({ id }) => chosen.has(id)),
      ),
      ...(draw.flag() && { near: { row, atHp: draw.hp() } }),
    };
  },
  'pin-modules': (draw, _, take) => ({
    type: 'pin-modules',
    take: take.id,
    modules: someOf(draw, take.modules),
    pinned: draw.flag(),
  }),
  'place-module': (draw, layout, take) => ({
    type: 'place-module',
    take: take.id,
    kind: draw.of(idsOf(layout.kit.modules), NOBODY),
    row: draw.of(idsOf(take.rows), NOBODY),
    atHp: draw.hp(),
    push: draw.flag(),
  }),
  'remove-board': (draw, _, take) => ({
    type: 'remove-board',
    take: take.id,
    board: draw.of(boardIds(take), NOBODY),
  }),
  'remove-module-kind': (draw, layout) => ({
    type: 'remove-module-kind',
    kind: draw.of(idsOf(layout.kit.modules), NOBODY),
  }),
  'remove-modules': (draw, _, take) => ({
    type: 'remove-modules',
    take: take.id,
    modules: someOf(draw, take.modules),
  }),
  'remove-ribbon-kind': (draw, layout) => ({
    type: 'remove-ribbon-kind',
    kind: draw.of(idsOf(layout.kit.ribbons), NOBODY),
  }),
  'remove-ribbons': (draw, _, take) => ({
    type: 'remove-ribbons',
    take: take.id,
    ribbons: someOf(draw, take.ribbons),
  }),
  'remove-row': (draw, _, take) => ({
    type: 'remove-row',
    take: take.id,
    row: draw.of(idsOf(take.rows), NOBODY),
  }),
  'remove-supply': (draw, _, take) => ({
    type: 'remove-supply',
    take: take.id,
    supply: draw.of(idsOf(take.supplies), NOBODY),
  }),
  'remove-take': (_, __, take) => ({ type: 'remove-take', take: take.id }),
  'rename-layout': (draw) => ({ type: 'rename-layout', title: draw.of(['Any', 'Two', ' '], '') }),
  'rename-module': (draw, _, take) => ({
    type: 'rename-module',
    take: take.id,
    module: draw.of(idsOf(take.modules), NOBODY),
    label: draw.of(['Cobble', 'Left', ' ', null], null),
  }),
  'rename-take': (draw, _, take) => ({
    type: 'rename-take',
    take: take.id,
    name: draw.of(['take-1', 'Second', ''], ''),
  }),
  'rewire-take': (draw, layout, take) => ({
    type: 'rewire-take',
    from: draw.of(idsOf(layout.takes), NOBODY),
    modules: take.modules,
    ribbons: draw.flag() ? take.ribbons : [],
  }),
  'seat-connector': (draw, layout, take) => ({
    type: 'seat-connector',
    take: take.id,
    ribbon: draw.of(idsOf(take.ribbons), NOBODY),
    ...seatFor(draw, layout, take),
  }),
  'set-board-headers': (draw, layout, take) => ({
    type: 'set-board-headers',
    take: take.id,
    board: draw.of(boardIds(take), NOBODY),
    headers: Array.from({ length: draw.number() % 3 }, (_, i) => ({
      id: draw.flag() ? `p${i + 1}` : 'p1',
      bus: draw.of([...idsOf(layout.kit.buses), NOBODY], NOBODY),
      ...(draw.flag() && { dxMm: figure(draw) }),
      ...(draw.flag() && { axis: draw.of(['vertical', 'horizontal'] as const, 'vertical') }),
      ...(draw.flag() && { pin1: draw.of(['down', 'left', 'up'] as const, 'down') }),
      ...(draw.flag() && { keyed: draw.flag() }),
    })),
  }),
  several: (draw, layout, take) => ({
    type: 'several',
    label: 'move and seat',
    edits: (['move-modules', 'seat-connector'] as const).map((type) => makers[type](draw, layout, take)),
  }),
  'slide-ribbon': (draw, _, take) => {
    const onModules = (ribbon: Ribbon) => ribbon.seats.filter(({ on }) => 'module' in on);
    const seated = take.ribbons.filter((ribbon) => !ribbon.locked && onModules(ribbon).length > 0);
    const ribbon = draw.of(seated, { id: NOBODY, kind: NOBODY, seats: [] });
    const { connector } = draw.of(onModules(ribbon), { connector: 0, on: { board: NOBODY, header: NOBODY } });
    const on = draw.of(
      targetsIn(take.modules, []).flatMap((target) => ('module' in target ? [target] : [])),
      { module: NOBODY, header: NOBODY },
    );
    const to = draw.number() % 4 === 0 ? { headers: (draw.number() % 5) - 2 } : { connector, on };
    return { type: 'slide-ribbon', take: take.id, ribbon: ribbon.id, to };
  },
  'swap-modules': (draw, _, take) => {
    const ids = idsOf(take.modules);
    return {
      type: 'swap-modules',
      take: take.id,
      modules: [draw.of(ids, NOBODY), draw.of(ids, NOBODY)],
    };
  },
  'take-kinds': (draw, layout) => {
    const modules = [0, 1].map((i) => moduleKindFor(draw, layout, kindIdFor(draw, layout.kit.modules) + i));
    const ribbons = [ribbonKindFor(draw, layout, kindIdFor(draw, layout.kit.ribbons))];
    const buses = [...layout.kit.buses, busFor(draw, layout)];
    const instead = (list: readonly { readonly id: string }[]) =>
      draw.flag() && { instead: draw.of(idsOf(list), NOBODY) };
    return {
      type: 'take-kinds',
      from: { voltages: layout.kit.voltages, buses, modules, ribbons },
      kinds: [
        ...modules.map(({ id }) => ({ sort: 'module' as const, id, ...instead(layout.kit.modules) })),
        ...ribbons.map(({ id }) => ({ sort: 'ribbon' as const, id, ...instead(layout.kit.ribbons) })),
        ...(draw.flag()
          ? [{ sort: 'bus' as const, id: draw.of(idsOf(buses), NOBODY), ...instead(layout.kit.buses) }]
          : []),
      ],
    };
  },
  'tick-step': (draw, _, take) => ({
    type: 'tick-step',
    take: take.id,
    step: draw.of(['supply-alone', 'island/s1', ''], ''),
    done: draw.flag(),
    ...markFor(draw),
  }),
  'tick-test': (draw, _, take) => ({
    type: 'tick-test',
    take: take.id,
    ribbon: draw.of(idsOf(take.ribbons), NOBODY),
    tests: draw.flag() ? HARNESS_TESTS : [draw.of(HARNESS_TESTS, 'stripe')],
    ...markFor(draw),
  }),
  'turn-ribbon': (draw, _, take) => ({
    type: 'turn-ribbon',
    take: take.id,
    ribbon: draw.of(idsOf(take.ribbons), NOBODY),
    seats: draw.flag() ? 'keep' : 'mirror',
  }),
  'twist-ribbon': (draw, _, take) => ({
    type: 'twist-ribbon',
    take: take.id,
    ribbon: draw.of(idsOf(take.ribbons), NOBODY),
    after: draw.number() % 3,
    halfTwists: draw.number() % 3,
  }),
  unseat: (draw, _, take) => ({
    type: 'unseat',
    take: take.id,
    ribbon: draw.of(idsOf(take.ribbons), NOBODY),
    connector: draw.number() % 3,
  }),
  'untick-test': (draw, _, take) => ({
    type: 'untick-test',
    take: take.id,
    ribbon: draw.of(idsOf(take.ribbons), NOBODY),
    tests: [draw.of(HARNESS_TESTS, 'stripe')],
  }),
};

const types = Object.keys(makers) as Edit['type'][];

/** An edit of things that the layout has; of "nobody" where it has none. */
export function editFrom(layout: Layout, numbers: readonly number[], type?: Edit['type']): Edit {
  const draw = new Draw(numbers);
  const chosen = type ?? draw.of(types, 'rename-layout');
  return makers[chosen](draw, layout, draw.of(layout.takes, layout.takes[0] as Take));
}

/** Edits of the kit; all others leave it the very one that it was. */
export const KIT_EDITS: ReadonlySet<Edit['type']> = new Set<Edit['type']>([
  'adopt-measured',
  'add-bus',
  'add-module-kind',
  'add-voltage',
  'change-bus',
  'change-voltage',
  'remove-bus',
  'remove-voltage',
  'set-limits',
  'add-ribbon-kind',
  'change-module-kind',
  'take-kinds',
  'change-ribbon-kind',
  'remove-module-kind',
  'remove-ribbon-kind',
]);
