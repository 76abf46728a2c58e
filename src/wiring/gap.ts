import { type HeldArch, heldArch } from '../geometry/arch.ts';
import { EPSILON, exceeds } from '../geometry/exceeds.ts';
import type { Limits } from '../layout/layout.ts';
import type { DerivedTake } from './derived-take.ts';
import { crossesJoint, distanceMm, inOneRow, isOutOfLine, type Neighbours, wayMm } from './neighbours.ts';

/** What the rules on neighbours need to know of a take. */
export type GapRules = Pick<DerivedTake, 'limits' | 'crossed'>;

/** Neighbours on one flat ribbon in one row: those whose gap can be computed. */
const isGap = (pair: Neighbours): boolean => pair.lay !== 'loose' && !crossesJoint(pair) && inOneRow(pair);

const isCrossed = ({ ribbons }: Neighbours, { crossed }: GapRules): boolean =>
  ribbons.some((ribbon) => crossed.has(ribbon));

/** The arch in which a bending ribbon stands between two neighbours; nothing where it lies straight. */
export function archOf(pair: Neighbours, rules: GapRules): HeldArch | undefined {
  const { limits } = rules;
  if (pair.lay !== 'bending' || !isGap(pair) || isOutOfLine(pair, limits)) return undefined;
  if (isCrossed(pair, rules)) return undefined;
  const distance = distanceMm(pair);
  if (distance >= pair.lengthMm - limits.seatToleranceMm - EPSILON) return undefined;
  return heldArch(pair.lengthMm, distance, limits.connectorBodyMm);
}

/** Whether an arch bends more sharply than allowed, or folds onto itself. */
export const isTight = (arch: HeldArch, { bendRadiusMm }: Limits): boolean =>
  arch.kind === 'legs-touch' || arch.radiusMm < bendRadiusMm - EPSILON;

/** Ribbon that two neighbours need between them, mm: their distance, or the way of a lead with what it must have to spare. */
export const neededMm = (pair: Neighbours, { leadAllowanceMm }: Limits): number =>
  pair.lay === 'loose' ? wayMm(pair) + leadAllowanceMm : distanceMm(pair);

/** How much too short a bending or loose ribbon is between two neighbours, mm; nothing where it reaches. */
export function missingMm(pair: Neighbours, rules: GapRules): number | undefined {
  const { limits } = rules;
  const tolMm = pair.lay === 'loose' ? 0 : limits.seatToleranceMm;
  if (pair.lay === 'stiff') return undefined;
  if (pair.lay === 'bending' && (isOutOfLine(pair, limits) || isCrossed(pair, rules))) return undefined;
  const missing = neededMm(pair, limits) - pair.lengthMm;
  return exceeds(missing, tolMm) ? missing : undefined;
}

/** Whether two connectors side by side have no room for their bodies. */
export const isCrowded = (pair: Neighbours, rules: GapRules): boolean =>
  isGap(pair) && !isCrossed(pair, rules) && !exceeds(distanceMm(pair), rules.limits.connectorBodyMm);

/** Depth that a ribbon needs behind the panels between two neighbours, mm; nothing where one of them has none. */
export function depthNeededMm(pair: Neighbours, rules: GapRules): number | undefined {
  const { zMm: a } = pair.a.on.header;
  const { zMm: b } = pair.b.on.header;
  if (!isGap(pair) || a === undefined || b === undefined) return undefined;
  return Math.max(a, b) + (archOf(pair, rules)?.heightMm ?? 0) + rules.limits.ribbonMm;
}

/** What keeps a ribbon from lying between two neighbours; each is a check of that name. */
type GapFlaw = 'out-of-line' | 'short-ribbon' | 'lead-short' | 'tight-bend' | 'crowded' | 'no-clearance';

/** Everything about the ribbon between two neighbours. */
export interface Gap {
  readonly pair: Neighbours;
  readonly neededMm: number;
  readonly missingMm?: number;
  readonly arch?: HeldArch;
  readonly flaws: readonly GapFlaw[];
}

/** Judges the ribbon between two neighbours as the checks do. */
export function gapOf(pair: Neighbours, rules: GapRules): Gap {
  const { limits } = rules;
  const missing = missingMm(pair, rules);
  const arch = archOf(pair, rules);
  const depth = depthNeededMm(pair, rules);
  const flaws: GapFlaw[] = [];
  if (pair.lay === 'bending' && isOutOfLine(pair, limits)) flaws.push('out-of-line');
  if (missing !== undefined) flaws.push(pair.lay === 'loose' ? 'lead-short' : 'short-ribbon');
  if (arch && isTight(arch, limits)) flaws.push('tight-bend');
  if (isCrowded(pair, rules)) flaws.push('crowded');
  if (depth !== undefined && exceeds(depth, pair.a.on.header.row.row.depthMm)) flaws.push('no-clearance');
  return {
    pair,
    neededMm: neededMm(pair, limits),
    ...(missing !== undefined && { missingMm: missing }),
    ...(arch && { arch }),
    flaws,
  };
}
