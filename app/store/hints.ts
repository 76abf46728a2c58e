import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Overlay, Place } from '../canvas/model.ts';
import type { Pointer } from '../tools/pointer.ts';

/** A connector on the card: sits as it should, misses what it should sit on, or hangs free. */
type Shown = 'lands' | 'misses' | 'free';

interface HintLine {
  readonly text: string;
  /** It tells of something that will not do. */
  readonly isTrouble: boolean;
}

/** What the card beside the hand says. */
export interface HintWords {
  readonly title: string;
  /** As they lie on the screen, from left to right, with their numbers. */
  readonly connectors: readonly { readonly number: number; readonly shown: Shown }[];
  readonly lines: readonly HintLine[];
  /** Which keys do what meanwhile. */
  readonly keys: string;
}

/** What is said beside the hand while a ribbon is being laid. */
export interface Hint {
  /** CSS px of the stage. */
  readonly at: Pick<Pointer, 'x' | 'y' | 'kind'>;
  /** Which way on the screen the hand draws, +1 to the right: the card keeps off what was drawn. */
  readonly lean: 1 | -1;
  /** Made when they are read, since most moves of a hand go on before anyone can. */
  readonly words: () => HintWords;
}

interface Hinted {
  readonly hint: Hint | null;
  /** Where what is in hand can start; none while nothing is in hand. */
  readonly starts: readonly Place[];
  /** What a panel shows on the drawing while it is open. */
  readonly overlay: Overlay | null;
}

export type Hints = StoreApi<Hinted>;

export const NO_STARTS: readonly Place[] = [];

/** Help for the hand, outside the document and outside React: it changes with every move. */
export const createHints = (): Hints =>
  createStore<Hinted>(() => ({ hint: null, starts: NO_STARTS, overlay: null }));
