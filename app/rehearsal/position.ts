import type { Misplug } from '../../src/index.ts';

/** Where a connector is held over a header: turned end for end or not, and so many pin rows and pairs off. */
export interface Position {
  readonly turned: boolean;
  readonly rows: number;
  readonly pairs: number;
}

/** How far it can be moved either way. */
export interface Reach {
  readonly rows: number;
  readonly pairs: number;
}

/** Nobody plugs a connector further off than so many pairs, and the drawing need hold no more. */
const MOST_PAIRS = 3;

const pairsOf = (pins: number): number => Math.ceil(pins / 2);

export const HOME: Position = { turned: false, rows: 0, pairs: 0 };

export const positionOf = ({ type, rows = 0, pairs = 0 }: Misplug): Position => ({
  turned: type === 'reversed',
  rows,
  pairs,
});

export const misplugOf = ({ turned, rows, pairs }: Position): Misplug => ({
  type: turned ? 'reversed' : 'shifted',
  rows,
  pairs,
});

/**
 * As far as some contact still touches a pin: one row, and a few pairs; further where the drawing itself has it
 * further off. The same either way round, so that it can be turned wherever it is.
 */
export function reachOf(contacts: number, pins: number, drawn: Position): Reach {
  const overlap = pairsOf(Math.min(contacts, pins)) - 1;
  return { rows: 1, pairs: Math.max(Math.min(overlap, MOST_PAIRS), Math.abs(drawn.pairs)) };
}

const within = (value: number, most: number): number => Math.min(Math.max(value, -most), most);

export const movedBy = (from: Position, rows: number, pairs: number, reach: Reach): Position => ({
  turned: from.turned,
  rows: within(from.rows + rows, reach.rows),
  pairs: within(from.pairs + pairs, reach.pairs),
});

export const turnedOver = (from: Position): Position => ({ ...from, turned: !from.turned });

export const isSamePosition = (a: Position, b: Position): boolean =>
  a.turned === b.turned && a.rows === b.rows && a.pairs === b.pairs;
