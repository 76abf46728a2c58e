import type { Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, find, withField } from './change.ts';

/** Puts a take at another place in the list. */
export interface MoveTake {
  readonly type: 'move-take';
  readonly take: string;
  /** Index that it is to have; kept within the list. */
  readonly to: number;
}

export function moveTake(layout: Layout, edit: MoveTake): Edited<Layout> {
  const found = find(layout.takes, edit.take, 'take');
  if (!found.ok) return found;
  const { takes } = layout;
  const to = Math.max(0, Math.min(edit.to, takes.length - 1));
  if (takes[to] === found.value) return ok(layout);
  const others = takes.filter((take) => take !== found.value);
  return ok(withField(layout, 'takes', others.toSpliced(to, 0, found.value)));
}
