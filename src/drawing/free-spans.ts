import type { PlacedModule } from '../geometry/place.ts';

const MINUS = '\u2212';

/** A stretch of a row that no module covers, HP from the front's left. */
export interface FreeSpan {
  readonly fromHp: number;
  readonly toHp: number;
}

/** Stretches of a row that no module covers, from the front's left. */
export function freeSpans(widthHp: number, modules: readonly PlacedModule[]): FreeSpan[] {
  const spans: FreeSpan[] = [];
  let from = 0;
  const taken = modules
    .map(({ module, facts }) => ({ start: module.atHp, end: module.atHp + facts.kind.widthHp }))
    .sort((a, b) => a.start - b.start);
  for (const { start, end } of taken) {
    if (start > from + 1e-9) spans.push({ fromHp: from, toHp: Math.min(start, widthHp) });
    from = Math.max(from, end);
  }
  if (from < widthHp - 1e-9) spans.push({ fromHp: from, toHp: widthHp });
  return spans;
}

/** HP as text: whole, or with what is needed of two decimals. */
export const hpText = (hp: number): string => `${String(Math.round(hp * 100) / 100).replace('-', MINUS)} HP`;
