import type { PlacedModule } from '../geometry/place.ts';
import type { DerivedTake } from '../wiring/derived-take.ts';

/** How far a module reaches behind the panel. */
export interface Reach {
  readonly depthMm: number;
  /** A seated plug adds to a depth that was given without plugs. */
  readonly plugMm: number;
}

/** Depth of a module as wired, mm; nothing where it is unknown. */
export function reachOf(module: PlacedModule, { wiring, limits }: DerivedTake): Reach | undefined {
  const { depthMm, depthIs } = module.facts.kind;
  if (depthMm === undefined) return undefined;
  const plugged = depthIs === 'without-plugs' && module.headers.some((header) => wiring.seatedOn.has(header));
  return { depthMm, plugMm: plugged ? limits.plugMm : 0 };
}

export const totalMm = ({ depthMm, plugMm }: Reach): number => depthMm + plugMm;

/** "34 mm", or "34 mm and 15 mm for the plug". */
export const reachWords = ({ depthMm, plugMm }: Reach, mm: (value: number) => string): string =>
  plugMm > 0 ? `${mm(depthMm)} and ${mm(plugMm)} for the plug` : mm(depthMm);
