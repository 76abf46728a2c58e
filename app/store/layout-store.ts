import { createStore, type StoreApi } from 'zustand/vanilla';
import {
  type applyEdit,
  begin,
  cancel,
  commit,
  type Edit,
  fail,
  type History,
  type Layout,
  ok,
  preview,
  type Result,
  record,
  redo,
  startHistory,
  undo,
} from '../../src/index.ts';
import type { labelOf } from './edit-label.ts';

interface LayoutState {
  readonly history: History;
}

/** The only writer of layouts. What is selected, shown or dragged is kept elsewhere. */
export interface LayoutStore {
  readonly store: StoreApi<LayoutState>;
  /** As last committed, whatever a gesture shows. */
  layout(): Layout;
  /** Carries out an edit as one step, or says why not. */
  run(edit: Edit): Result<Layout, string>;
  /** Takes another layout's place; the one before is an undo away. */
  replace(layout: Layout, label: string): void;
  /** Whether edits are taken for now, or why not. */
  mayChange(): Result<void, string>;
  /** Shows a layout as another tab has made it; what was done before can no longer be undone here. */
  follow(layout: Layout): void;
  /** Refuses edits, undo and redo for this reason, the end of a sentence; `null`: no longer. Another layout may be shown all the same. */
  hold(why: string | null): void;
  /** One gesture makes one step: every preview counts from the layout that it began with. */
  begin(label: string): void;
  /** `null`: nothing would change. */
  preview(edit: Edit | null): Result<Layout, string>;
  commit(): void;
  cancel(): void;
  undo(): void;
  redo(): void;
  /** Brings the commands and their names, which the first picture does without; until then edits are refused. */
  equip(apply: Apply, label: Label): void;
}

type Apply = typeof applyEdit;
type Label = typeof labelOf;

const notYet: Apply = () => fail({ message: 'The program is still loading' });

export function createLayoutStore(first: Layout): LayoutStore {
  let apply = notYet;
  let label: Label = () => '';
  let held: string | null = null;
  const store = createStore<LayoutState>(() => ({ history: startHistory(first) }));
  const layout = (): Layout => store.getState().history.present;
  // Apart from the store until it is kept: nobody who listens to the store follows a drag by way of it.
  let previewed = first;
  const step = (next: (history: History) => History): void => {
    const { history } = store.getState();
    const after = next(history);
    if (after !== history) store.setState({ history: after });
  };
  /** A gesture that is under way goes on, from there: another hand has done something meanwhile. */
  const take = (label: string, other: Layout): void => {
    if (other === layout()) return;
    step((history) => {
      const after = record(history, label, other);
      return history.gesture ? begin(after, history.gesture.label) : after;
    });
  };
  const attempt = (edit: Edit, then: (done: Layout) => void): Result<Layout, string> => {
    if (held !== null) return fail(held);
    const done = apply(layout(), edit);
    if (!done.ok) return { ok: false, error: done.error.message };
    then(done.value);
    return done;
  };

  return {
    store,
    layout,
    run: (edit) => attempt(edit, (done) => take(label(layout(), edit), done)),
    replace: (other, label) => take(label, other),
    mayChange: () => (held === null ? ok(undefined) : fail(held)),
    follow: (other) => store.setState({ history: startHistory(other) }),
    hold(why) {
      held = why;
    },
    begin(label) {
      step((history) => begin(history, label));
      previewed = layout();
    },
    preview(edit) {
      const show = (shown: Layout): void => {
        previewed = shown;
      };
      if (edit) return attempt(edit, show);
      show(layout());
      return ok(layout());
    },
    commit: () => step((history) => commit(preview(history, previewed))),
    cancel: () => step(cancel),
    undo: () => held === null && step(undo),
    redo: () => held === null && step(redo),
    equip(commands, labels) {
      apply = commands;
      label = labels;
    },
  };
}
