import { powerOf, type SpanCurrent, spanCurrents, type WholeTake } from '../../src/index.ts';
import { type HeatFigure, heatOf } from '../canvas/draw/heat.ts';
import type { Heat } from '../canvas/draw/paper.ts';
import { moduleRows } from './module-rows.ts';
import { millivolts } from './power-words.ts';

/** The heat map of a take for a voltage or ground; nothing where its kit has no such line. */
export function heatMap(take: WholeTake, line: string): Heat | undefined {
  if (!take.kit.supplyLines.includes(line)) return undefined;
  const power = powerOf(take);
  const figures = new Map(
    moduleRows(power, line).map(({ id, atLeast, arrival }): [string, HeatFigure] => [
      id,
      arrival
        ? {
            texts: [`${atLeast ? '≥ ' : ''}${millivolts(arrival.mv)}`],
            share: Math.abs(arrival.mv) / Math.max(arrival.allowedMv, 1e-9),
          }
        : { texts: ['not reached', 'none'] },
    ]),
  );
  const spans = new Map<string, SpanCurrent[]>();
  for (const span of spanCurrents(power, line)) {
    const known = spans.get(span.ribbon.id);
    if (known) known.push(span);
    else spans.set(span.ribbon.id, [span]);
  }
  return heatOf({ figures, spans, contactMa: take.limits.contactMa });
}
