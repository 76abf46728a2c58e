import type {
  Box,
  DerivedTake,
  JointTarget,
  Note,
  Sheet,
  Side,
  SubjectType,
  WholeTake,
} from '../../src/index.ts';
import type { Context, Heat, Paper } from './draw/paper.ts';
import type { Hidden } from './layer-keys.ts';

export type { Side };

/** A place on the drawing, mm: from the left end of its row seen from the front, and its half extent. */
export interface Place {
  readonly row: number;
  readonly xMm: number;
  readonly yMm: number;
  readonly halfXMm: number;
  readonly halfYMm: number;
}

export type { Size } from '../../src/index.ts';
export type { ThemeName, Viewport } from './screen.ts';

/** What lies under a point of the sheet. */
export type Hit =
  | { readonly type: 'module'; readonly id: string }
  | { readonly type: 'header'; readonly module: string; readonly header: string }
  /** `connector` where the point is on one of its connectors. */
  | { readonly type: 'ribbon'; readonly id: string; readonly connector?: number }
  /** `header` where the point is on one of its headers. */
  | { readonly type: 'board'; readonly id: string; readonly header?: string }
  /** `on` where the point is on its rails or its title, or at its front's right end, by which it is made longer. */
  | { readonly type: 'row'; readonly id: string; readonly atHp: number; readonly on?: 'rail' | 'end' };

/** How the selection names a thing: ids are unique only within their own list. */
export type SelectionKey = `${SubjectType}:${string}`;

export const selectionKey = (type: SubjectType, id: string): SelectionKey => `${type}:${id}`;

/** A connector that is chosen or in hand, and everything that it could sit on. */
export interface Aim {
  readonly ribbon: string;
  readonly connector: number;
  readonly places: readonly JointTarget[];
  /** Where a hand holds it, off everything; CSS px from the sheet's origin. */
  readonly heldAt?: { readonly x: number; readonly y: number };
}

/** What the canvas shows while nothing is dragged. */
export interface Scene {
  readonly derived: WholeTake;
  readonly notes: readonly Note[];
  readonly side: Side;
  /** Keys made by `selectionKey`. */
  readonly selection: ReadonlySet<string>;
  /** Key of the note whose subjects stand out while all else is dimmed. */
  readonly focus: string | null;
  /** Layers that are hidden; the subjects of the note in focus are shown all the same. */
  readonly hidden?: Hidden;
  /** Id of the ribbon that is held above all others. */
  readonly lifted?: string | null;
  readonly aim?: Aim | null;
  /** Where what is in hand can start. */
  readonly starts?: readonly Place[];
  readonly heat?: Heat | undefined;
  /** Drawn over all but the marks, by whoever has something to show for a while. */
  readonly overlay?: Overlay | null;
}

/** Drawn over what a gesture moves. */
export interface Overlay {
  readonly draw: (ctx: Context, paper: Paper, take: DerivedTake) => void;
  /** What it paints, but for what stands close to it; absent: anything in sight. */
  readonly within?: (sheet: Sheet) => Box;
}

/** What a drag in progress shows instead: the same take as it would be on release. */
export interface Moving {
  readonly derived: WholeTake;
  readonly notes: readonly Note[];
  /** Damage and faults among them. */
  readonly pressing: readonly Note[];
  /** Modules that the gesture moves, pushed neighbours included; drawn on the moving layer. */
  readonly modules: ReadonlySet<string>;
  /** What the gesture would drop on, outlined. */
  readonly target?: Hit;
  /** Drawn over what moves, by whoever moves it: what the drawing of a take has no place for. */
  readonly overlay?: Overlay;
}

/** The running drag, outside React: a store of one value. */
export interface MovingStore {
  get(): Moving | null;
  subscribe(listener: () => void): () => void;
}
