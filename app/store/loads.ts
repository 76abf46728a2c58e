import type { DerivedTake, PlacedBoard, PlacedModule } from '../../src/index.ts';

/** What modules draw from one voltage, mA. */
export interface Load {
  readonly voltage: string;
  readonly ma: number;
  /** Some draw an unknown current besides. */
  readonly atLeast: boolean;
  /** mA; 0 where the supply does not give it. */
  readonly rating: number;
}

interface SupplyLoad {
  readonly id: string;
  readonly name: string;
  /** One for each voltage that is given or drawn. */
  readonly loads: readonly Load[];
}

export interface Loads {
  readonly supplies: readonly SupplyLoad[];
  /** Placed modules that no lead feeds yet. */
  readonly unfed: readonly Load[];
}

function loadOn(voltage: string, modules: readonly PlacedModule[], rating: number): Load {
  const draws = modules.flatMap(({ facts }) => facts.draws.filter(([drawn]) => drawn === voltage));
  const ma = draws.reduce((sum, [, draw]) => sum + (draw ?? 0), 0);
  return { voltage, ma, atLeast: draws.some(([, draw]) => draw === null), rating };
}

const isWorthTelling = ({ ma, atLeast, rating }: Load): boolean => ma > 0 || atLeast || rating > 0;

/** Sums of what the kinds say, by the supply that feeds each module; losses and double feeds are not its business. */
export function loadsOf({ kit, take, supplyNet }: DerivedTake): Loads {
  const fedBy = take.supplies.map((): PlacedModule[] => []);
  const unfed: PlacedModule[] = [];
  for (const { modules, feeds } of supplyNet.islands) {
    const board = feeds[0]?.harness.boardSeats[0]?.on.header.owner as PlacedBoard | undefined;
    (board ? (fedBy[board.supplyIndex] ?? unfed) : unfed).push(...modules);
  }
  const loads = (modules: readonly PlacedModule[], ratings: Readonly<Record<string, number>>): Load[] =>
    [...kit.voltages.keys()].map((id) => loadOn(id, modules, ratings[id] ?? 0)).filter(isWorthTelling);
  return {
    supplies: take.supplies.map(({ id, name, ratings }, i) => ({
      id,
      name,
      loads: loads(fedBy[i] ?? [], ratings),
    })),
    unfed: loads(unfed, {}),
  };
}
