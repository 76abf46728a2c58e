import type { Layout, Ribbon } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, editTake, findAll, mapKept, withField } from './change.ts';

/** Draws ribbons over all others where they cross, or under all others. */
export interface OrderRibbons {
  readonly type: 'order-ribbons';
  readonly take: string;
  readonly ribbons: readonly string[];
  readonly to: 'front' | 'back';
}

const overOf = ({ over }: Ribbon): number => over ?? 0;

/** The numbers in use by their place above or below 0, so that they stay small however often the order changes. */
function placesOf(used: Iterable<number>): ReadonlyMap<number, number> {
  const inOrder = [...new Set(used)].sort((a, b) => a - b);
  const above = inOrder.filter((over) => over > 0);
  const below = inOrder.filter((over) => over < 0).reverse();
  return new Map([
    ...above.map((over, i) => [over, i + 1] as const),
    ...below.map((over, i) => [over, -i - 1] as const),
    [0, 0],
  ]);
}

/**
 * Which ribbon lies over which is a number of each, apart from the order of the list: of two connectors in one place the
 * first in the list conducts, and a look must not change that. Those that are named keep their order among themselves.
 */
export function orderRibbons(layout: Layout, edit: OrderRibbons): Edited<Layout> {
  return editTake(layout, edit.take, (take) => {
    const found = findAll(take.ribbons, edit.ribbons, 'ribbon');
    if (!found.ok) return found;
    const named = new Set(found.value);
    const others = take.ribbons.filter((ribbon) => !named.has(ribbon)).map(overOf);
    const own = found.value.map(overOf);
    if (others.length === 0 || own.length === 0) return ok(take);
    const [lowest, highest] = [Math.min(...own), Math.max(...own)];
    const [bottom, top] = [Math.min(...others), Math.max(...others)];
    const step = edit.to === 'front' ? top + 1 - lowest : bottom - 1 - highest;
    if (edit.to === 'front' ? step <= 0 : step >= 0) return ok(take);
    const moved = (ribbon: Ribbon): number => overOf(ribbon) + (named.has(ribbon) ? step : 0);
    const places = placesOf(take.ribbons.map(moved));
    const ribbons = mapKept(take.ribbons, (ribbon) => {
      const over = places.get(moved(ribbon)) ?? 0;
      return over === overOf(ribbon) ? ribbon : withField(ribbon, 'over', over === 0 ? undefined : over);
    });
    return ok(withField(take, 'ribbons', ribbons));
  });
}
