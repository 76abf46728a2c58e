import { findBeginning, rememberIn } from '../../../app/keep/begin.ts';
import { createKeeper } from '../../../app/keep/create-keeper.ts';
import { keepStates } from '../../../app/keep/keep-states.ts';
import { isKept, type KeptLayout } from '../../../app/keep/kept-layout.ts';
import type { Preferences } from '../../../app/platform/preferences.ts';
import type { TabLock } from '../../../app/platform/tab-lock.ts';
import { untouched } from '../../../app/store/untouched.ts';
import type { Layout } from '../../../src/index.ts';
import { demoLayout } from '../../../src/layout/demo.ts';
// What is loaded late there is here already: it would take longer than the tests wait.
import '../../../src/document.ts';
import { Driver } from '../driver.ts';
import {
  fakeAir,
  fakeIds,
  fakeJournal,
  fakeLocks,
  fakePageLife,
  fakePreferences,
  fakeShelf,
} from '../fakes.ts';

/** Lets everything that is under way come to its end. */
export const settled = async (): Promise<void> => {
  for (let i = 0; i < 5; i++) await new Promise((resolve) => setTimeout(resolve, 0));
};

/** One browser, with what all its tabs share. */
export class Browser {
  readonly shelf = fakeShelf();
  readonly states = fakeShelf();
  readonly journal = fakeJournal();
  readonly locks: TabLock;
  readonly ids = fakeIds();
  readonly air = fakeAir();
  /** What all tabs remember together. */
  readonly shared = fakePreferences();
  /** Passes with each look at it. */
  now = 1_000_000;

  constructor(locks: TabLock = fakeLocks()) {
    this.locks = locks;
  }

  kept(id: string): KeptLayout | undefined {
    const item = this.shelf.items.get(id);
    return isKept(item) ? item : undefined;
  }

  get all(): KeptLayout[] {
    return [...this.shelf.items.values()].filter(isKept);
  }

  /** Opens a tab as the page does; `memory` is what a page loaded again remembers. */
  async open(memory = fakePreferences()): Promise<Tab> {
    const beginning = await findBeginning(this.shelf, [memory, this.shared], this.journal);
    const tab = new Tab(this, beginning.is === 'kept' ? beginning.layout : firstLayout(this.ids()));
    tab.keep(beginning.is === 'kept' ? beginning.record : null);
    tab.remember([memory, this.shared]);
    await settled();
    return tab;
  }
}

export function firstLayout(id: string): Layout {
  const layout = { ...demoLayout(), id };
  untouched.add(layout);
  return layout;
}

export class Tab {
  readonly driver: Driver;
  readonly life = fakePageLife();
  readonly banners: string[] = [];
  /** Asleep it hears nothing. */
  asleep = false;
  readonly #browser: Browser;
  #forget = (): void => {};
  keeper: ReturnType<typeof createKeeper> | null = null;
  states: ReturnType<typeof keepStates> | null = null;

  constructor(browser: Browser, layout: Layout) {
    this.#browser = browser;
    this.driver = new Driver(layout, browser.ids);
  }

  remember(memories: readonly Preferences[]): void {
    this.#forget = rememberIn(memories, this.driver.editor.layouts);
  }

  keep(record: KeptLayout | null): void {
    const { editor, clock } = this.driver;
    const { shelf, journal, locks, air, ids } = this.#browser;
    const channel = air();
    this.keeper = createKeeper(
      {
        layouts: editor.layouts,
        keep: editor.keep,
        shelf,
        journal,
        lock: locks,
        channel: {
          post: (message) => channel.post(message),
          listen: (ear) => channel.listen((message) => this.asleep || ear(message)),
        },
        life: this.life,
        clock: { ...clock, now: () => this.#browser.now++ },
        freshId: ids,
        letGo: () => editor.gestures.cancel(),
        tell: (banner) => this.banners.push(banner),
      },
      record,
    );
    this.states = keepStates({
      layouts: editor.layouts,
      keep: editor.keep,
      shelf,
      states: this.#browser.states,
      clock: { ...clock, now: () => this.#browser.now },
    });
    editor.keep.setState({ keeper: this.keeper, states: this.states });
  }

  get layout(): Layout {
    return this.driver.editor.layouts.layout();
  }

  get id(): string {
    return this.layout.id ?? '';
  }

  get is(): string {
    return this.driver.editor.keep.getState().keeping.is;
  }

  /** Says how a title change went. */
  rename(title: string) {
    return this.driver.editor.layouts.run({ type: 'rename-layout', title });
  }

  /** Time passes, and what falls due comes to its end. */
  async pass(ms = 200): Promise<void> {
    await settled();
    this.driver.clock.pass(ms);
    await settled();
  }

  /** The page is gone, and its locks with it. */
  close(): void {
    this.keeper?.stop();
    this.states?.stop();
    this.#forget();
  }
}
