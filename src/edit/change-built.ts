import type { Built, Layout, Take } from '../layout/layout.ts';
import { OPEN_LIMITS } from '../layout/open-limits.ts';
import { ok } from '../layout/result.ts';
import { type Edited, editTake, refuse, withField } from './change.ts';

/** Who did it and when, as the program in front of the core says. */
export interface Mark {
  readonly by?: string;
  readonly at?: string;
}

/** The mark without what is blank. */
export const markOf = ({ by, at }: Mark): Mark => ({
  ...(by?.trim() && { by: by.trim() }),
  ...(at?.trim() && { at: at.trim() }),
});

export function refuseMark({ by = '', at = '' }: Mark) {
  const { most } = OPEN_LIMITS.name;
  return by.length > most || at.length > most
    ? refuse(`Who and when may have ${most} characters at most each`)
    : undefined;
}

/** The take with something in its record changed; a record in which nothing stands is none. */
export function withBuilt<K extends 'inCase' | 'harnessTests' | 'doneSteps' | 'readings'>(
  take: Take,
  key: K,
  value: Built[K],
): Take {
  const before: Built = take.built ?? {};
  const kept = Array.isArray(value) && value.length === 0 ? undefined : value;
  const built = withField(before, key, kept as Built[K]);
  return withField(take, 'built', Object.keys(built).length > 0 ? built : undefined);
}

/** The layout with one list of a take's record changed; the very layout where the list stays the same. */
export function editRecord<K extends 'harnessTests' | 'doneSteps' | 'readings'>(
  layout: Layout,
  takeId: string,
  key: K,
  change: (list: NonNullable<Built[K]>, take: Take) => Edited<NonNullable<Built[K]>>,
): Edited<Layout> {
  return editTake(layout, takeId, (take) => {
    const before = (take.built?.[key] ?? []) as NonNullable<Built[K]>;
    const changed = change(before, take);
    if (!changed.ok) return changed;
    if (changed.value === before) return ok(take);
    if (changed.value.length > OPEN_LIMITS.built.most) return refuse('The record of what was built is full');
    return ok(withBuilt(take, key, changed.value));
  });
}
