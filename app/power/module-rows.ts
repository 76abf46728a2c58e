import {
  dropMvOf,
  GND,
  type ModuleKind,
  type PartPower,
  type PlacedModule,
  type Power,
} from '../../src/index.ts';

/** What is known of the current that a module draws, so that figures are trusted no further than they go. */
export type Ground = NonNullable<ModuleKind['known']> | 'not said';

/** How one supply line arrives at a module. */
export interface ModuleRow {
  readonly id: string;
  readonly name: string;
  /** Nobody knows how much of it the module draws; for ground, how much of any voltage. */
  readonly isDrawUnknown: boolean;
  /** Such a draw, its own or of what it shares ribbon with, is counted as none: more is lost than is told. */
  readonly atLeast: boolean;
  readonly known: Ground;
  /** Absent where the line does not arrive. */
  readonly arrival?: Arrival;
}

interface Arrival {
  /** Between the line and the module's own ground; absent for ground. */
  readonly volts?: number;
  /** Lost there and back; for ground its shift against the supply's. */
  readonly mv: number;
  /** The module's ground against its supply's, mV. */
  readonly groundMv: number;
  /** Of `mv`: for ground what is worth knowing between linked modules. */
  readonly allowedMv: number;
}

function arrivalOf(power: PartPower, module: PlacedModule, line: string): Arrival | undefined {
  const groundMv = power.shiftMv(module, GND);
  if (groundMv === undefined) return undefined;
  const { kit, limits } = power.part;
  if (line === GND) return { mv: groundMv, groundMv, allowedMv: limits.groundShiftMv };
  const voltage = kit.voltages.get(line);
  const mv = voltage && power.lossMv(module, voltage);
  const volts = voltage && power.voltsAt(module, voltage);
  if (!voltage || mv === undefined || volts === undefined) return undefined;
  return { volts, mv, groundMv, allowedMv: dropMvOf(voltage) };
}

/** Whether a module draws an unknown current of a voltage; for ground, of any. */
const drawsUnknown = ({ facts: { unknownDraws } }: PlacedModule, line: string): boolean =>
  line === GND ? unknownDraws.length > 0 : unknownDraws.includes(line);

/** Whether a module needs a line: a voltage that it draws, or ground if it draws any. */
const needs = ({ facts }: PlacedModule, line: string): boolean =>
  line === GND ? facts.draws.length > 0 : facts.draws.some(([drawn]) => drawn === line);

function rowOf(
  power: PartPower,
  module: PlacedModule,
  line: string,
  atLeast: boolean,
): ModuleRow | undefined {
  const arrival = arrivalOf(power, module, line);
  if (!arrival && !needs(module, line)) return undefined;
  const { kind } = module.facts;
  return {
    id: module.id,
    name: module.name,
    isDrawUnknown: drawsUnknown(module, line),
    atLeast,
    known: kind.known ?? 'not said',
    ...(arrival && { arrival }),
  };
}

/** What stands first where the worst does: what does not arrive, then what loses most. */
export const badness = ({ arrival }: ModuleRow): number =>
  arrival ? Math.abs(arrival.mv) : Number.POSITIVE_INFINITY;

/** Every module that a line reaches or that needs it, the worst first. */
export function moduleRows({ parts }: Power, line: string): readonly ModuleRow[] {
  const rows = parts.flatMap((power) => {
    const { modules } = power.part.places;
    // Any current shifts ground, by which all losses are measured.
    const atLeast = modules.some((module) => drawsUnknown(module, GND));
    return modules.flatMap((module) => rowOf(power, module, line, atLeast) ?? []);
  });
  return rows.sort((a, b) =>
    badness(a) === badness(b) ? a.name.localeCompare(b.name) : badness(b) - badness(a),
  );
}
