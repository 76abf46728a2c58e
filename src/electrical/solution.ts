import { GND } from '../layout/defaults.ts';
import { remember } from '../layout/remember.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import type { Defect } from './defect.ts';
import { type PartPower, type Power, powerOf, powerWith } from './power.ts';

type ByLine = Readonly<Record<string, number>>;

/** Current out of the ribbon that owns a seat, on one line: all of it and in each contact, mA. */
interface SeatCurrent {
  readonly ribbon: string;
  readonly connector: number;
  readonly line: string;
  readonly ma: number;
  readonly perContactMa: number;
}

/** Current between two neighbouring connectors, from the lower number to the higher, on one line, mA. */
interface SegmentCurrent {
  readonly ribbon: string;
  readonly from: number;
  readonly to: number;
  readonly line: string;
  readonly ma: number;
  readonly perContactMa: number;
}

/** The direct currents and voltages of a take, estimated from nominal values. */
export interface Solution {
  /** Id of the take. */
  readonly take: string;
  /** V against the supply's ground, by voltage or GND; no entry where a line does not arrive. */
  readonly modules: Readonly<Record<string, ByLine>>;
  /** What is drawn on each voltage, mA. */
  readonly supplies: Readonly<Record<string, ByLine>>;
  readonly boards: Readonly<Record<string, ByLine>>;
  /** Every conducting seat, by ribbon and connector, then every voltage and GND. */
  readonly seats: readonly SeatCurrent[];
  readonly segments: readonly SegmentCurrent[];
}

interface RibbonCurrents {
  readonly index: number;
  readonly seats: readonly SeatCurrent[];
  readonly segments: readonly SegmentCurrent[];
}

const perShare = (ma: number, shares: number): number => (shares > 0 ? ma / shares : 0);

function seatCurrents(power: PartPower): Map<string, SeatCurrent[]> {
  const { supplyLines } = power.part.kit;
  const byRibbon = new Map<string, SeatCurrent[]>();
  const inOrder = power.network.seats.toSorted((a, b) => a.joint.connector - b.joint.connector);
  for (const { joint, branches, shares } of inOrder) {
    const { id } = joint.ribbon;
    const list = byRibbon.get(id) ?? [];
    byRibbon.set(id, list);
    supplyLines.forEach((line, i) => {
      const ma = power.maIn(branches[i] as number);
      const perContactMa = perShare(ma, shares[i] as number);
      list.push({ ribbon: id, connector: joint.connector, line, ma, perContactMa });
    });
  }
  return byRibbon;
}

function segmentCurrents(power: PartPower, index: number): SegmentCurrent[] {
  const { supplyLines } = power.part.kit;
  const { ribbon, spans } = power.network.ribbons[index] as PartPower['network']['ribbons'][number];
  const list: SegmentCurrent[] = [];
  let at = 0;
  for (let from = 0; from + 1 < ribbon.uses.length; from++) {
    while ((spans[at]?.to ?? Number.POSITIVE_INFINITY) <= from) at++;
    const span = spans[at];
    const isWithin = span !== undefined && span.from <= from;
    supplyLines.forEach((line, i) => {
      const ma = isWithin ? power.maIn(span.branches[i] as number) : 0;
      const perContactMa = isWithin ? perShare(ma, span.shares[i] as number) : 0;
      list.push({ ribbon: ribbon.id, from, to: from + 1, line, ma, perContactMa });
    });
  }
  return list;
}

/** Kept with what flows in a part. */
const ribbonCurrents = remember((power: PartPower): readonly RibbonCurrents[] => {
  const seats = seatCurrents(power);
  return power.network.ribbons.map(({ ribbon: { id, index } }, i) => ({
    index,
    seats: seats.get(id) ?? [],
    segments: segmentCurrents(power, i),
  }));
});

const moduleVolts = remember((power: PartPower): readonly (readonly [id: string, volts: ByLine])[] => {
  const { kit, places } = power.part;
  return places.modules.flatMap((module) => {
    const volts = kit.supplyLines.flatMap((line): [string, number][] => {
      const mv = power.shiftMv(module, line);
      return mv === undefined ? [] : [[line, (kit.voltages.get(line)?.volts ?? 0) + mv / 1000]];
    });
    return volts.length > 0 ? [[module.id, Object.fromEntries(volts)] as const] : [];
  });
});

function inOne<T>(lists: readonly (readonly T[])[]): T[] {
  const all: T[] = [];
  for (const list of lists) for (const item of list) all.push(item);
  return all;
}

function solutionOf({ take, parts, draws }: Power): Solution {
  const { kit, places, wiring } = take;
  const voltages = kit.supplyLines.filter((line) => line !== GND);
  const byVoltage = (currents: readonly number[] | undefined): ByLine =>
    Object.fromEntries(voltages.map((line, i) => [line, currents?.[i] ?? 0]));
  const seats = new Array<readonly SeatCurrent[]>(wiring.ribbons.length);
  const segments = new Array<readonly SegmentCurrent[]>(wiring.ribbons.length);
  for (const part of parts) {
    for (const { index, seats: own, segments: between } of ribbonCurrents(part)) {
      seats[index] = own;
      segments[index] = between;
    }
  }
  return {
    take: take.take.id,
    modules: Object.fromEntries(parts.flatMap(moduleVolts)),
    supplies: Object.fromEntries(take.take.supplies.map(({ id }, i) => [id, byVoltage(draws.supplies[i])])),
    boards: Object.fromEntries(places.boards.map(({ id, index }) => [id, byVoltage(draws.boards[index])])),
    seats: inOne(seats),
    segments: inOne(segments),
  };
}

/** The solution of a take, worked out once. */
export const solveTake = remember((take: WholeTake): Solution => solutionOf(powerOf(take)));

/** The solution of a take in which something is broken or bridged. */
export const solveWith = (take: WholeTake, defects: readonly Defect[]): Solution =>
  solutionOf(powerWith(take, defects));
