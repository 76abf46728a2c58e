import fc from 'fast-check';
import type { Edit } from '../../src/edit/edit.ts';
import type { Layout, Seat, Take } from '../../src/layout/layout.ts';
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

const seatFor = (draw: Draw, take: Take): Seat => ({
  connector: draw.number() % 3,
  on: draw.of(targetsIn(take.modules, take.ribbons), { board: NOBODY, header: NOBODY }),
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
  'add-ribbon': (draw, layout, take) => ({
    type: 'add-ribbon',
    take: take.id,
    kind: draw.of(idsOf(layout.kit.ribbons), NOBODY),
    seats: draw.flag() ? [seatFor(draw, take)] : [],
    prefix: 'S',
  }),
  'add-take': (draw, layout) => ({
    type: 'add-take',
    ...(draw.flag() && { from: draw.of(idsOf(layout.takes), NOBODY) }),
    ...(draw.flag() && { name: 'Another' }),
  }),
  'bring-back': (draw, _, take) => ({
    type: 'bring-back',
    take: take.id,
    key: draw.of(
      (take.accepted ?? []).map(({ key }) => key),
      NOBODY,
    ),
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
  'remove-modules': (draw, _, take) => ({
    type: 'remove-modules',
    take: take.id,
    modules: someOf(draw, take.modules),
  }),
  'remove-ribbons': (draw, _, take) => ({
    type: 'remove-ribbons',
    take: take.id,
    ribbons: someOf(draw, take.ribbons),
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
  'seat-connector': (draw, _, take) => ({
    type: 'seat-connector',
    take: take.id,
    ribbon: draw.of(idsOf(take.ribbons), NOBODY),
    ...seatFor(draw, take),
  }),
  several: (draw, layout, take) => ({
    type: 'several',
    label: 'move and seat',
    edits: (['move-modules', 'seat-connector'] as const).map((type) => makers[type](draw, layout, take)),
  }),
  'swap-modules': (draw, _, take) => {
    const ids = idsOf(take.modules);
    return {
      type: 'swap-modules',
      take: take.id,
      modules: [draw.of(ids, NOBODY), draw.of(ids, NOBODY)],
    };
  },
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
};

const types = Object.keys(makers) as Edit['type'][];

/** An edit of things that the layout has; of "nobody" where it has none. */
export function editFrom(layout: Layout, numbers: readonly number[], type?: Edit['type']): Edit {
  const draw = new Draw(numbers);
  const chosen = type ?? draw.of(types, 'rename-layout');
  return makers[chosen](draw, layout, draw.of(layout.takes, layout.takes[0] as Take));
}
