import { exceeds } from '../geometry/exceeds.ts';
import type { Limits } from '../layout/layout.ts';
import { type Harness, type HeaderJoint, isHeaderJoint } from './harness.ts';
import { atMmOf, connectorAt, isWrongAxis, type Joint, type LaidRibbon, orderOf } from './laid-ribbon.ts';

/** Seats that have a place along each ribbon, first along it first. */
export type SeatsAlong = ReadonlyMap<LaidRibbon, readonly HeaderJoint[]>;

/** Two seats with no other seat on the way between them, the first in document order first. */
export interface Neighbours {
  readonly a: HeaderJoint;
  readonly b: HeaderJoint;
  /** Ribbon between the two, mm. */
  readonly lengthMm: number;
  /** All ribbons on the way, in document order. */
  readonly ribbons: readonly LaidRibbon[];
  /** Loose where any of the ribbons hangs freely; bending where one may, or plug and socket hang between. */
  readonly lay: 'stiff' | 'bending' | 'loose';
}

export const crossesJoint = ({ ribbons }: Neighbours): boolean => ribbons.length > 1;

export const inOneRow = ({ a, b }: Neighbours): boolean => a.on.header.row === b.on.header.row;

/** Distance between the two headers along the row, mm. */
export const distanceMm = ({ a, b }: Neighbours): number => Math.abs(a.on.header.xMm - b.on.header.xMm);

/** Way of a loose ribbon between two seats, along the row and up and down, across rows too, mm. */
export function wayMm(pair: Neighbours): number {
  const height = ({ on: { header } }: HeaderJoint): number => header.row.bottomMm + header.yMm;
  return distanceMm(pair) + Math.abs(height(pair.a) - height(pair.b));
}

/** Difference of the two headers' heights in their row, mm. */
export const skewMm = ({ a, b }: Neighbours): number => Math.abs(a.on.header.yMm - b.on.header.yMm);

/** Whether two neighbours are not in one line, so that no length along the row can be compared. */
export const isOutOfLine = (pair: Neighbours, limits: Limits): boolean =>
  !inOneRow(pair) || exceeds(skewMm(pair), limits.skewMm);

function layOf(ribbons: readonly LaidRibbon[]): Neighbours['lay'] {
  if (ribbons.some(({ facts }) => !facts.flat)) return 'loose';
  return ribbons.length > 1 || ribbons.some(({ facts }) => facts.bends) ? 'bending' : 'stiff';
}

/**
 * Steps after which the search of one harness ends. Harnesses of a case take a few hundred; the bound keeps
 * a document made to be slow (thousands of ribbons joined into a star) from stopping the program.
 */
const MOST_STEPS = 200_000;

/** Two seats with so much ribbon between them. */
export function pairUp(
  a: HeaderJoint,
  b: HeaderJoint,
  lengthMm: number,
  ribbons: readonly LaidRibbon[],
): Neighbours {
  const [first, second] = a.order < b.order ? [a, b] : [b, a];
  return { a: first, b: second, lengthMm, ribbons, lay: layOf(ribbons) };
}

/** Along a single ribbon neighbours are simply the seats that follow one another. */
export function pairsAlong(ribbon: LaidRibbon, along: readonly HeaderJoint[]): Neighbours[] {
  const own = [ribbon];
  const pairs: Neighbours[] = [];
  for (let i = 1; i < along.length; i++) {
    const seat = along[i] as HeaderJoint;
    const before = along[i - 1] as HeaderJoint;
    pairs.push(pairUp(before, seat, atMmOf(ribbon, seat.connector) - atMmOf(ribbon, before.connector), own));
  }
  return pairs;
}

interface Step {
  readonly ribbon: LaidRibbon;
  readonly connector: number;
  readonly lengthMm: number;
  readonly ribbons: readonly LaidRibbon[];
}

/** The other end of a conducting joint between ribbons. */
function acrossJoint(
  joint: Joint,
  ribbon: LaidRibbon,
): { ribbon: LaidRibbon; connector: number } | undefined {
  if (joint.on.type !== 'connector' || !joint.conducts) return undefined;
  return joint.ribbon === ribbon ? joint.on : joint;
}

