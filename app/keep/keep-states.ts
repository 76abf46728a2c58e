import { type Layout, ok } from '../../src/index.ts';
import type { Clock } from '../platform/clock.ts';
import type { Shelf } from '../platform/storage.ts';
import type { KeepStore, States } from '../store/keep.ts';
import type { LayoutStore } from '../store/layout-store.ts';
import { untouched } from '../store/untouched.ts';
import { isKept } from './kept-layout.ts';
import { halved, isStates, withState } from './kept-states.ts';

/** Edits that follow one another for so long are one stretch of work, which is brought back as a whole, ms. */
export const STRETCH_MS = 600_000;

/** Nothing is done for so long: the next edit begins another stretch, ms. */
export const PAUSE_MS = 180_000;

/** One edit that changes so many parts begins another stretch. */
const MANY_PARTS = 8;

/** States of layouts that are gone stay for so long, since a layout that was deleted can be put back, ms. */
const GONE_MS = 7 * 86_400_000;

/** So long after the page has begun they are looked for, ms. */
const SWEEP_MS = 60_000;

interface Doors {
  readonly layouts: LayoutStore;
  readonly keep: KeepStore;
  /** Where layouts are kept. */
  readonly shelf: Shelf;
  /** Where their states are. */
  readonly states: Shelf;
  readonly clock: Clock;
}

/** Parts of a layout; what an edit leaves alone is the very same object. */
const partsOf = ({ kit, takes }: Layout): readonly object[] => [
  ...kit.modules,
  ...kit.ribbons,
  ...kit.buses,
  ...takes.flatMap(({ rows, supplies, modules, ribbons }) => [...rows, ...supplies, ...modules, ...ribbons]),
];

function changesMany(before: Layout, after: Layout): boolean {
  const left = new Set(partsOf(after));
  return partsOf(before).filter((part) => !left.has(part)).length >= MANY_PARTS;
}

interface Stretch {
  readonly began: number;
  readonly last: number;
}

/** Whether a clock that may have been put shows that so long has passed. */
const hasPassed = (since: number, now: number, ms: number): boolean => now < since || now - since >= ms;

/**
 * Keeps what a layout was before each stretch of work on it: the last 20 states, on a shelf of their own. Whatever goes
 * wrong there never hinders the keeping of the layout itself, and has to make room for it.
 */
export function keepStates({
  layouts,
  keep,
  shelf,
  states,
  clock,
}: Doors): States & { readonly stop: () => void } {
  const stretches = new Map<string, Stretch>();
  /** When layouts were last changed, as far as that is known. */
  const changed = new Map<string, number>();
  let present = layouts.layout();

  async function learn(id: string): Promise<void> {
    const found = await shelf.read(id);
    if (found.ok && isKept(found.value) && !changed.has(id)) changed.set(id, found.value.changed);
  }

  function put(id: string, layout: Layout): void {
    const state = { at: changed.get(id) ?? clock.now(), text: JSON.stringify(layout) };
    void states.change(id, (before) => withState(before, id, state));
  }

  function follow(before: Layout, after: Layout): void {
    const id = after.id ?? '';
    const now = clock.now();
    const stretch = stretches.get(id);
    const isNew =
      !stretch || hasPassed(stretch.began, now, STRETCH_MS) || hasPassed(stretch.last, now, PAUSE_MS);
    // What the program itself put there can be had again at any time.
    if ((isNew || changesMany(before, after)) && !untouched.has(before)) {
      put(id, before);
      stretches.set(id, { began: now, last: now });
    } else {
      stretches.set(id, { began: stretch?.began ?? now, last: now });
    }
    changed.set(id, now);
  }

  /** The browser has no room: what was goes before what is. */
  async function makeRoom(): Promise<void> {
    const found = await states.all();
    if (!found.ok) return;
    for (const { id, states: all } of found.value.filter(isStates)) {
      if (all.length < 2) await states.remove(id);
      else await states.change(id, (before) => (isStates(before) ? halved(before) : null));
    }
  }

  async function sweep(): Promise<void> {
    const [there, found] = await Promise.all([shelf.all(), states.all()]);
    if (!there.ok || !found.ok) return;
    const ids = new Set(there.value.map((item) => (item as { readonly id?: unknown }).id));
    const now = clock.now();
    const isOld = (at: number | undefined): boolean => at === undefined || now - at > GONE_MS;
    for (const { id, states: all } of found.value.filter(isStates))
      if (!ids.has(id) && isOld(all.at(-1)?.at)) await states.remove(id);
  }

  const endLayouts = layouts.store.subscribe(({ history }) => {
    const before = present;
    present = history.present;
    if (present === before) return;
    if (present.id !== before.id) void learn(present.id ?? '');
    // Without a past it came from another tab, which keeps its own states.
    else if (history.past.length > 0 || history.future.length > 0) follow(before, present);
    else changed.set(present.id ?? '', clock.now());
  });
  const endKeep = keep.subscribe(({ keeping }, { keeping: then }) => {
    const isFull = keeping.is === 'failed' && keeping.fault === 'full';
    if (isFull && then.is !== 'failed') void makeRoom();
  });
  void learn(present.id ?? '');
  const callOff = clock.after(SWEEP_MS, () => void sweep());

  return {
    async of(id) {
      const found = await states.read(id);
      if (!found.ok) return found;
      return ok(isStates(found.value) ? found.value.states : []);
    },
    stop() {
      endLayouts();
      endKeep();
      callOff();
    },
  };
}
