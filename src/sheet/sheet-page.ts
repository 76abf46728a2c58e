import type { Note } from '../checks/check.ts';
import type { Power } from '../electrical/power.ts';
import type { Side } from '../geometry/side.ts';
import type { Layout } from '../layout/layout.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import type { Markup } from './markup.ts';

/** The sorts of pages of a bench sheet, in the order in which they are printed; each can be left out. */
export const SHEET_PAGE_IDS = [
  'front',
  'rear',
  'section',
  'feeds',
  'parts',
  'cuts',
  'strips',
  'continuity',
  'order',
  'power-up',
  'fault-finding',
  'labels',
  'change',
  'gig-card',
] as const;

export type SheetPageId = (typeof SHEET_PAGE_IDS)[number];

/** Paper sizes, mm (ISO 216; Letter from memory). */
export const PAPERS = {
  a4: { widthMm: 210, heightMm: 297 },
  letter: { widthMm: 215.9, heightMm: 279.4 },
} as const;

export type Paper = keyof typeof PAPERS;

export interface SheetOptions {
  readonly paper: Paper;
  /** Absent: all. */
  readonly pages?: ReadonlySet<SheetPageId>;
  /** List every ribbon in the cut list, those that are owned too. */
  readonly everyPiece?: boolean;
  /** What the printer makes of 100 mm, measured on the check bar; absent: 100. */
  readonly barMm?: number;
}

/** All that pages are made from. */
export interface SheetFacts {
  readonly layout: Layout;
  readonly take: WholeTake;
  readonly notes: readonly Note[];
  readonly power: Power;
  readonly options: SheetOptions;
}

/**
 * One printed page. Whoever makes pages cuts what is long into as many as it takes: nothing flows from one into the
 * next, so that every page can bear its number, the side it shows, and whether it is still true.
 */
export interface SheetPage {
  readonly id: SheetPageId;
  readonly title: string;
  /** The side of the case that it shows; absent where it shows none. */
  readonly side?: Side;
  /** It lies on its long edge. */
  readonly lies?: true;
  readonly body: Markup;
}

/** Makes the pages of one sort; none where there is nothing to tell. */
export type PageMaker = (facts: SheetFacts) => readonly SheetPage[];
