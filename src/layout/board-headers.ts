import type { BoardHeader } from './layout.ts';

/** Headers of one sort, side by side along a board. */
export interface HeaderLine {
  readonly count: number;
  readonly bus: string;
  /** From middle to middle. */
  readonly pitchMm: number;
  /** Place of the first one's middle on the board. */
  readonly firstMm: number;
  readonly keyed: boolean;
}

/** Upright headers in a line, numbered from 1, pin 1 down. */
export const headersInLine = ({ count, bus, pitchMm, firstMm, keyed }: HeaderLine): BoardHeader[] =>
  Array.from({ length: count }, (_, i) => ({
    id: `${i + 1}`,
    bus,
    dxMm: Math.round((firstMm + i * pitchMm) * 1000) / 1000,
    pin1: 'down',
    ...(keyed && { keyed }),
  }));
