import { doubleFeed, joinedSupplies, leadShort, missingVoltage, unpowered } from './feeding.ts';
import { unlinked } from './link-up.ts';
import { noHost, overMembers, splitMember, twoHosts } from './linking.ts';
import { boardOverload, feedBetter, groundShift } from './loads.ts';
import { badGap, clash, crossed, crowded, missesPitch, outOfLine } from './pitch.ts';
import type { Remedy } from './remedy.ts';
import {
  doubleSeat,
  looksAway,
  looseEnd,
  otherRibbon,
  stripeReversed,
  wrongAxis,
  wrongThing,
} from './seating.ts';
import { misplaced, overBoard, overlap } from './standing.ts';

/** What might mend the notes of each check. Checks that only ask for a look, or for facts, have none. */
export const remedies: Readonly<Record<string, Remedy>> = {
  overlap,
  'off-row': misplaced,
  'wrong-height': misplaced,
  'too-deep': misplaced,
  'over-board': overBoard,
  'wrong-connector': wrongThing,
  'lines-differ': wrongThing,
  'double-seat': doubleSeat,
  'loose-end': looseEnd,
  'wrong-axis': wrongAxis,
  'looks-away': looksAway,
  crossed,
  displaced: missesPitch,
  'off-pitch': missesPitch,
  'out-of-line': outOfLine,
  'short-ribbon': badGap,
  'tight-bend': badGap,
  'no-clearance': badGap,
  'ribbons-clash': clash,
  crowded,
  'stripe-reversed': stripeReversed,
  'key-against': otherRibbon,
  'lead-short': leadShort,
  'over-members': overMembers,
  'two-hosts': twoHosts,
  'no-host': noHost,
  'split-member': splitMember,
  unlinked,
  unpowered,
  'missing-voltage': missingVoltage,
  'double-feed': doubleFeed,
  'joined-supplies': joinedSupplies,
  'board-overload': boardOverload,
  'contact-overload': feedBetter,
  'low-voltage': feedBetter,
  'ground-shift': groundShift,
};
