import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Result } from '../../src/index.ts';
import type { Shelf, StorageFault } from '../platform/storage.ts';

/** How it stands with keeping the layout shown. */
export type Keeping =
  /** Nothing of the user's is in it yet. */
  | { readonly is: 'untouched' }
  /** Whether this tab may change it is being found out. */
  | { readonly is: 'opening' }
  | { readonly is: 'saving' }
  | { readonly is: 'saved' }
  | { readonly is: 'failed'; readonly fault: StorageFault }
  /** Another tab changes it; this one shows it as it changes. */
  | { readonly is: 'following' };

/** Keeps the layout shown, and knows all that are kept. */
export interface Keeper {
  readonly shelf: Shelf;
  /** Saves what is not saved yet; whether all is saved then. */
  flush(): Promise<boolean>;
  /** Makes this the tab that changes the layout; the other one shows it from then on. */
  takeOver(): Promise<void>;
  /** Opens one that is kept; the one before is an undo away. */
  open(id: string): Promise<Result<void, string>>;
  /** Does something to one that is kept and not shown here; refused while another tab has it. */
  alone<T>(id: string, work: () => Promise<Result<T, string>>): Promise<Result<T, string>>;
  /** Takes one for no longer kept, so that it is not saved anew for nothing. */
  forget(id: string): void;
}

/** How a layout once stood. */
export interface EarlierState {
  /** When it was last changed before it was changed on, ms since 1970. */
  readonly at: number;
  /** The layout as JSON. */
  readonly text: string;
}

/** What layouts were before, to be brought back. */
export interface States {
  /** Oldest first. */
  of(id: string): Promise<Result<readonly EarlierState[], StorageFault>>;
}

export interface KeepState {
  readonly keeping: Keeping;
  /** `null` until it is loaded. */
  readonly keeper: Keeper | null;
  /** `null` until it is loaded. */
  readonly states: States | null;
  /** Loads the new version of the program that is ready. */
  readonly update: (() => void) | null;
  /** Whether the browser has agreed not to clear what is kept; `null`: not asked yet. */
  readonly persisted: boolean | null;
}

export type KeepStore = StoreApi<KeepState>;

export const createKeepStore = (): KeepStore =>
  createStore<KeepState>(() => ({
    keeping: { is: 'untouched' },
    keeper: null,
    states: null,
    update: null,
    persisted: null,
  }));
