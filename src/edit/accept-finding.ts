import type { Acceptance, Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, editTake, mapKept, withField } from './change.ts';

/** Puts a finding away, or puts it away anew with other facts or another reason. */
export interface AcceptFinding {
  readonly type: 'accept-finding';
  readonly take: string;
  readonly key: string;
  /** The finding returns when these change; absent: put away for good. */
  readonly facts?: string;
  readonly why?: string;
}

export function acceptFinding(
  layout: Layout,
  { take: takeId, key, facts, why }: AcceptFinding,
): Edited<Layout> {
  const judge = (acceptance: Acceptance): Acceptance =>
    acceptance.key === key ? withField(withField(acceptance, 'facts', facts), 'why', why) : acceptance;
  return editTake(layout, takeId, (take) => {
    const before = take.accepted ?? [];
    const isKnown = before.some((acceptance) => acceptance.key === key);
    const accepted = isKnown ? mapKept(before, judge) : [...before, judge({ key })];
    return ok(withField(take, 'accepted', accepted));
  });
}
