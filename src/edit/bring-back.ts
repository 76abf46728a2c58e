import type { Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, editTake, refuse, withField } from './change.ts';

/** Brings a finding back that was put away. */
export interface BringBack {
  readonly type: 'bring-back';
  readonly take: string;
  readonly key: string;
}

export function bringBack(layout: Layout, { take: takeId, key }: BringBack): Edited<Layout> {
  return editTake(layout, takeId, (take) => {
    const before = take.accepted ?? [];
    const accepted = before.filter((acceptance) => acceptance.key !== key);
    if (accepted.length === before.length) return refuse(`No note "${key}" is put away`);
    return ok(withField(take, 'accepted', accepted.length > 0 ? accepted : undefined));
  });
}
