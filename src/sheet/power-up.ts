import { lineNumber } from '../electrical/network.ts';
import type { PartPower, Power } from '../electrical/power.ts';
import { endSeenFrom } from '../geometry/side.ts';
import { GND } from '../layout/defaults.ts';
import type { PinEnd, Supply, Voltage } from '../layout/layout.ts';
import { remember } from '../layout/remember.ts';
import { type HeaderJoint, isHeaderJoint } from '../wiring/harness.ts';
import { waysOf } from '../wiring/laid-ribbon.ts';
import { gives, type Island } from '../wiring/supply-net.ts';
import type { WholeTake } from '../wiring/whole-take.ts';

/** A seat on a header that takes a connector either way round, to be looked at before anything is switched on. */
export interface SeatToCheck {
  readonly seat: HeaderJoint;
  /** Pins that stay free when it sits right, all at the far end from pin 1. */
  readonly freePins: number;
  /** The end with pin 1 as it is seen from the rear. */
  readonly pin1: PinEnd | undefined;
}

/** Every seat on an open header; boards first, then modules, as the document lists them. */
export function seatsToCheck({ wiring }: WholeTake): readonly SeatToCheck[] {
  const rank = ({ on: { header } }: HeaderJoint): number => (header.owner.type === 'board' ? 0 : 1);
  return wiring.joints
    .filter(isHeaderJoint)
    .filter(({ on }) => !on.header.keyed)
    .toSorted(
      (a, b) =>
        rank(a) - rank(b) ||
        a.on.header.owner.index - b.on.header.owner.index ||
        a.on.header.xMm - b.on.header.xMm,
    )
    .map((seat) => ({
      seat,
      freePins: Math.max(0, seat.on.header.bus.pins - waysOf(seat.ribbon, seat.connector)),
      pin1: endSeenFrom('rear', seat.on.header.pin1),
    }));
}

/** How far a voltage may be off, V: 2 % from 10 V up, 3 % below (common practice, no source). */
export const voltsAllowed = (nominal: number): number =>
  Math.abs(nominal) * (Math.abs(nominal) >= 10 ? 0.02 : 0.03);

/** What an island draws through its feeds. */
export interface IslandDraw {
  readonly island: Island;
  readonly byVoltage: readonly { readonly voltage: string; readonly ma: number }[];
  /** Modules of which a draw is not known. */
  readonly unknown: readonly string[];
}

const branchesOf = remember(
  (power: PartPower) => new Map(power.network.seats.map(({ joint, branches }) => [joint, branches])),
);

/** What each island that has a feed draws, as its conductors carry it: those with the lowest modules first. */
export function islandDraws({ parts, take }: Power): readonly IslandDraw[] {
  const { kit, supplyNet } = take;
  const powerOfSeat = new Map(
    parts.flatMap((part) => part.network.seats.map(({ joint }) => [joint, part] as const)),
  );
  const maInto = (seat: HeaderJoint, { id, volts }: Voltage): number => {
    const part = powerOfSeat.get(seat);
    const branch = part && branchesOf(part).get(seat)?.[lineNumber(kit, id)];
    if (!part || branch === undefined) return 0;
    return part.maIn(branch) * (volts > 0 ? 1 : -1) || 0;
  };
  return supplyNet.islands
    .filter(({ feeds }) => feeds.length > 0)
    .map((island) => ({
      island,
      byVoltage: [...kit.voltages.values()].flatMap((voltage) => {
        const ma = island.feeds.reduce((sum, { seat }) => sum + maInto(seat, voltage), 0);
        const isDrawn = island.modules.some(({ facts }) => facts.draws.some(([line]) => line === voltage.id));
        return isDrawn || ma !== 0 ? [{ voltage: voltage.id, ma }] : [];
      }),
      unknown: island.modules.filter(({ facts }) => facts.unknownDraws.length > 0).map(({ name }) => name),
    }));
}

/** Pairs of lines of a supply between which a meter must find no short: each voltage to ground, and to each other. */
export const shortChecks = ({ take, kit }: WholeTake): readonly { supply: Supply; a: string; b: string }[] =>
  take.supplies.flatMap((supply) => {
    const lines = [...kit.supplyLines.filter((line) => line !== GND && gives(supply, line)), GND];
    return lines.flatMap((a, i) => lines.slice(i + 1).map((b) => ({ supply, a, b })));
  });
