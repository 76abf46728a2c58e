import type { Edit } from '../edit/edit.ts';
import type { Layout } from '../layout/layout.ts';
import type { DerivedTake } from '../wiring/derived-take.ts';
import type { WholeTake } from '../wiring/whole-take.ts';

/** damage: hardware may be destroyed. fault: will not fit or work as drawn. reminder: worth knowing. */
export type Level = 'damage' | 'fault' | 'reminder';

export const LEVELS: readonly Level[] = ['damage', 'fault', 'reminder'];

export type SubjectType = 'module' | 'ribbon' | 'board' | 'supply' | 'row';

export interface Subject {
  readonly type: SubjectType;
  readonly id: string;
}

/** A finding as the command line prints it and the layout's `accepted` refers to it. */
export interface Finding {
  readonly check: string;
  readonly level: Level;
  /** Id of the take. */
  readonly take: string;
  /** Stable: check and subjects, and a place where one pair of subjects can have several findings. */
  readonly key: string;
  readonly subjects: readonly Subject[];
  /** What, where, how much, with units. */
  readonly message: string;
  readonly remedy: string;
  readonly measure?: Readonly<Record<string, number>>;
  readonly accepted?: true;
}

/** Where a finding stands on the drawing: in a row, seen from the front, mm. */
export interface Spot {
  readonly row: string;
  readonly xMm: number;
  readonly yMm: number;
}

/** A remedy that the program can carry out: one tap, one undo. Found when a note is looked at, see `searchMends`. */
export interface Mend {
  readonly label: string;
  readonly edit: Edit;
  /** Why this and not another, where there was a choice. */
  readonly why?: string;
}

/** A finding as it is shown: with a heading of its own, and where it stands. */
export interface Note extends Finding {
  readonly headline: string;
  readonly detail: string;
  /** Absent: it stands at its subjects; see `spotsOf`. */
  readonly spots?: readonly Spot[];
  /** What was measured, as text: an accepted finding returns when it changes. */
  readonly facts: string;
}

/** What a check says of one thing that it found. */
export interface Found {
  /** Where it is not the check's own. */
  readonly level?: Level;
  /** In the order of the check's `subjects`; several of one type are sorted by id. */
  readonly subjects: readonly Subject[];
  /** Tells findings with the same subjects apart: a connector, a voltage. */
  readonly part?: string;
  readonly headline: string;
  readonly detail: string;
  readonly remedy: string;
  readonly measure?: Readonly<Record<string, number>>;
  /** Absent: it stands at its subjects, wherever these are. */
  readonly spots?: readonly Spot[];
}

interface Rule {
  readonly id: string;
  readonly level: Level;
}

/** A rule about what ribbons join: each part of a take is judged by itself, once as long as it stays the same. */
interface PartCheck extends Rule {
  readonly whole?: never;
  find(part: DerivedTake): Iterable<Found>;
}

/** A rule about things that no ribbon need join: neighbours on the rail, or one note for all of a take. */
interface WholeCheck extends Rule {
  readonly whole: true;
  find(take: WholeTake): Iterable<Found>;
}

/** One rule of the trade that a drawing can break. */
export type Check = PartCheck | WholeCheck;

/** What there is to say of a rule. */
export interface About {
  /** What it finds, in a few words. */
  readonly title: string;
  /** What happens on the bench when it is not kept. */
  readonly why: string;
  /** Where the rule comes from. */
  readonly source: string;
}

/** A drawing just inside the rule, and one just outside. */
export interface Examples {
  readonly good: () => Layout;
  readonly bad: () => Layout;
}
