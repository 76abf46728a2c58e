import type { PlacedBoard, PlacedHeader } from '../geometry/place.ts';
import type { Joint, LaidRibbon } from './laid-ribbon.ts';
import { UnionFind } from './union-find.ts';

/** A conducting seat on a header. */
export interface HeaderJoint extends Joint {
  readonly on: { readonly type: 'header'; readonly header: PlacedHeader };
}

/** Ribbons joined plug in socket; one ribbon alone is a harness. */
export interface Harness {
  /** In its part of the take. */
  readonly index: number;
  readonly ribbons: readonly LaidRibbon[];
  /** Conducting seats on headers of modules, and of boards, in document order. */
  readonly moduleSeats: readonly HeaderJoint[];
  readonly boardSeats: readonly HeaderJoint[];
}

/** A conducting seat on a board makes it a feed harness, else it is a link harness. */
export const isFeed = (harness: Harness): boolean => harness.boardSeats.length > 0;

export const isHeaderJoint = (joint: Joint): joint is HeaderJoint => joint.on.type === 'header';

/** Supplies, by index in the take, whose boards a harness is seated on; each once. */
export const suppliesOf = (harness: Harness): ReadonlySet<number> =>
  new Set(harness.boardSeats.map(({ on }) => (on.header.owner as PlacedBoard).supplyIndex));

/** Sorts ribbons into harnesses, each in document order. */
export function findHarnesses(ribbons: readonly LaidRibbon[], joints: readonly Joint[]) {
  const sets = new UnionFind(ribbons.length);
  const numberOf = new Map(ribbons.map((ribbon, number) => [ribbon, number]));
  const setOf = (ribbon: LaidRibbon): number => sets.find(numberOf.get(ribbon) as number);
  for (const joint of joints) {
    if (joint.on.type === 'connector' && joint.conducts)
      sets.join(setOf(joint.ribbon), setOf(joint.on.ribbon));
  }
  const byRoot = new Map<number, Harness>();
  const harnesses: Harness[] = [];
  const harnessOf = new Map<LaidRibbon, Harness>();
  for (const ribbon of ribbons) {
    const root = setOf(ribbon);
    let harness = byRoot.get(root);
    if (!harness) {
      harness = { index: harnesses.length, ribbons: [], moduleSeats: [], boardSeats: [] };
      byRoot.set(root, harness);
      harnesses.push(harness);
    }
    (harness.ribbons as LaidRibbon[]).push(ribbon);
    harnessOf.set(ribbon, harness);
  }
  for (const joint of joints) {
    if (!isHeaderJoint(joint) || !joint.conducts) continue;
    const harness = harnessOf.get(joint.ribbon) as Harness;
    const seats = joint.on.header.owner.type === 'module' ? harness.moduleSeats : harness.boardSeats;
    (seats as HeaderJoint[]).push(joint);
  }
  return { harnesses, harnessOf: harnessOf as ReadonlyMap<LaidRibbon, Harness> };
}
