import type { Layout } from '../layout/layout.ts';

/**
 * What was done to a layout, as references to the immutable values that it was. One gesture makes one step,
 * however many previews it shows; what changes nothing makes none. Selecting is no edit: it never comes here.
 */
export interface History {
  /** Oldest first. */
  readonly past: readonly Step[];
  /** As last committed: what is saved, checked and handed over. */
  readonly present: Layout;
  /** Next to redo last. */
  readonly future: readonly Step[];
  /** Under way and not yet decided. */
  readonly gesture?: Gesture;
}

/** A change and the layout on its other side: before it in the past, after it in the future. */
export interface Step {
  /** What was done, to follow "Undo" and "Redo": "move Cobble 3". */
  readonly label: string;
  readonly layout: Layout;
}

export interface Gesture {
  readonly label: string;
  readonly preview: Layout;
}

/** Steps that can be undone; older ones are forgotten. */
export const MOST_STEPS = 500;

export const startHistory = (layout: Layout): History => ({ past: [], present: layout, future: [] });

/** What to draw: the preview while a gesture is under way. */
export const shown = ({ present, gesture }: History): Layout => gesture?.preview ?? present;

export const undoLabel = ({ past }: History): string | undefined => past.at(-1)?.label;
export const redoLabel = ({ future }: History): string | undefined => future.at(-1)?.label;

/** Starts a gesture; one that is still under way is cancelled. */
export const begin = (history: History, label: string): History => ({
  ...history,
  gesture: { label, preview: history.present },
});

/** Shows what the gesture would do, computed from `present`, where it began. Nothing without a gesture. */
export function preview(history: History, layout: Layout): History {
  const { gesture } = history;
  if (!gesture || gesture.preview === layout) return history;
  return { ...history, gesture: { ...gesture, preview: layout } };
}

/** Ends the gesture without a trace. */
export function cancel(history: History): History {
  if (!history.gesture) return history;
  const { past, present, future } = history;
  return { past, present, future };
}

/** Ends the gesture and keeps what it shows: a new step, after which there is nothing to redo. */
export function commit(history: History): History {
  const { past, present, gesture } = history;
  if (!gesture || gesture.preview === present) return cancel(history);
  const step: Step = { label: gesture.label, layout: present };
  return { past: [...past, step].slice(-MOST_STEPS), present: gesture.preview, future: [] };
}

/** A gesture of one instant. */
export const record = (history: History, label: string, layout: Layout): History =>
  commit(preview(begin(history, label), layout));

/** Takes back the gesture under way, or else the last step. */
export function undo(history: History): History {
  const { past, present, future, gesture } = history;
  const step = past.at(-1);
  if (gesture || !step) return cancel(history);
  return {
    past: past.slice(0, -1),
    present: step.layout,
    future: [...future, { label: step.label, layout: present }],
  };
}

/** Does the last step again that was undone; nothing while a gesture is under way. */
export function redo(history: History): History {
  const { past, present, future, gesture } = history;
  const step = future.at(-1);
  if (gesture || !step) return history;
  return {
    past: [...past, { label: step.label, layout: present }],
    present: step.layout,
    future: future.slice(0, -1),
  };
}
