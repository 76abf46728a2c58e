import type { Check } from './check.ts';
import { drawnChecks } from './drawn-checks.ts';
import { boardOverload } from './rules/board-overload.ts';
import { contactOverload } from './rules/contact-overload.ts';
import { doubleFeed } from './rules/double-feed.ts';
import { groundShift } from './rules/ground-shift.ts';
import { joinedSupplies } from './rules/joined-supplies.ts';
import { lowHeadroom } from './rules/low-headroom.ts';
import { lowVoltage } from './rules/low-voltage.ts';
import { overload } from './rules/overload.ts';

/**
 * Every check, in the order in which findings of one level are listed. Those on currents stand apart from the others,
 * which a search can try hundreds of times.
 */
export const checks: readonly Check[] = [
  ...drawnChecks,
  doubleFeed,
  joinedSupplies,
  overload,
  lowHeadroom,
  boardOverload,
  contactOverload,
  lowVoltage,
  groundShift,
];
