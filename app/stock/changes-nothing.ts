import { applyEdit, type Edit, type Layout } from '../../src/index.ts';

/** Whether a step leaves the very layout that there is; none, and one that is refused, would change something. */
export function changesNothing(layout: Layout, step: Edit | null): boolean {
  const done = step && applyEdit(layout, step);
  return done?.ok === true && done.value === layout;
}
