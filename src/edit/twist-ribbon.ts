import type { Layout, Ribbon } from '../layout/layout.ts';
import { OPEN_LIMITS } from '../layout/open-limits.ts';
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

/** Gives a flat ribbon so many half-twists between two of its connectors; each turns stripe and face over. */
export interface TwistRibbon {
  readonly type: 'twist-ribbon';
  readonly take: string;
  readonly ribbon: string;
  /** The gap between connectors i and i + 1. */
  readonly after: number;
  /** In that gap from now on; 0 takes them out. */
  readonly halfTwists: number;
}

const isCount = (value: number): boolean =>
  Number.isSafeInteger(value) && value >= 0 && value <= OPEN_LIMITS.size.most;

/** The list with one gap's half-twists, without gaps at its end that have none; absent where no gap has any. */
function twistsWith(
  { twists = [] }: Ribbon,
  after: number,
  halfTwists: number,
): readonly number[] | undefined {
  const gaps = Array.from({ length: Math.max(twists.length, after + 1) }, (_, i) =>
    i === after ? halfTwists : (twists[i] ?? 0),
  );
  const length = gaps.findLastIndex((count) => count > 0) + 1;
  return length > 0 ? gaps.slice(0, length) : undefined;
}

export function twistRibbon(
  layout: Layout,
  { take, ribbon: id, after, halfTwists }: TwistRibbon,
): Edited<Layout> {
  return editTake(layout, take, (found) =>
    editRibbon(found, id, (ribbon) => {
      const kind = ribbonKindOf(layout.kit, ribbon);
      if (kind.lay !== 'flat') return refuse(`${ribbonName(ribbon)} hangs loose and has no twists`);
      const isGap = kind.connectors[after] !== undefined && kind.connectors[after + 1] !== undefined;
      if (!isGap) return refuse(`${ribbonName(ribbon)} has no gap after connector ${after + 1}`);
      if (!isCount(halfTwists)) return refuse('Half-twists must be a whole number, 0 or more');
      const locked = refuseIfLocked(ribbon);
      if (locked) return locked;
      if ((ribbon.twists?.[after] ?? 0) === halfTwists) return ok(ribbon);
      return ok(withField(ribbon, 'twists', twistsWith(ribbon, after, halfTwists)));
    }),
  );
}
