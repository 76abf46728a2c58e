import { type Draws, type PartPower, type Power, powerOf } from '../electrical/power.ts';
import type { PlacedBoard } from '../geometry/place.ts';
import { BOARD_Y_MM } from '../layout/defaults.ts';
import type { Supply } from '../layout/layout.ts';
import { remember } from '../layout/remember.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import type { Found, Spot } from './check.ts';
import { figure } from './words.ts';

/** What a rule finds in the currents of each part; said again of parts in which nothing has changed. */
export function inEachPart(
  judge: (part: PartPower) => Iterable<Found>,
): (take: WholeTake) => Iterable<Found> {
  const foundIn = remember((part: PartPower): readonly Found[] => [...judge(part)]);
  return function* (take) {
    for (const part of powerOf(take).parts) yield* foundIn(part);
  };
}

/** What a rule finds in what supplies and boards give; said again as long as they give the same. */
export function inDraws(judge: (power: Power) => Iterable<Found>): (take: WholeTake) => readonly Found[] {
  const known = new WeakMap<Draws, readonly Found[]>();
  return (take) => {
    const power = powerOf(take);
    const found = known.get(power.draws) ?? [...judge(power)];
    known.set(power.draws, found);
    return found;
  };
}

/** Three figures: all that an estimate from nominal values is good for. */
export const estimate = (value: number): string => figure(value, value === 0 ? 0 : decimalsFor(value));

const decimalsFor = (value: number): number =>
  Math.min(6, Math.max(0, 2 - Math.floor(Math.log10(Math.abs(value)))));

export const ma = (value: number): string => `${estimate(value)} mA`;
export const mv = (value: number): string => `${estimate(value)} mV`;

/** How much is drawn beyond what is allowed; both told with as many figures as it takes to tell them apart. */
export function beyond(drawn: number, allowed: number): string {
  const [most, least] = [ma(drawn), ma(allowed)];
  return most === least ? `${figure(drawn, 6)} of ${figure(allowed, 6)} mA` : `${most} of ${least}`;
}

export const boardSpot = ({ row, board }: PlacedBoard): Spot => ({
  row: row.row.id,
  xMm: board.xMm + (board.widthMm ?? 0) / 2,
  yMm: board.yMm ?? BOARD_Y_MM,
});

/** A supply stands nowhere in the rack; its boards do. */
export const supplySpots = (supply: Supply, { take }: Power): Spot[] =>
  take.places.boards.filter((board) => board.supply === supply).map(boardSpot);
