import type { Clip } from '../layout/clip.ts';
import type { Kit, Module, Take } from '../layout/layout.ts';
import { kindOf, NOISE_HP } from './change.ts';

/** A piece of rail: a row by its number, places in HP. */
interface Stretch {
  readonly row: number;
  readonly fromHp: number;
  readonly toHp: number;
}

/** Where a group stands: in which row its first one lies, and how far along its places are shifted. */
export interface Room {
  readonly row: number;
  readonly hp: number;
}

/** Modules and the rows that they stand in. */
export type Group = Pick<Clip, 'rows' | 'modules'>;

/**
 * originals: in the home row beside the group, where the originals stand; right of them first. place: at the very
 * place, else beside it, else as near as can be. near: as near as can be to a place along the home row, HP, on
 * which the middle of the group should come.
 */
export type Wish = 'beside the originals' | 'at their place' | { readonly nearHp: number };

const stretchOf = (kit: Kit, rowOf: ReadonlyMap<string, number>, module: Module): Stretch => ({
  row: rowOf.get(module.row) ?? 0,
  fromHp: module.atHp,
  toHp: module.atHp + kindOf(kit, module).widthHp,
});

const numbered = (rows: readonly { readonly id: string }[]): ReadonlyMap<string, number> =>
  new Map(rows.map(({ id }, row) => [id, row]));

const clash = (a: Stretch, b: Stretch): boolean =>
  a.row === b.row && a.fromHp < b.toHp - NOISE_HP && b.fromHp < a.toHp - NOISE_HP;

const leftEnd = (group: readonly Stretch[]): number => Math.min(...group.map(({ fromHp }) => fromHp));
const rightEnd = (group: readonly Stretch[]): number => Math.max(...group.map(({ toHp }) => toHp));

/** Most comparisons of a module with what stands: beyond, the group goes past the last module. */
const MOST_LOOKS = 5_000_000;

/** Whole numbers between two, inclusive, the nearest to one first. */
function* nearestFirst(to: number, least: number, most: number): Generator<number> {
  const start = Math.min(Math.max(Math.round(to), least), most);
  if (least > most) return;
  yield start;
  for (let off = 1; start - off >= least || start + off <= most; off++) {
    if (start + off <= most) yield start + off;
    if (start - off >= least) yield start - off;
  }
}

class Search {
  readonly #take: Take;
  readonly #group: Group;
  readonly stretches: readonly Stretch[];
  readonly #occupied: ReadonlyMap<number, readonly Stretch[]>;
  #looks = 0;

  constructor(kit: Kit, take: Take, group: Group) {
    this.#take = take;
    this.#group = group;
    const inGroup = numbered(group.rows);
    this.stretches = group.modules.map((module) => stretchOf(kit, inGroup, module));
    const inTake = numbered(take.rows);
    const occupied = new Map<number, Stretch[]>();
    for (const module of take.modules) {
      const stretch = stretchOf(kit, inTake, module);
      const row = occupied.get(stretch.row);
      if (row) row.push(stretch);
      else occupied.set(stretch.row, [stretch]);
    }
    this.#occupied = occupied;
  }

  /** The whole HP by which the group can go left and right within rows of the height that it stands in; inclusive. */
  play(row: number): readonly [least: number, most: number] {
    const spare = this.stretches.map((piece) => {
      const there = this.#take.rows[row + piece.row];
      return there && there.heightU === this.#group.rows[piece.row]?.heightU
        ? there.widthHp - piece.toHp
        : Number.NEGATIVE_INFINITY;
    });
    return [Math.ceil(-leftEnd(this.stretches) - NOISE_HP), Math.floor(Math.min(...spare) + NOISE_HP)];
  }

  hasRoom({ row, hp }: Room): boolean {
    return this.stretches.every((piece) => {
      const there = this.#occupied.get(row + piece.row) ?? [];
      this.#looks += there.length + 1;
      const copy = { row: row + piece.row, fromHp: piece.fromHp + hp, toHp: piece.toHp + hp };
      return !there.some((stretch) => clash(copy, stretch));
    });
  }

  firstOf(rooms: Iterable<Room>): Room | undefined {
    for (const room of rooms) {
      if (this.hasRoom(room)) return room;
      if (this.#looks > MOST_LOOKS) return undefined;
    }
    return undefined;
  }

  /** Past the last module of the rows, whatever is there. */
  past(row: number): Room {
    const rows = new Set(this.stretches.map((piece) => piece.row + row));
    const there = [...rows].flatMap((index) => this.#occupied.get(index) ?? []);
    const end = Math.max(0, ...there.map(({ toHp }) => toHp));
    return { row, hp: Math.ceil(end - leftEnd(this.stretches) - NOISE_HP) };
  }

  /** Right of where the group stood, then left of it. */
  *beside(row: number): Generator<Room> {
    const clear = Math.ceil(rightEnd(this.stretches) - leftEnd(this.stretches) - NOISE_HP);
    const [least, most] = this.play(row);
    for (let hp = Math.max(clear, least); hp <= most; hp++) yield { row, hp };
    for (let hp = Math.min(-clear, most); hp >= least; hp--) yield { row, hp };
  }

  *near(row: number, hp: number): Generator<Room> {
    for (const shift of nearestFirst(hp, ...this.play(row))) yield { row, hp: shift };
  }

  /** All other rows from their left end. */
  *elsewhere(home: number): Generator<Room> {
    for (const row of this.#take.rows.keys()) {
      if (row === home) continue;
      const [least, most] = this.play(row);
      for (let hp = least; hp <= most; hp++) yield { row, hp };
    }
  }

  *wished(home: number, wish: Wish): Generator<Room> {
    if (wish === 'beside the originals') yield* this.beside(home);
    else if (wish === 'at their place') {
      const [least, most] = this.play(home);
      if (least <= 0 && most >= 0) yield { row: home, hp: 0 };
      yield* this.beside(home);
      yield* this.near(home, 0);
    } else {
      const middle = (leftEnd(this.stretches) + rightEnd(this.stretches)) / 2;
      yield* this.near(home, wish.nearHp - middle);
    }
    yield* this.elsewhere(home);
  }
}

/**
 * Where a group of modules finds room as it stands, each by whole HP from where it was: as wished if there is any,
 * else in the first other rows that have it, else past the last module of the home row, whatever is there.
 *
 * @param home - number of the row of the take in which the first row of the group should lie
 */
export function findRoom(kit: Kit, take: Take, group: Group, home: number, wish: Wish): Room {
  const search = new Search(kit, take, group);
  return search.firstOf(search.wished(home, wish)) ?? search.past(home);
}
