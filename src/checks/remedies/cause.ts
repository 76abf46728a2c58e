import type { PlacedModule } from '../../geometry/place.ts';
import type { Joint, LaidRibbon } from '../../wiring/laid-ribbon.ts';
import type { Stray } from '../../wiring/lie.ts';
import type { LinkGroup } from '../../wiring/link-group.ts';
import type { Neighbours } from '../../wiring/neighbours.ts';
import type { WholeTake } from '../../wiring/whole-take.ts';
import type { Note, Subject } from '../check.ts';
import { keyOf } from '../run.ts';
import { straysOf } from '../stray.ts';
import { neighbourPart, neighbourSubjects, seatPart, seatSubjects } from '../words.ts';

/*
 * What a note is about, found again in the take by the note's key: notes are plain data, and hold on to nothing.
 */

const isAbout = (note: Note, subjects: readonly Subject[], part?: string): boolean =>
  keyOf(note.check, subjects, part) === note.key;

/** The seat of a rule on single seats. */
export const jointOf = (note: Note, { wiring }: WholeTake): Joint | undefined =>
  wiring.joints.find((joint) => isAbout(note, seatSubjects(joint), seatPart(joint)));

/** The stray of a rule on stiff ribbons. */
export const strayOf = (note: Note, take: WholeTake): Stray | undefined =>
  [...straysOf(take)].find(({ seat }) => isAbout(note, seatSubjects(seat), seatPart(seat)));

/** The pair of a rule on neighbours. */
export const pairOf = (note: Note, { neighbours }: WholeTake): Neighbours | undefined =>
  neighbours.find((pair) => isAbout(note, neighbourSubjects(pair), neighbourPart(pair)));

export const modulesOf = ({ subjects }: Note, { places }: WholeTake): PlacedModule[] =>
  subjects.flatMap(({ type, id }) => (type === 'module' ? (places.moduleById.get(id) ?? []) : []));

export const ribbonsOf = ({ subjects }: Note, { wiring }: WholeTake): LaidRibbon[] =>
  subjects.flatMap(({ type, id }) => (type === 'ribbon' ? (wiring.ribbonById.get(id) ?? []) : []));

/** The link group of which all ribbons are subjects. */
export function groupOf(note: Note, take: WholeTake): LinkGroup | undefined {
  const [first] = ribbonsOf(note, take);
  return first && take.linkGroups.find(({ ribbons }) => ribbons.includes(first));
}
