import { useDeferredValue, useMemo } from 'react';
import { applyEdit, checks, type Edit, type Effect, effectOf, type Layout } from '../../src/index.ts';
import { useLayout } from '../hooks.ts';

/** What a step would do, or why it is refused. */
export interface Outcome {
  readonly refusal?: string;
  readonly effect?: Effect;
  /** The layout as it would be; the very one that there is where the step changes nothing. */
  readonly after?: Layout;
}

/** Judged when the hand pauses: a large case takes longer than a key stroke. */
export function useEffectOf(step: Edit | null): Outcome {
  const layout = useLayout((present) => present);
  const text = useDeferredValue(step ? JSON.stringify(step) : '');
  return useMemo(() => {
    if (!text) return {};
    const done = applyEdit(layout, JSON.parse(text) as Edit);
    if (!done.ok) return { refusal: done.error.message };
    return { effect: effectOf(layout, done.value, checks), after: done.value };
  }, [text, layout]);
}
