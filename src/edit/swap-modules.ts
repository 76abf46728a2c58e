import type { Kit, Layout, Module } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import {
  type Edited,
  editTake,
  find,
  kindOf,
  mapKept,
  NOISE_HP,
  refuseIfPinned,
  tidyHp,
  withField,
} from './change.ts';

/**
 * Exchanges the places of two modules: two that touch keep the piece of rail that they fill together, others
 * exchange their left edges.
 */
export interface SwapModules {
  readonly type: 'swap-modules';
  readonly take: string;
  readonly modules: readonly [string, string];
}

type Place = Pick<Module, 'row' | 'atHp'>;

function touches(kit: Kit, left: Module, right: Module): boolean {
  const end = left.atHp + kindOf(kit, left).widthHp;
  return left.row === right.row && Math.abs(right.atHp - end) <= NOISE_HP;
}

/** Where one module stands after it has changed places with another. */
function placeAfter(kit: Kit, module: Module, other: Module): Place {
  if (!touches(kit, module, other)) return other;
  return { row: module.row, atHp: tidyHp(module.atHp + kindOf(kit, other).widthHp) };
}

export function swapModules(layout: Layout, edit: SwapModules): Edited<Layout> {
  return editTake(layout, edit.take, (take) => {
    const a = find(take.modules, edit.modules[0], 'module');
    if (!a.ok) return a;
    const b = find(take.modules, edit.modules[1], 'module');
    if (!b.ok) return b;
    const pinned = refuseIfPinned(layout.kit, take, [a.value]) ?? refuseIfPinned(layout.kit, take, [b.value]);
    if (pinned) return pinned;

    const move = (module: Module, { row, atHp }: Place): Module =>
      withField(withField(module, 'row', row), 'atHp', atHp);
    const modules = mapKept(take.modules, (module) => {
      if (module === a.value) return move(module, placeAfter(layout.kit, module, b.value));
      if (module === b.value) return move(module, placeAfter(layout.kit, module, a.value));
      return module;
    });
    return ok(withField(take, 'modules', modules));
  });
}
