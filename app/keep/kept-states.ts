import type { EarlierState } from '../store/keep.ts';

/** What a layout was before, as the browser keeps it. */
export interface KeptStates {
  /** Of the layout. */
  readonly id: string;
  /** Oldest first. */
  readonly states: readonly EarlierState[];
}

export const MOST_STATES = 20;

/** Of one layout, in all its states together: what is more makes the oldest go. */
export const MOST_LETTERS = 3_000_000;

const isState = (found: unknown): found is EarlierState => {
  if (typeof found !== 'object' || found === null) return false;
  const { at, text } = found as Partial<Record<string, unknown>>;
  return Number.isFinite(at) && typeof text === 'string';
};

/** Whether what was found on the shelf can be told as states; what is in their texts is another question. */
export function isStates(found: unknown): found is KeptStates {
  if (typeof found !== 'object' || found === null) return false;
  const { id, states } = found as Partial<Record<string, unknown>>;
  return typeof id === 'string' && Array.isArray(states) && states.every(isState);
}

/** The newest that there is room for. */
function bounded(states: readonly EarlierState[]): readonly EarlierState[] {
  let letters = 0;
  const newest = states.slice(-MOST_STATES).reverse();
  const end = newest.findIndex(({ text }) => {
    letters += text.length;
    return letters > MOST_LETTERS;
  });
  return newest.slice(0, end < 0 ? newest.length : end).reverse();
}

/** The record with one state more; `null`: as it was, also where it has been so before. What cannot be told, a newer program's perhaps, is left alone. */
export function withState(before: unknown, id: string, state: EarlierState): KeptStates | null {
  if (before !== undefined && !isStates(before)) return null;
  const states = before?.states ?? [];
  if (states.some(({ text }) => text === state.text)) return null;
  const kept = bounded([...states, state]);
  return kept.length > 0 ? { ...before, id, states: kept } : null;
}

/** The newer half of the states, where the browser has no room left. */
export const halved = (record: KeptStates): KeptStates => ({
  ...record,
  states: record.states.slice(Math.ceil(record.states.length / 2)),
});
