import type { Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, editTake, refuse, withField } from './change.ts';

/** Gives a take another name. */
export interface RenameTake {
  readonly type: 'rename-take';
  readonly take: string;
  readonly name: string;
}

export function renameTake(layout: Layout, edit: RenameTake): Edited<Layout> {
  const name = edit.name.trim();
  return editTake(layout, edit.take, (take) =>
    name ? ok(withField(take, 'name', name)) : refuse('A take needs a name'),
  );
}
