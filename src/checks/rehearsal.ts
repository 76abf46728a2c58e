import type { KitIndex } from '../layout/kit-index.ts';
import type { DerivedTake } from '../wiring/derived-take.ts';
import { isReversed } from '../wiring/is-reversed.ts';
import { type JoinedLines, joinLines, type Link, linksOf } from '../wiring/joined-lines.ts';
import { type Joint, linesUnder } from '../wiring/laid-ribbon.ts';
import type { Mishap } from '../wiring/mishap.ts';
import { type Misplug, pinMap } from '../wiring/pin-map.ts';
import { linesOn, mishapAt } from '../wiring/rehearse.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import type { Note } from './check.ts';
import { tellMishap } from './consequence.ts';
import { howPlugged } from './how-plugged.ts';
import { jointOf } from './remedies/cause.ts';
import { misplugOf, straysOf } from './stray.ts';

/** A seat plugged in some way or other: contact by contact, and what comes of it. */
export interface Rehearsal {
  /** Lines by contact. */
  readonly contacts: readonly string[];
  /** Lines by pin. */
  readonly pins: readonly string[];
  /** Which pin (from 0) each contact touches. */
  readonly map: readonly (number | undefined)[];
  /** What touches what, by name, each pair once. */
  readonly links: readonly Link[];
  /** Every line of the ribbon with all that it is joined to. */
  readonly joined: readonly JoinedLines[];
  readonly mishap: Mishap;
  /** As a builder would tell it. */
  readonly told: string;
}

export function rehearsalOf(joint: Joint, misplug: Misplug, kit: KitIndex): Rehearsal {
  const [contacts, pins] = [linesOn(joint), linesUnder(joint.on)];
  const map = pinMap(contacts.length, pins.length, misplug);
  const mishap = mishapAt(joint, misplug, kit);
  const told = tellMishap(joint, misplug, howPlugged(misplug), kit);
  const links = linksOf(contacts, pins, map);
  return { contacts, pins, map, links, joined: joinLines(contacts, pins, map), mishap, told };
}

/** How the drawing itself has a seat; `undefined` where it is as it belongs, as far as the drawing can tell. */
export function misplugDrawn(joint: Joint, take: DerivedTake): Misplug | undefined {
  if (isReversed(joint)) return { type: 'reversed' };
  for (const stray of straysOf(take)) if (stray.seat === joint && stray.displaced) return misplugOf(stray);
  return undefined;
}

/** Halves that do not mate cannot be plugged wrongly either. */
export const canRehearse = ({ flaws }: Joint): boolean => !flaws.cannotMate;

const TELL_MISHAPS: ReadonlySet<string> = new Set([
  'wrong-connector',
  'lines-differ',
  'stripe-reversed',
  'displaced',
]);

/** The seat whose mishap a note tells. */
export function seatRehearsed(note: Note, take: WholeTake): Joint | undefined {
  const joint = TELL_MISHAPS.has(note.check) ? jointOf(note, take) : undefined;
  return joint && canRehearse(joint) ? joint : undefined;
}