function stepsFrom(step: Step): Step[] {
  const { ribbon, connector } = step;
  const steps: Step[] = [];
  const at = orderOf(ribbon, connector);
  for (const order of [at - 1, at + 1]) {
    if (order < 0 || order >= ribbon.facts.connectors.length) continue;
    const next = connectorAt(ribbon, order);
    const piece = Math.abs(atMmOf(ribbon, next) - atMmOf(ribbon, connector));
    steps.push({ ...step, connector: next, lengthMm: step.lengthMm + piece });
  }
  for (const joint of ribbon.uses[connector] as Joint[]) {
    const other = acrossJoint(joint, ribbon);
    if (!other) continue;
    const { ribbons } = step;
    steps.push({
      ribbon: other.ribbon,
      connector: other.connector,
      lengthMm: step.lengthMm,
      ribbons: ribbons.includes(other.ribbon) ? ribbons : [...ribbons, other.ribbon],
    });
  }
  return steps;
}

/** A seat, and how much ribbon there is to it. */
export interface Reached {
  readonly seat: HeaderJoint;
  readonly lengthMm: number;
  readonly ribbons: readonly LaidRibbon[];
}

const MOST_STEPS_FROM_CONNECTOR = 2_000;

/** The first seats on every way from a connector of a laid ribbon, through joints too. */
export function seatsAround(ribbon: LaidRibbon, connector: number): Reached[] {
  const found: Reached[] = [];
  const visited = new Map<LaidRibbon, Set<number>>();
  const queue: Step[] = [{ ribbon, connector, lengthMm: 0, ribbons: [ribbon] }];
  for (let step = queue.pop(), n = 0; step && n < MOST_STEPS_FROM_CONNECTOR; step = queue.pop(), n++) {
    const seen = visited.get(step.ribbon) ?? new Set<number>();
    if (seen.has(step.connector)) continue;
    visited.set(step.ribbon, seen.add(step.connector));
    const seat = (step.ribbon.uses[step.connector] as Joint[]).find(
      (joint): joint is HeaderJoint => joint.conducts && isHeaderJoint(joint) && !isWrongAxis(joint),
    );
    if (seat) found.push({ seat, lengthMm: step.lengthMm, ribbons: step.ribbons });
    else queue.push(...stepsFrom(step));
  }
  return found;
}

/** Walks a harness of several ribbons from each seat until the next ones. */
function throughJoints(seats: readonly HeaderJoint[]): Neighbours[] {
  const found: Neighbours[] = [];
  const seatAt = new Map<LaidRibbon, Map<number, HeaderJoint>>();
  for (const seat of seats) {
    const onRibbon = seatAt.get(seat.ribbon) ?? new Map<number, HeaderJoint>();
    onRibbon.set(seat.connector, seat);
    seatAt.set(seat.ribbon, onRibbon);
  }
  let steps = 0;
  for (const start of seats) {
    const visited = new Map<LaidRibbon, Set<number>>();
    const queue: Step[] = [
      { ribbon: start.ribbon, connector: start.connector, lengthMm: 0, ribbons: [start.ribbon] },
    ];
    for (let step = queue.pop(); step && steps < MOST_STEPS; step = queue.pop(), steps++) {
      const seen = visited.get(step.ribbon) ?? new Set<number>();
      if (seen.has(step.connector)) continue;
      visited.set(step.ribbon, seen.add(step.connector));
      const seat = seatAt.get(step.ribbon)?.get(step.connector);
      if (seat && seat !== start) {
        if (start.order < seat.order) {
          const ribbons = [...step.ribbons].sort((a, b) => a.index - b.index);
          found.push(pairUp(start, seat, step.lengthMm, ribbons));
        }
        continue;
      }
      queue.push(...stepsFrom(step));
    }
  }
  return found;
}

/**
 * The neighbours on every harness, boards' seats included. A flat ribbon's seat on a horizontal header has no
 * geometry and counts as none.
 */
export function findNeighbours(harnesses: readonly Harness[], along: SeatsAlong): Neighbours[] {
  const found: Neighbours[] = [];
  for (const { ribbons } of harnesses) {
    const [ribbon, ...others] = ribbons as readonly [LaidRibbon, ...LaidRibbon[]];
    const pairs =
      others.length === 0
        ? pairsAlong(ribbon, along.get(ribbon) ?? [])
        : throughJoints(ribbons.flatMap((each) => along.get(each) ?? []));
    for (const pair of pairs) found.push(pair);
  }
  return found;
}
