import type { Check } from './check.ts';
import { crossed } from './rules/crossed.ts';
import { crowded } from './rules/crowded.ts';
import { displaced } from './rules/displaced.ts';
import { doubleSeat } from './rules/double-seat.ts';
import { foreignVoltage } from './rules/foreign-voltage.ts';
import { freePins } from './rules/free-pins.ts';
import { guessedData } from './rules/guessed-data.ts';
import { keyAgainst } from './rules/key-against.ts';
import { leadShort } from './rules/lead-short.ts';
import { linesDiffer } from './rules/lines-differ.ts';
import { looksAway } from './rules/looks-away.ts';
import { looseEnd } from './rules/loose-end.ts';
import { missingVoltage } from './rules/missing-voltage.ts';
import { noClearance } from './rules/no-clearance.ts';
import { noHost } from './rules/no-host.ts';
import { offPitch } from './rules/off-pitch.ts';
import { offRow } from './rules/off-row.ts';
import { outOfLine } from './rules/out-of-line.ts';
import { overBoard } from './rules/over-board.ts';
import { overMembers } from './rules/over-members.ts';
import { overlap } from './rules/overlap.ts';
import { ribbonsClash } from './rules/ribbons-clash.ts';
import { shortRibbon } from './rules/short-ribbon.ts';
import { spareConnectors } from './rules/spare-connectors.ts';
import { splitMember } from './rules/split-member.ts';
import { stripeReversed } from './rules/stripe-reversed.ts';
import { stripeSide } from './rules/stripe-side.ts';
import { tightBend } from './rules/tight-bend.ts';
import { tooDeep } from './rules/too-deep.ts';
import { twoHosts } from './rules/two-hosts.ts';
import { unknownFacts } from './rules/unknown-facts.ts';
import { unlinked } from './rules/unlinked.ts';
import { unpowered } from './rules/unpowered.ts';
import { wrongAxis } from './rules/wrong-axis.ts';
import { wrongConnector } from './rules/wrong-connector.ts';
import { wrongHeight } from './rules/wrong-height.ts';

/** The checks that need no more than how things stand and are joined, in the order of all. */
export const drawnChecks: readonly Check[] = [
  overlap,
  offRow,
  wrongHeight,
  tooDeep,
  overBoard,
  wrongConnector,
  linesDiffer,
  freePins,
  doubleSeat,
  looseEnd,
  wrongAxis,
  looksAway,
  crossed,
  displaced,
  offPitch,
  outOfLine,
  shortRibbon,
  tightBend,
  noClearance,
  ribbonsClash,
  crowded,
  stripeReversed,
  keyAgainst,
  foreignVoltage,
  stripeSide,
  spareConnectors,
  leadShort,
  overMembers,
  twoHosts,
  noHost,
  splitMember,
  unlinked,
  unknownFacts,
  guessedData,
  unpowered,
  missingVoltage,
];
