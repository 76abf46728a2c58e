import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Box, Edit, Layout, Module, Take } from '../../src/index.ts';
import type { Moving, MovingStore, Overlay } from '../canvas/model.ts';
import type { Clock } from '../platform/clock.ts';
import { type Analysis, analyse } from './analysis.ts';
import type { LayoutStore } from './layout-store.ts';
import { atReadingPace } from './reading-pace.ts';
import { takeOf } from './shown.ts';

/** What a gesture shows before it is let go: outside the document, and outside React where it moves. */
export interface Gesture {
  readonly running: boolean;
  readonly moving: Moving | null;
  /** CSS px of the stage. */
  readonly marquee: Box | null;
}

export interface Gestures extends MovingStore {
  readonly store: StoreApi<Gesture>;
  /** What is shown, as often as words about it should change. */
  readonly inWords: MovingStore;
  /** @param label - what is being done, to follow "Undo" */
  begin(take: string, label: string): void;
  /**
   * Shows the take as it was at the start with this edit done to it; `null`: as it was.
   * @param overlay - drawn over it
   */
  preview(edit: Edit | null, overlay?: Overlay): void;
  /** Keeps what is shown; answers with the modules that now stand elsewhere, new ones included. */
  commit(): ReadonlySet<string>;
  cancel(): void;
  stretch(marquee: Box | null): void;
}

const AT_REST: Gesture = { running: false, moving: null, marquee: null };

const NO_MODULES: ReadonlySet<string> = new Set();

/** Modules that are new or stand elsewhere. Most edits keep the list's order, so that each is found where it was. */
function movedBetween(before: Take, after: Take): ReadonlySet<string> {
  if (before.modules === after.modules) return NO_MODULES;
  let was: ReadonlyMap<string, Module> | undefined;
  const moved = new Set<string>();
  after.modules.forEach((module, i) => {
    const { id, row, atHp } = module;
    let old = before.modules[i];
    if (old === module) return;
    if (old?.id !== id) {
      was ??= new Map(before.modules.map((one) => [one.id, one]));
      old = was.get(id);
    }
    if (old?.row !== row || old.atHp !== atHp) moved.add(id);
  });
  return moved;
}

/** Its notes are not looked for before somebody reads them. */
const movingOf = (
  analysis: Analysis,
  modules: ReadonlySet<string>,
  overlay: Overlay | undefined,
): Moving => ({
  derived: analysis.derived,
  pressing: analysis.pressing,
  get notes() {
    return analysis.notes;
  },
  modules,
  ...(overlay && { overlay }),
});

export function createGestures(layouts: LayoutStore, clock: Clock): Gestures {
  const store = createStore<Gesture>(() => AT_REST);
  let takeId = '';
  /** What is shown, as text: most moves of a hand end on the same HP as the one before. */
  let shown = '';
  /** What it was shown of. */
  let from: Layout | undefined;

  const get = (): Moving | null => store.getState().moving;
  const { subscribe } = store;

  return {
    store,
    inWords: atReadingPace({ get, subscribe }, clock),
    get,
    subscribe,
    begin(take, label) {
      takeId = take;
      shown = '';
      layouts.begin(label);
      store.setState({ ...AT_REST, running: true });
    },
    preview(edit, overlay) {
      const wanted = JSON.stringify(edit);
      if (wanted === shown && from === layouts.layout() && overlay === undefined) return;
      shown = wanted;
      from = layouts.layout();
      const done = layouts.preview(edit);
      if (!done.ok) return;
      const before = takeOf(layouts.layout(), takeId);
      const take = takeOf(done.value, takeId);
      const modules = movedBetween(before, take);
      const isShown = take !== before || overlay !== undefined;
      const moving = movingOf(analyse(done.value.kit, take), modules, overlay);
      store.setState({ moving: isShown ? moving : null });
    },
    commit() {
      const modules = store.getState().moving?.modules ?? NO_MODULES;
      layouts.commit();
      store.setState(AT_REST);
      return modules;
    },
    cancel() {
      layouts.cancel();
      store.setState(AT_REST);
    },
    stretch: (marquee) => store.setState({ running: marquee !== null, marquee }),
  };
}
