import { createStore, type StoreApi } from 'zustand/vanilla';
import type { FaultTest, Observation } from '../../src/index.ts';
import type { Editor } from '../editor.ts';
import type { Breakage } from './breakage.ts';

/** An answer to a step of the search; `null` where the step could not be done. */
export interface Answer {
  readonly test: FaultTest;
  readonly isThere: boolean | null;
}

/** What is broken or searched for. It is no part of the layout, and is kept nowhere. */
export interface FaultDesk {
  readonly way: 'break' | 'find';
  readonly broken: readonly Breakage[];
  /** What is wrong, and what is known to work, before anything was tested. */
  readonly symptoms: readonly Observation[];
  readonly answers: readonly Answer[];
}

export type FaultDeskStore = StoreApi<FaultDesk>;

export const NOTHING_SEEN = { symptoms: [], answers: [] } as const;

const known = new WeakMap<Editor, FaultDeskStore>();

/** The same while the page is open: the panel may be shut meanwhile, to look at the drawing or to do something else. */
export function faultDeskOf(editor: Editor): FaultDeskStore {
  const store =
    known.get(editor) ?? createStore<FaultDesk>(() => ({ way: 'break', broken: [], ...NOTHING_SEEN }));
  known.set(editor, store);
  return store;
}
