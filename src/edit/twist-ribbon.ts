import type { Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import {
  type Edited,
  editRibbon,
  editTake,
  refuse,
  refuseIfLocked,
  ribbonKindOf,
  ribbonName,
  withField,
} from './change.ts';

/** Gives the gap between two neighbouring connectors of a flat ribbon so many half-twists. */
export interface TwistRibbon {
  readonly type: 'twist-ribbon';
  readonly take: string;
  readonly ribbon: string;
  /** Connector i: the gap i … i + 1. */
  readonly after: number;
  readonly halfTwists: number;
}

/** The list with one gap set, no longer than its last twisted gap; none where no gap is twisted. */
function twisted(
  twists: readonly number[],
  after: number,
  halfTwists: number,
): readonly number[] | undefined {
  if ((twists[after] ?? 0) === halfTwists) return twists;
  const length = Math.max(twists.length, after + 1);
  const all = Array.from({ length }, (_, gap) => (gap === after ? halfTwists : (twists[gap] ?? 0)));
  const last = all.findLastIndex((n) => n > 0);
  return last < 0 ? undefined : all.slice(0, last + 1);
}

export function twistRibbon(layout: Layout, edit: TwistRibbon): Edited<Layout> {
  return editTake(layout, edit.take, (take) =>
    editRibbon(take, edit.ribbon, (ribbon) => {
      const { after, halfTwists } = edit;
      const kind = ribbonKindOf(layout.kit, ribbon);
      const locked = refuseIfLocked(ribbon);
      if (locked) return locked;
      const name = ribbonName(ribbon);
      if (kind.lay !== 'flat') return refuse(`${name} hangs loose and has no twists`);
      if (!Number.isInteger(after) || after < 0 || after > kind.connectors.length - 2)
        return refuse(`${name} has no gap after connector ${after + 1}`);
      if (!Number.isSafeInteger(halfTwists) || halfTwists < 0)
        return refuse('Half-twists are counted in whole numbers from 0');
      if ((ribbon.twists?.[after] ?? 0) === halfTwists) return ok(ribbon);
      return ok(withField(ribbon, 'twists', twisted(ribbon.twists ?? [], after, halfTwists)));
    }),
  );
}
