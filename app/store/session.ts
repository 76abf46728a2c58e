import type { Edit, Layout } from '../../src/index.ts';
import { type KeyChoices, USUAL_KEYS, type WithKeys } from '../actions/key-choices.ts';
import type { LayerKey } from '../canvas/layer-keys.ts';
import type { Aim, SelectionKey, Side, Size, ThemeName, Viewport } from '../canvas/model.ts';

export type ThemeChoice = ThemeName | 'auto';
export type TrayFilter = 'modules' | 'ribbons' | 'leads';
/** What is folded up at the bottom of a narrow screen; all but stock, notes, part and list stand in the margin of a wide one. */
export type Fold =
  | 'stock'
  | 'notes'
  | 'part'
  | 'case'
  | 'power'
  | 'faults'
  | 'built'
  | 'change'
  | 'takes'
  | 'list';

/** Whether it takes the place of the notes in the margin. */
export const isPanel = (fold: Fold | null): boolean =>
  fold !== null && ['case', 'power', 'faults', 'built', 'change', 'takes'].includes(fold);

/** A page of the stock desk. */
export type StockPageId = 'modules' | 'ribbons' | 'buses' | 'limits' | 'kept' | 'table' | 'counts';

/** Something that would lose more than it says, put to the user before it is done. */
interface Asked {
  readonly edit: Edit;
  readonly question: string;
  /** What would be lost. */
  readonly lines: readonly string[];
}

/** The kind that the form is open for; `kind` is `null` for a new one. */
export interface KindDesk {
  readonly sort: 'module' | 'ribbon' | 'lead';
  readonly kind: string | null;
  /** With all facts of a kind of module, and its drawing. */
  readonly full?: true;
  /** The field that takes the keys, as the form names it. */
  readonly at?: string;
}

/** Several things at one point of the stage, CSS px, of which a tap selected one. */
interface Pile {
  readonly x: number;
  readonly y: number;
  /** Counted from 1, the uppermost first. */
  readonly at: number;
  readonly of: number;
  /** It is told as long as this is what is selected. */
  readonly selection: ReadonlySet<SelectionKey>;
}

/** What is to be done with an item of By list is being chosen, beside a point of the window or the stage, CSS px. */
interface Choosing {
  readonly item: string;
  readonly x: number;
  readonly y: number;
  readonly onStage?: true;
  /** What was selected before. */
  readonly others: ReadonlySet<SelectionKey>;
  /** The label of the choice that is taken at once. */
  readonly take?: string;
}

/** A connector by its ribbon's id and its own number, from 0. */
export interface ChosenConnector {
  readonly ribbon: string;
  readonly connector: number;
}

/** A header of a module, as a seat names it. */
export interface HeaderName {
  readonly module: string;
  readonly header: string;
}

type RibbonsWith = { readonly kind: string } | { readonly headers: readonly HeaderName[] };

/** The room for the drawing, px, and how large the user has text: 1 is a browser's usual size. */
export interface StageSize extends Size {
  readonly text: number;
}

/** Everything about how a layout is looked at that is no part of it. */
export interface Offered {
  readonly layout: Layout;
  readonly by: 'link' | 'file' | 'here';
}

