import type { About, Examples } from './check.ts';
import * as boardOverload from './rules/board-overload.ts';
import * as contactOverload from './rules/contact-overload.ts';
import * as crossed from './rules/crossed.ts';
import * as crowded from './rules/crowded.ts';
import * as displaced from './rules/displaced.ts';
import * as doubleFeed from './rules/double-feed.ts';
import * as doubleSeat from './rules/double-seat.ts';
import * as foreignVoltage from './rules/foreign-voltage.ts';
import * as freePins from './rules/free-pins.ts';
import * as groundShift from './rules/ground-shift.ts';
import * as guessedData from './rules/guessed-data.ts';
import * as joinedSupplies from './rules/joined-supplies.ts';
import * as keyAgainst from './rules/key-against.ts';
import * as leadShort from './rules/lead-short.ts';
import * as linesDiffer from './rules/lines-differ.ts';
import * as looksAway from './rules/looks-away.ts';
import * as looseEnd from './rules/loose-end.ts';
import * as lowHeadroom from './rules/low-headroom.ts';
import * as lowVoltage from './rules/low-voltage.ts';
import * as missingVoltage from './rules/missing-voltage.ts';
import * as noClearance from './rules/no-clearance.ts';
import * as noHost from './rules/no-host.ts';
import * as offPitch from './rules/off-pitch.ts';
import * as offRow from './rules/off-row.ts';
import * as outOfLine from './rules/out-of-line.ts';
import * as overBoard from './rules/over-board.ts';
import * as overMembers from './rules/over-members.ts';
import * as overlap from './rules/overlap.ts';
import * as overload from './rules/overload.ts';
import * as ribbonsClash from './rules/ribbons-clash.ts';
import * as shortRibbon from './rules/short-ribbon.ts';
import * as spareConnectors from './rules/spare-connectors.ts';
import * as splitMember from './rules/split-member.ts';
import * as stripeReversed from './rules/stripe-reversed.ts';
import * as stripeSide from './rules/stripe-side.ts';
import * as tightBend from './rules/tight-bend.ts';
import * as tooDeep from './rules/too-deep.ts';
import * as twoHosts from './rules/two-hosts.ts';
import * as unknownFacts from './rules/unknown-facts.ts';
import * as unlinked from './rules/unlinked.ts';
import * as unpowered from './rules/unpowered.ts';
import * as wrongAxis from './rules/wrong-axis.ts';
import * as wrongConnector from './rules/wrong-connector.ts';
import * as wrongHeight from './rules/wrong-height.ts';

/** What the help, the README and the tests know of a check beyond what it finds. */
export interface Entry {
  readonly about: About;
  readonly examples: Examples;
}

/** An entry for every check, by its id; apart from the list, so that the first screen need not carry them. */
export const catalogue: Readonly<Record<string, Entry>> = {
  overlap,
  'off-row': offRow,
  'wrong-height': wrongHeight,
  'too-deep': tooDeep,
  'over-board': overBoard,
  'wrong-connector': wrongConnector,
  'lines-differ': linesDiffer,
  'free-pins': freePins,
  'double-seat': doubleSeat,
  'loose-end': looseEnd,
  'wrong-axis': wrongAxis,
  'looks-away': looksAway,
  crossed,
  displaced,
  'off-pitch': offPitch,
  'out-of-line': outOfLine,
  'short-ribbon': shortRibbon,
  'tight-bend': tightBend,
  'no-clearance': noClearance,
  'ribbons-clash': ribbonsClash,
  crowded,
  'stripe-reversed': stripeReversed,
  'key-against': keyAgainst,
  'foreign-voltage': foreignVoltage,
  'stripe-side': stripeSide,
  'spare-connectors': spareConnectors,
  'lead-short': leadShort,
  'over-members': overMembers,
  'two-hosts': twoHosts,
  'no-host': noHost,
  'split-member': splitMember,
  unlinked,
  'unknown-facts': unknownFacts,
  'guessed-data': guessedData,
  unpowered,
  'missing-voltage': missingVoltage,
  'double-feed': doubleFeed,
  'joined-supplies': joinedSupplies,
  overload,
  'low-headroom': lowHeadroom,
  'board-overload': boardOverload,
  'contact-overload': contactOverload,
  'low-voltage': lowVoltage,
  'ground-shift': groundShift,
};
