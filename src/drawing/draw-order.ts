import type { LaidRibbon } from '../wiring/laid-ribbon.ts';

export const overOf = ({ ribbon }: LaidRibbon): number => ribbon.over ?? 0;

interface HasRibbon {
  readonly ribbon: LaidRibbon;
}

/** Runs that are drawn level by level, each over the one before; most takes have one level only. */
export function levelsOf<R extends HasRibbon>(runs: readonly R[]): readonly (readonly R[])[] {
  if (runs.every(({ ribbon }) => ribbon.ribbon.over === undefined)) return [runs];
  const levels = [...new Set(runs.map(({ ribbon }) => overOf(ribbon)))].sort((a, b) => a - b);
  return levels.map((level) => runs.filter(({ ribbon }) => overOf(ribbon) === level));
}
