import type { Layout } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, find, mapKept, withField } from './change.ts';
import { withBuilt } from './change-built.ts';

/** Says which take stands in the case, and with it that no other does. */
export interface MarkInCase {
  readonly type: 'mark-in-case';
  /** Id of the take; null: none. */
  readonly inCase: string | null;
}

export function markInCase(layout: Layout, { inCase: id }: MarkInCase): Edited<Layout> {
  if (id !== null) {
    const found = find(layout.takes, id, 'take');
    if (!found.ok) return found;
  }
  const takes = mapKept(layout.takes, (take) => {
    const isIt = take.id === id;
    return (take.built?.inCase === true) === isIt ? take : withBuilt(take, 'inCase', isIt || undefined);
  });
  return ok(withField(layout, 'takes', takes));
}
