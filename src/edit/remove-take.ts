import type { Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, find, refuse, withField } from './change.ts';

/** Throws a take away; a layout always has one. */
export interface RemoveTake {
  readonly type: 'remove-take';
  readonly take: string;
}

export function removeTake(layout: Layout, edit: RemoveTake): Edited<Layout> {
  const found = find(layout.takes, edit.take, 'take');
  if (!found.ok) return found;
  if (layout.takes.length === 1) return refuse(`${found.value.name} is the only take`);
  return ok(
    withField(
      layout,
      'takes',
      layout.takes.filter((take) => take !== found.value),
    ),
  );
}
