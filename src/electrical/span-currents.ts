import type { LaidRibbon } from '../wiring/laid-ribbon.ts';
import { lineNumber } from './network.ts';
import type { Power } from './power.ts';

/** What one line carries along a ribbon between two connectors next to each other among those in use. */
export interface SpanCurrent {
  readonly ribbon: LaidRibbon;
  readonly from: number;
  readonly to: number;
  /** From the lower number to the higher. */
  readonly ma: number;
  /** Conductors that share it. */
  readonly conductors: number;
}

/** Every span of every ribbon that has conductors for a line, zeros too. */
export function* spanCurrents({ parts, take }: Power, line: string): Generator<SpanCurrent> {
  const number = lineNumber(take.kit, line);
  for (const part of parts) {
    for (const { ribbon, spans } of part.network.ribbons) {
      for (const { from, to, branches, shares } of spans) {
        const conductors = shares[number] ?? 0;
        if (conductors > 0) yield { ribbon, from, to, ma: part.maIn(branches[number] as number), conductors };
      }
    }
  }
}
