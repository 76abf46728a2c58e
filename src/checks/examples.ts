import type { Examples } from './check.ts';
import { examples as crossed } from './rules/crossed.ts';
import { examples as crowded } from './rules/crowded.ts';
import { examples as displaced } from './rules/displaced.ts';
import { examples as doubleFeed } from './rules/double-feed.ts';
import { examples as doubleSeat } from './rules/double-seat.ts';
import { examples as foreignVoltage } from './rules/foreign-voltage.ts';
import { examples as freePins } from './rules/free-pins.ts';
import { examples as guessedData } from './rules/guessed-data.ts';
import { examples as joinedSupplies } from './rules/joined-supplies.ts';
import { examples as keyAgainst } from './rules/key-against.ts';
import { examples as leadShort } from './rules/lead-short.ts';
import { examples as linesDiffer } from './rules/lines-differ.ts';
import { examples as looksAway } from './rules/looks-away.ts';
import { examples as looseEnd } from './rules/loose-end.ts';
import { examples as missingVoltage } from './rules/missing-voltage.ts';
import { examples as noClearance } from './rules/no-clearance.ts';
import { examples as noHost } from './rules/no-host.ts';
import { examples as offPitch } from './rules/off-pitch.ts';
import { examples as offRow } from './rules/off-row.ts';
import { examples as outOfLine } from './rules/out-of-line.ts';
import { examples as overBoard } from './rules/over-board.ts';
import { examples as overMembers } from './rules/over-members.ts';
import { examples as overlap } from './rules/overlap.ts';
import { examples as ribbonsClash } from './rules/ribbons-clash.ts';
import { examples as shortRibbon } from './rules/short-ribbon.ts';
import { examples as spareConnectors } from './rules/spare-connectors.ts';
import { examples as splitMember } from './rules/split-member.ts';
import { examples as stripeReversed } from './rules/stripe-reversed.ts';
import { examples as stripeSide } from './rules/stripe-side.ts';
import { examples as tightBend } from './rules/tight-bend.ts';
import { examples as tooDeep } from './rules/too-deep.ts';
import { examples as twoHosts } from './rules/two-hosts.ts';
import { examples as unknownFacts } from './rules/unknown-facts.ts';
import { examples as unlinked } from './rules/unlinked.ts';
import { examples as unpowered } from './rules/unpowered.ts';
import { examples as wrongAxis } from './rules/wrong-axis.ts';
import { examples as wrongConnector } from './rules/wrong-connector.ts';
import { examples as wrongHeight } from './rules/wrong-height.ts';

/** The two drawings of every check, by its id; apart from the list, so that the app need not carry them. */
export const examplesOf: Readonly<Record<string, Examples>> = {
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
};
