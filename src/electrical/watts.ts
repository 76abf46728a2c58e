import type { PlacedModule } from '../geometry/place.ts';
import type { PartPower, Power } from './power.ts';
import { ohmsPerMetre } from './wire.ts';

/** Power, W: what supplies give is what modules use and what is lost on the way. */
export interface Watts {
  /** What each supply gives, by its number in the take. */
  readonly supplies: readonly number[];
  /** What each module uses; those that nothing reaches are left out. */
  readonly modules: ReadonlyMap<PlacedModule, number>;
  /** Turned to heat in ribbons, contacts and the leads of boards. */
  readonly lost: number;
}

const sum = (values: Iterable<number>): number => {
  let total = 0;
  for (const value of values) total += value;
  return total;
};

/** Of one module, W; undefined where it draws nothing that arrives. */
function usedBy(power: PartPower, module: PlacedModule): number | undefined {
  let used: number | undefined;
  for (const [line, ma] of module.facts.draws) {
    const voltage = power.part.kit.voltages.get(line);
    const lostMv = voltage && power.lossMv(module, voltage);
    if (!voltage || lostMv === undefined) continue;
    used = (used ?? 0) + ((ma ?? 0) / 1000) * (Math.abs(voltage.volts) - lostMv / 1000);
  }
  return used;
}

/** Of currents in mA through a resistance, W. */
const heat = (ohm: number, ma: number): number => ohm * (ma / 1000) ** 2;

const lostIn = (power: PartPower): number =>
  sum(power.network.grid.ohm.map((ohm, branch) => heat(ohm, power.maIn(branch))));

function lostInLeads({ take, draws }: Power): number {
  const { places, limits } = take;
  return sum(
    places.boards.map(({ board, index }) => {
      const ohm = board.lead
        ? (ohmsPerMetre(board.lead.awg, limits.ambientC) * board.lead.lengthMm) / 1000
        : 0;
      return sum((draws.boards[index] ?? []).map((ma) => heat(ohm, ma)));
    }),
  );
}

/** Where the power of a take goes. Draws that nobody knows count for nothing. */
export function wattsOf(power: Power): Watts {
  const { take, parts, draws } = power;
  const { kit } = take;
  const volts = kit.supplyLines.map((line) => Math.abs(kit.voltages.get(line)?.volts ?? 0));
  const modules = new Map<PlacedModule, number>();
  for (const part of parts) {
    for (const module of part.part.places.modules) {
      const used = usedBy(part, module);
      if (used !== undefined) modules.set(module, used);
    }
  }
  return {
    supplies: draws.supplies.map((byLine) =>
      sum(byLine.map((ma, line) => ((volts[line] as number) * ma) / 1000)),
    ),
    modules,
    lost: sum(parts.map(lostIn)) + lostInLeads(power),
  };
}
