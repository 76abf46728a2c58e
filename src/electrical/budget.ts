import type { PlacedBoard } from '../geometry/place.ts';
import { GND } from '../layout/defaults.ts';
import type { KitIndex } from '../layout/kit-index.ts';
import type { Supply } from '../layout/layout.ts';
import type { Power } from './power.ts';

/** What is drawn on one voltage, mA, beside what may be. */
interface Budget {
  readonly voltage: string;
  readonly ma: number;
  readonly allowedMa: number;
}

/** The share of what is allowed that is left free; negative where more is drawn. */
export const headroomOf = ({ ma, allowedMa }: Budget): number =>
  allowedMa > 0 ? 1 - ma / allowedMa : Number.NEGATIVE_INFINITY;

function* budgets(
  kit: KitIndex,
  currents: readonly number[] | undefined,
  allowed: Readonly<Record<string, number>>,
): Generator<Budget> {
  for (const [line, voltage] of kit.supplyLines.entries()) {
    if (voltage === GND || !Object.hasOwn(allowed, voltage)) continue;
    yield { voltage, ma: currents?.[line] ?? 0, allowedMa: allowed[voltage] as number };
  }
}

/** Each voltage that each supply gives. */
export function* supplyBudgets({ take, draws }: Power): Generator<Budget & { readonly supply: Supply }> {
  for (const [index, supply] of take.take.supplies.entries()) {
    for (const budget of budgets(take.kit, draws.supplies[index], supply.ratings))
      if (budget.allowedMa > 0) yield { supply, ...budget };
  }
}

/** Each voltage for which each board has a limit of its own. */
export function* boardBudgets({ take, draws }: Power): Generator<Budget & { readonly board: PlacedBoard }> {
  for (const board of take.places.boards) {
    for (const budget of budgets(take.kit, draws.boards[board.index], board.board.limits ?? {}))
      yield { board, ...budget };
  }
}
