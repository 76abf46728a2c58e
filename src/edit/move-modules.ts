import type { Layout, Module } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import {
  type Edited,
  editTake,
  findAll,
  mapKept,
  refuseIfNoPlace,
  refuseIfPinned,
  tidyHp,
  withField,
} from './change.ts';
import { pushNeighbours } from './push.ts';

/** Puts modules where they are asked to be. Pinned ones among them stay. */
export interface MoveModules {
  readonly type: 'move-modules';
  readonly take: string;
  readonly moves: readonly ModuleMove[];
  /** Neighbours give way. */
  readonly push?: boolean;
}

export interface ModuleMove {
  readonly module: string;
  readonly row: string;
  readonly atHp: number;
}

/** A module that is asked to where it stands keeps its place to the last digit. */
function moved(module: Module, move: ModuleMove | undefined): Module {
  if (!move || module.pinned) return module;
  const atHp = move.atHp === module.atHp ? module.atHp : tidyHp(move.atHp);
  return withField(withField(module, 'row', move.row), 'atHp', atHp);
}

export function moveModules(layout: Layout, { take: takeId, moves, push }: MoveModules): Edited<Layout> {
  return editTake(layout, takeId, (take) => {
    const moveOf = new Map(moves.map((move) => [move.module, move]));
    const named = findAll(take.modules, moveOf.keys(), 'module');
    if (!named.ok) return named;
    const rows = findAll(
      take.rows,
      moves.map(({ row }) => row),
      'row',
    );
    if (!rows.ok) return rows;
    const refusal = refuseIfNoPlace(moves) ?? refuseIfPinned(layout.kit, take, named.value);
    if (refusal) return refusal;

    const modules = mapKept(take.modules, (module) => moved(module, moveOf.get(module.id)));
    if (!push || modules === take.modules) return ok(withField(take, 'modules', modules));
    const free = named.value.filter(({ pinned }) => !pinned);
    const put = new Set(free.map(({ id }) => id));
    return ok(withField(take, 'modules', pushNeighbours(layout.kit, take, modules, put)));
  });
}
