import { inventoryOf, shoppingFor } from '../checks/inventory.ts';
import type { Take } from '../layout/layout.ts';
import { SAME_MV, type Score } from './choose.ts';
import { conflictsOf, worstLossOf } from './judge-choice.ts';
import { derivedOf, openWishes, type Task } from './task.ts';

/** The score of a take as it is wired; nothing where something in it must not be. */
export function scoreOf(task: Task, take: Take): Score | undefined {
  const derived = derivedOf(task, take);
  const conflicts = conflictsOf(task, derived);
  const isDarkAlone = (check: string, modules: number): boolean => check === 'unpowered' && modules === 1;
  if (conflicts.some(({ check, subjects }) => !isDarkAlone(check, subjects.length))) return undefined;
  const ribbons = inventoryOf(derived).filter(({ sort }) => sort !== 'module');
  const { cost, unpriced } = shoppingFor(ribbons);
  const spent = shoppingFor(inventoryOf(task.base).filter(({ sort }) => sort !== 'module'));
  return {
    unlinked: openWishes(task, derived).length,
    unfed: derived.supplyNet.islands.filter(
      ({ feeds, modules }) => feeds.length === 0 && modules.some(({ facts }) => facts.draws.length > 0),
    ).length,
    cost: cost - spent.cost,
    unpriced: unpriced - spent.unpriced,
    ribbons: take.ribbons.length,
    worstLossMv: worstLossOf(derived),
  };
}

const ORDER = ['unlinked', 'unfed', 'cost', 'unpriced', 'ribbons', 'worstLossMv'] as const;

/** Below nothing where a is better than b, above where it is worse, at the first number that differs. */
export function compareScores(a: Score, b: Score): number {
  for (const name of ORDER) {
    const difference = a[name] - b[name];
    if (Math.abs(difference) > (name === 'worstLossMv' ? SAME_MV : 1e-6)) return difference;
  }
  return 0;
}
