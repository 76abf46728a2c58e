import type { SelectionKey, Side, Size, ThemeName, Viewport } from '../canvas/model.ts';

export type ThemeChoice = ThemeName | 'auto';
export type TrayFilter = 'modules' | 'ribbons' | 'leads';
/** What is folded up at the bottom of a narrow screen. */
export type Fold = 'stock' | 'notes' | 'part';

/** Everything about how a layout is looked at that is no part of it. */
export interface Session {
  readonly side: Side;
  /** Id of the take shown; the layout's first where it has none of that id. */
  readonly take: string;
  readonly selection: ReadonlySet<SelectionKey>;
  /** The module that the keyboard stands on. */
  readonly cursor: string | null;
  /** `null`: the whole sheet fits the stage. */
  readonly viewport: Viewport | null;
  readonly stage: Size;
  readonly theme: ThemeChoice;
  readonly halfHp: boolean;
  readonly push: boolean;
  /** Key of the note whose subjects stand out. */
  readonly focus: string | null;
  /** Kind of module or ribbon in hand, to be put down with the next tap. */
  readonly inHand: SelectionKey | null;
  readonly trayFilter: TrayFilter;
  readonly trayFind: string;
  readonly trayOpen: boolean;
  readonly fold: Fold | null;
  /** Groups of notes that were opened, or shut where they start open. */
  readonly toggledGroups: ReadonlySet<string>;
  /** What went wrong, or what was chosen for the user, until it is put away. */
  readonly banner: string | null;
  /** What is said to a screen reader. */
  readonly spoken: string;
}

/** browser: kept for the next visit. file: written with the layout. link: carried by a link. nowhere: gone on leaving. */
export type KeptIn = 'browser' | 'file' | 'link' | 'nowhere';

/** Where each key is kept; a new key without a row does not compile. */
export const KEPT_IN: Readonly<Record<keyof Session, KeptIn>> = {
  side: 'nowhere',
  take: 'nowhere',
  selection: 'nowhere',
  cursor: 'nowhere',
  viewport: 'nowhere',
  stage: 'nowhere',
  theme: 'browser',
  halfHp: 'browser',
  push: 'browser',
  focus: 'nowhere',
  inHand: 'nowhere',
  trayFilter: 'nowhere',
  trayFind: 'nowhere',
  trayOpen: 'nowhere',
  fold: 'nowhere',
  toggledGroups: 'nowhere',
  banner: 'nowhere',
  spoken: 'nowhere',
};

export const NOTHING: ReadonlySet<never> = new Set();

export const FIRST_SESSION: Session = {
  side: 'rear',
  take: '',
  selection: NOTHING,
  cursor: null,
  viewport: null,
  stage: { width: 0, height: 0 },
  theme: 'auto',
  halfHp: false,
  push: false,
  focus: null,
  inHand: null,
  trayFilter: 'modules',
  trayFind: '',
  trayOpen: true,
  fold: null,
  toggledGroups: NOTHING,
  banner: null,
  spoken: '',
};
