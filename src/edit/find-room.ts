import type { Kit, Module, Take } from '../layout/layout.ts';
import { kindOf, NOISE_HP } from './change.ts';

/** A piece of rail: a row by its number, places in HP. */
interface Stretch {
  readonly row: number;
  readonly fromHp: number;
  readonly toHp: number;
}

/** How far copies stand from their originals. */
interface Offset {
  readonly rows: number;
  readonly hp: number;
}

function stretchOf(kit: Kit, take: Take, module: Module): Stretch {
  const row = take.rows.findIndex(({ id }) => id === module.row);
  return { row, fromHp: module.atHp, toHp: module.atHp + kindOf(kit, module).widthHp };
}

const clash = (a: Stretch, b: Stretch): boolean =>
  a.row === b.row && a.fromHp < b.toHp - NOISE_HP && b.fromHp < a.toHp - NOISE_HP;

const leftEnd = (group: readonly Stretch[]): number => Math.min(...group.map(({ fromHp }) => fromHp));
const rightEnd = (group: readonly Stretch[]): number => Math.max(...group.map(({ toHp }) => toHp));

/** The whole HP by which a group can go left and right within rows of the height that it stands in; inclusive. */
function play(take: Take, group: readonly Stretch[], rows: number): readonly [least: number, most: number] {
  const spare = group.map(({ row, toHp }) => {
    const there = take.rows[row + rows];
    return there && there.heightU === take.rows[row]?.heightU
      ? there.widthHp - toHp
      : Number.NEGATIVE_INFINITY;
  });
  return [Math.ceil(-leftEnd(group) - NOISE_HP), Math.floor(Math.min(...spare) + NOISE_HP)];
}

/** Places within the rows, best first: right of the group, left of it, then other rows from their left end. */
function* offsetsToTry(take: Take, group: readonly Stretch[]): Generator<Offset> {
  const clear = Math.ceil(rightEnd(group) - leftEnd(group) - NOISE_HP);
  const [least, most] = play(take, group, 0);
  for (let hp = Math.max(clear, least); hp <= most; hp++) yield { rows: 0, hp };
  for (let hp = Math.min(-clear, most); hp >= least; hp--) yield { rows: 0, hp };

  const firstRow = Math.min(...group.map(({ row }) => row));
  for (const row of take.rows.keys()) {
    const rows = row - firstRow;
    if (rows === 0) continue;
    const [leastThere, mostThere] = play(take, group, rows);
    for (let hp = leastThere; hp <= mostThere; hp++) yield { rows, hp };
  }
}

/**
 * Where copies of modules stand as a group: at the first place right of the originals where all have room, else
 * left of them, else in the first other rows that have it, else past the last module, whatever is there.
 */
export function findRoom(kit: Kit, take: Take, originals: readonly Module[]): Offset {
  const occupied = take.modules.map((module) => stretchOf(kit, take, module));
  const group = originals.map((module) => stretchOf(kit, take, module));
  const hasRoom = ({ rows, hp }: Offset): boolean =>
    group.every(({ row, fromHp, toHp }) => {
      const copy = { row: row + rows, fromHp: fromHp + hp, toHp: toHp + hp };
      return !occupied.some((stretch) => clash(copy, stretch));
    });
  for (const offset of offsetsToTry(take, group)) if (hasRoom(offset)) return offset;

  const inTheSameRows = occupied.filter(({ row }) => group.some((stretch) => stretch.row === row));
  return { rows: 0, hp: Math.ceil(rightEnd(inTheSameRows) - leftEnd(group) - NOISE_HP) };
}
