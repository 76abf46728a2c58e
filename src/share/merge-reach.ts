import type { Path } from '../layout/issue.ts';
import type { Layout, ModuleKind, Ribbon, RibbonKind, SeatedOn, Supply, Take } from '../layout/layout.ts';
import { keyOf } from './merge-parts.ts';

/*
 * From a reference that leads nowhere to all parts that have a share in it: the part that holds it, what it names, and
 * what that is made of, on either side. Where all of them come from one side, the reference holds.
 */

const kitKey = (list: 'voltages' | 'buses' | 'modules' | 'ribbons', id: string): string =>
  keyOf(`kit/${list}`, id);

const ofModuleKind = ({ id, draws, headers }: ModuleKind): string[] => [
  kitKey('modules', id),
  ...Object.keys(draws).map((voltage) => kitKey('voltages', voltage)),
  ...headers.map(({ bus }) => kitKey('buses', bus)),
];

const ofRibbonKind = ({ id, bus }: RibbonKind): string[] => [kitKey('ribbons', id), kitKey('buses', bus)];

/** All that a take of either side knows by an id. */
class Sides {
  readonly #layouts: readonly Layout[];
  readonly #take: string;

  constructor(layouts: readonly Layout[], take: string) {
    this.#layouts = layouts;
    this.#take = take;
  }

  get #takes(): readonly Take[] {
    return this.#layouts.flatMap(({ takes }) => takes.filter(({ id }) => id === this.#take));
  }

  #key(list: 'rows' | 'supplies' | 'modules' | 'ribbons', id: string): string {
    return keyOf(`take/${list}`, id, this.#take);
  }

  moduleKind(id: string): string[] {
    const kinds = this.#layouts.flatMap(({ kit }) => kit.modules.filter((kind) => kind.id === id));
    return [kitKey('modules', id), ...kinds.flatMap(ofModuleKind)];
  }

  ribbonKind(id: string): string[] {
    const kinds = this.#layouts.flatMap(({ kit }) => kit.ribbons.filter((kind) => kind.id === id));
    return [kitKey('ribbons', id), ...kinds.flatMap(ofRibbonKind)];
  }

  module(id: string): string[] {
    const found = this.#takes.flatMap(({ modules }) => modules.filter((module) => module.id === id));
    return [
      this.#key('modules', id),
      ...found.flatMap(({ kind, row }) => [...this.moduleKind(kind), this.#key('rows', row)]),
    ];
  }

  ribbon(id: string): string[] {
    const found = this.#takes.flatMap(({ ribbons }) => ribbons.filter((ribbon) => ribbon.id === id));
    return [this.#key('ribbons', id), ...found.flatMap(({ kind }) => this.ribbonKind(kind))];
  }

  /** Supplies that have such a board. */
  board(id: string): string[] {
    const found = this.#takes.flatMap(({ supplies }) =>
      supplies.filter(({ boards }) => boards.some((board) => board.id === id)),
    );
    return found.map((supply) => this.#key('supplies', supply.id));
  }

  supply(supply: Supply): string[] {
    const limits = supply.boards.flatMap((board) => Object.keys(board.limits ?? {}));
    return [
      this.#key('supplies', supply.id),
      ...[...Object.keys(supply.ratings), ...limits].map((voltage) => kitKey('voltages', voltage)),
      ...supply.boards.flatMap(({ id, row, headers }) => [
        ...this.board(id),
        this.#key('rows', row),
        ...headers.map(({ bus }) => kitKey('buses', bus)),
      ]),
    ];
  }

  seat(on: SeatedOn): string[] {
    if ('module' in on) return this.module(on.module);
    return 'board' in on ? this.board(on.board) : this.ribbon(on.ribbon);
  }

  seats({ id, seats }: Ribbon, at: number | undefined): string[] {
    const of = at === undefined ? seats : seats.slice(at, at + 1);
    return [...this.ribbon(id), ...of.flatMap(({ on }) => this.seat(on))];
  }
}

function inKit({ kit }: Layout, [, list, at]: Path): string[] {
  const i = Number(at);
  if (list === 'modules') return kit.modules.slice(i, i + 1).flatMap(ofModuleKind);
  return list === 'ribbons' ? kit.ribbons.slice(i, i + 1).flatMap(ofRibbonKind) : [];
}

/** Keys of all parts that have a share in what does not hold at a place of a mixture. */
export function partsAt(mixture: Layout, path: Path, mine: Layout, theirs: Layout): readonly string[] {
  const [room, takeAt, list, itemAt, within, seatAt] = path;
  if (room === 'kit') return inKit(mixture, path);
  const take = mixture.takes[Number(takeAt)];
  if (!take) return [];
  const sides = new Sides([mixture, mine, theirs], take.id);
  const [supply, module, ribbon] = [
    take.supplies[Number(itemAt)],
    take.modules[Number(itemAt)],
    take.ribbons[Number(itemAt)],
  ];
  const whole = keyOf('takes', take.id);
  if (list === 'supplies' && supply) return [whole, ...sides.supply(supply)];
  if (list === 'modules' && module) return [whole, ...sides.module(module.id)];
  if (list !== 'ribbons' || !ribbon) return [whole];
  return [whole, ...sides.seats(ribbon, within === 'seats' ? Number(seatAt) : undefined)];
}
