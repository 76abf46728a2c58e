import type { Limits } from '../layout/layout.ts';
import { type HeldArch, heldArch } from './arch.ts';
import { EPSILON, exceeds } from './exceeds.ts';

/*
 * A ribbon cut to measure for headers in a row: where its connectors are pressed on, so that each gap between two of
 * them has the slack asked for, and the arch that this slack makes. Every judgement is that of the checks on
 * neighbours, so that what is cut by these figures lies without a note.
 */

/** A header that the ribbon is to sit on: along its row, its height in it, and behind the panel, mm. */
export interface CutPlace {
  readonly xMm: number;
  readonly yMm: number;
  readonly zMm: number;
}

/** The ribbon between two headers side by side. */
export interface CutGap {
  readonly distanceMm: number;
  /** More ribbon than distance. */
  readonly slackMm: number;
  /** Between the middles of its two connectors. */
  readonly lengthMm: number;
  /** Nothing where the ribbon lies straight, play included. */
  readonly arch?: HeldArch;
  /** Left between the crown, or the straight ribbon, and the floor of the case; negative where it is pressed. */
  readonly clearanceMm: number;
  readonly flaws: readonly CutFlaw[];
}

/** What is amiss with a gap; each is a check of that name. */
export type CutFlaw = 'out-of-line' | 'crowded' | 'tight-bend' | 'no-clearance';

export interface Cut {
  /** Of each connector, the first at 0, in the order of the headers. */
  readonly placesMm: readonly number[];
  readonly gaps: readonly CutGap[];
  /** Of ribbon to cut: from the first connector to the last, and what stands out at both ends. */
  readonly lengthMm: number;
}

/** What the ribbon is cut for. */
export interface CutCase {
  /** In the order along the ribbon; at least two. */
  readonly places: readonly CutPlace[];
  /** Of the row, behind the panels, mm. */
  readonly depthMm: number;
  readonly limits: Limits;
}

/** Ribbon left beyond the middle of the first and of the last connector, to press them on and trim, mm (common practice, no source). */
export const CUT_END_MM = 5;

/** A ribbon that may bend has this slack in each gap, the larger of both (physics: made to measure). */
const LEAST_SLACK_MM = 5;
const SLACK_SHARE = 0.08;

/** Slack is measured out in steps of this, mm: finer is not pressed on by hand. */
const STEP_MM = 0.1;

const tidy = (mm: number): number => Number(mm.toFixed(6));

/** Whole steps, rounded down. */
const stepped = (mm: number): number => tidy(Math.floor(mm / STEP_MM + EPSILON) * STEP_MM);

function gapBetween(a: CutPlace, b: CutPlace, slackMm: number, bends: boolean, of: CutCase): CutGap {
  const { limits, depthMm } = of;
  const distanceMm = tidy(Math.abs(b.xMm - a.xMm));
  const lengthMm = tidy(distanceMm + slackMm);
  const skewMm = Math.abs(b.yMm - a.yMm);
  const standsUp = bends && distanceMm < lengthMm - limits.seatToleranceMm - EPSILON;
  const arch = standsUp ? heldArch(lengthMm, distanceMm, limits.connectorBodyMm) : undefined;
  const needed = Math.max(a.zMm, b.zMm) + (arch?.heightMm ?? 0) + limits.ribbonMm;
  const isTight = arch && (arch.kind === 'legs-touch' || arch.radiusMm < limits.bendRadiusMm - EPSILON);
  const flaws: CutFlaw[] = [];
  if (exceeds(skewMm, bends ? limits.skewMm : limits.seatToleranceMm)) flaws.push('out-of-line');
  if (!exceeds(distanceMm, limits.connectorBodyMm)) flaws.push('crowded');
  if (isTight) flaws.push('tight-bend');
  if (exceeds(needed, depthMm)) flaws.push('no-clearance');
  return { distanceMm, slackMm, lengthMm, ...(arch && { arch }), clearanceMm: depthMm - needed, flaws };
}

/** Whether the arch of that slack stands free in the case and bends no more than it may. */
const stands = ({ flaws }: CutGap): boolean =>
  !flaws.includes('tight-bend') && !flaws.includes('no-clearance');

/**
 * Slack for a gap of a ribbon that may bend, mm: the larger of 5 mm and 8 % of the distance, if its arch clears the
 * case and does not bend too sharply; else the smaller; else the most, in tenths of a millimetre, that does.
 * Nothing where the ribbon must lie straight.
 */
function slackBetween(a: CutPlace, b: CutPlace, of: CutCase): number {
  const share = stepped(SLACK_SHARE * Math.abs(b.xMm - a.xMm));
  const fits = (slackMm: number): boolean => stands(gapBetween(a, b, slackMm, true, of));
  const usual = [LEAST_SLACK_MM, share].sort((one, other) => other - one);
  const [largest = 0] = usual;
  const found = usual.find((slackMm) => slackMm > 0 && fits(slackMm));
  if (found !== undefined) return found;
  // Height and sharpness both grow with little slack, so that the first that fits from above is the most.
  for (let steps = Math.floor(largest / STEP_MM); steps > 0; steps--) {
    const slackMm = tidy(steps * STEP_MM);
    if (fits(slackMm)) return slackMm;
  }
  return 0;
}

const pairsOf = (places: readonly CutPlace[]): (readonly [CutPlace, CutPlace])[] =>
  places.slice(1).map((place, i) => [places[i] as CutPlace, place]);

/** Usual slack for each gap, mm; nothing for one that must lie straight. */
export const usualSlacks = (of: CutCase): readonly number[] =>
  pairsOf(of.places).map(([a, b]) => slackBetween(a, b, of));

/**
 * A ribbon for these headers.
 *
 * @param slacksMm - of each gap; absent: none anywhere, for a ribbon that does not bend
 */
export function cutRibbon(of: CutCase, slacksMm?: readonly number[]): Cut {
  const { places, limits } = of;
  const gaps = pairsOf(places).map(([a, b], i) =>
    gapBetween(a, b, slacksMm?.[i] ?? 0, slacksMm !== undefined, of),
  );
  const placesMm = [0];
  for (const { lengthMm } of gaps) placesMm.push(tidy((placesMm.at(-1) ?? 0) + lengthMm));
  const stray = slacksMm === undefined && isOffLine(places, limits);
  return {
    placesMm,
    gaps: stray ? gaps.map((gap) => ({ ...gap, flaws: withOutOfLine(gap.flaws) })) : gaps,
    lengthMm: tidy((placesMm.at(-1) ?? 0) + 2 * CUT_END_MM),
  };
}

const withOutOfLine = (flaws: readonly CutFlaw[]): readonly CutFlaw[] =>
  flaws.includes('out-of-line') ? flaws : ['out-of-line', ...flaws];

/** Neighbours may each be near enough in height, and the first and the last not. */
function isOffLine(places: readonly CutPlace[], { seatToleranceMm }: Limits): boolean {
  const heights = places.map(({ yMm }) => yMm);
  return exceeds(Math.max(...heights) - Math.min(...heights), seatToleranceMm);
}
