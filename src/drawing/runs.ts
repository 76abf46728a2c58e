import { ribbonWidthMm } from '../geometry/connector.ts';
import type { DerivedTake } from '../wiring/derived-take.ts';
import { connectorAt, type LaidRibbon } from '../wiring/laid-ribbon.ts';
import { connectorPoints } from './connector-points.ts';
import { type Knot, knotAt } from './knot.ts';
import { leadCurve } from './lead-curve.ts';
import type { Box, Point, Sheet } from './sheet.ts';

/** A ribbon on the sheet, with its connectors in their order along it. */
export interface Run {
  readonly ribbon: LaidRibbon;
  /** Half of its width as drawn, px; a loose ribbon hangs on edge and looks narrower. */
  readonly half: number;
  readonly knots: readonly Knot[];
  /** Its middle line: straight from connector to connector, or hanging. */
  readonly line: readonly Point[];
  /** All of it, connectors included. */
  readonly box: Box;
  /** Seated on a board: a lead that feeds. */
  readonly feeds: boolean;
}

/** Share of its width that a loose ribbon shows. */
const ON_EDGE = 0.25;

function boxOfRun(line: readonly Point[], knots: readonly Knot[], half: number): Box {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  const cover = ({ x, y }: Point, halfWidth: number, halfHeight: number): void => {
    left = Math.min(left, x - halfWidth);
    right = Math.max(right, x + halfWidth);
    top = Math.min(top, y - halfHeight);
    bottom = Math.max(bottom, y + halfHeight);
  };
  for (const point of line) cover(point, half, half);
  for (const knot of knots) cover(knot, knot.halfWidth, knot.halfHeight);
  return { left, top, right, bottom };
}

function layRun(sheet: Sheet, take: DerivedTake, ribbon: LaidRibbon): Run | undefined {
  const points = connectorPoints(sheet, take, ribbon);
  if (!points) return undefined;
  const { conductors, flat } = ribbon.facts;
  const knots = points.map((point, order) => knotAt(sheet, take, ribbon, connectorAt(ribbon, order), point));
  const line = flat ? knots : knots.slice(1).flatMap((knot, i) => leadCurve(sheet, knots[i] as Knot, knot));
  const half = (ribbonWidthMm(conductors) * sheet.scale * (flat ? 1 : ON_EDGE)) / 2;
  const feeds = knots.some(({ header }) => header?.owner.type === 'board');
  return { ribbon, half, knots, line, box: boxOfRun(line, knots, half), feeds };
}

interface LaidRuns {
  readonly side: Sheet['side'];
  readonly scale: number;
  readonly runs: Map<LaidRibbon, Run | undefined>;
}

/** Painting and pointing ask for the same runs again and again; a take never changes. */
const laid = new WeakMap<DerivedTake, LaidRuns>();

function runsLaid({ side, scale }: Sheet, take: DerivedTake): LaidRuns['runs'] {
  const known = laid.get(take);
  if (known && known.side === side && known.scale === scale) return known.runs;
  const runs: LaidRuns['runs'] = new Map();
  laid.set(take, { side, scale, runs });
  return runs;
}

/** Where a ribbon of a take runs on its sheet; nothing if it is seated nowhere. */
export function runOf(sheet: Sheet, take: DerivedTake, ribbon: LaidRibbon): Run | undefined {
  const runs = runsLaid(sheet, take);
  if (!runs.has(ribbon)) runs.set(ribbon, layRun(sheet, take, ribbon));
  return runs.get(ribbon);
}