export interface Session {
  readonly side: Side;
  /** Id of the take shown; the layout's first where it has none of that id. */
  readonly take: string;
  readonly selection: ReadonlySet<SelectionKey>;
  /** The module that the keyboard stands on. */
  readonly cursor: string | null;
  /** The connector chosen; counts while its ribbon alone is selected. */
  readonly connector: ChosenConnector | null;
  /** The same, with all that it could sit on; follows from the above. */
  readonly aim: Aim | null;
  /** `null`: the whole sheet fits the stage. */
  readonly viewport: Viewport | null;
  readonly stage: StageSize;
  readonly theme: ThemeChoice;
  readonly halfHp: boolean;
  readonly push: boolean;
  /** Key of the note whose subjects stand out. */
  readonly focus: string | null;
  /** Layers that are not drawn, or only hinted at. */
  readonly hidden: ReadonlySet<LayerKey>;
  /** Id of the ribbon under the pointer, held above all others. */
  readonly lifted: string | null;
  /** What the last tap found of several things that lie at one point. */
  readonly pile: Pile | null;
  /** Kind of module or ribbon in hand, to be put down with the next tap. */
  readonly inHand: SelectionKey | null;
  readonly trayFilter: TrayFilter;
  readonly trayFind: string;
  readonly trayOpen: boolean;
  readonly fold: Fold | null;
  /** The voltage, or ground, whose heat map lies on the drawing. */
  readonly heat: string | null;
  /** Who is at the bench, as typed. */
  readonly benchName: string;
  readonly asked: Asked | null;
  readonly choosing: Choosing | null;
  /** By list stands in the margin of a wide screen. */
  readonly listOpen: boolean;
  readonly kindDesk: KindDesk | null;
  /** The page of the stock that lies open. */
  readonly stockDesk: StockPageId | null;
  /** What its page of ribbons opens with, once: a kind, or headers that one is to be made for. */
  readonly ribbonsWith: RibbonsWith | null;
  /** All layouts that are kept lie open, to take one. */
  readonly showsLayouts: boolean;
  /** The layout, by id and title, whose earlier states lie open. */
  readonly statesOf: { readonly id: string; readonly title: string } | null;
  /** The ways to pass the layout on are open. */
  readonly handsOver: boolean;
  /** The bench sheet lies open, to be printed. */
  readonly showsSheet: boolean;
  /** Whose work is in the program lies open. */
  readonly showsLicences: boolean;
  /** A layout that came with a link or a file, neither kept nor left yet; or the one that is open, held against others. */
  readonly offered: Offered | null;
  /** The page of the help that lies open, as `help-pages.ts` names it, or `find`: the list of commands. */
  readonly help: string | null;
  readonly keys: KeyChoices;
  /** An action's first key as it is printed; comes with all that keys start. */
  readonly printKeys: ((action: WithKeys) => string | undefined) | null;
  /** The connector whose wrong plugging is rehearsed. */
  readonly rehearsing: ChosenConnector | null;
  /** Groups of notes that were opened, or shut where they start open. */
  readonly toggledGroups: ReadonlySet<string>;
  /** The label of what is selected is asked for: its field takes the keys. */
  readonly labelling: boolean;
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
  connector: 'nowhere',
  aim: 'nowhere',
  viewport: 'nowhere',
  stage: 'nowhere',
  theme: 'browser',
  halfHp: 'browser',
  push: 'browser',
  focus: 'nowhere',
  hidden: 'nowhere',
  lifted: 'nowhere',
  pile: 'nowhere',
  inHand: 'nowhere',
  trayFilter: 'nowhere',
  trayFind: 'nowhere',
  trayOpen: 'nowhere',
  fold: 'nowhere',
  heat: 'nowhere',
  benchName: 'browser',
  asked: 'nowhere',
  choosing: 'nowhere',
  listOpen: 'browser',
  kindDesk: 'nowhere',
  stockDesk: 'nowhere',
  ribbonsWith: 'nowhere',
  showsLayouts: 'nowhere',
  statesOf: 'nowhere',
  handsOver: 'nowhere',
  showsSheet: 'nowhere',
  showsLicences: 'nowhere',
  offered: 'nowhere',
  help: 'nowhere',
  keys: 'browser',
  printKeys: 'nowhere',
  rehearsing: 'nowhere',
  toggledGroups: 'nowhere',
  labelling: 'nowhere',
  banner: 'nowhere',
  spoken: 'nowhere',
};

export const NOTHING: ReadonlySet<never> = new Set();

export const FIRST_SESSION: Session = {
  side: 'rear',
  take: '',
  selection: NOTHING,
  cursor: null,
  connector: null,
  aim: null,
  viewport: null,
  stage: { width: 0, height: 0, text: 1 },
  theme: 'auto',
  halfHp: false,
  push: false,
  focus: null,
  hidden: NOTHING,
  lifted: null,
  pile: null,
  inHand: null,
  trayFilter: 'modules',
  trayFind: '',
  trayOpen: true,
  fold: null,
  heat: null,
  benchName: '',
  asked: null,
  choosing: null,
  listOpen: false,
  kindDesk: null,
  stockDesk: null,
  ribbonsWith: null,
  showsLayouts: false,
  statesOf: null,
  handsOver: false,
  showsSheet: false,
  showsLicences: false,
  offered: null,
  help: null,
  keys: USUAL_KEYS,
  printKeys: null,
  rehearsing: null,
  toggledGroups: NOTHING,
  labelling: false,
  banner: null,
  spoken: '',
};
