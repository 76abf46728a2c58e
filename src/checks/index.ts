import type { Check } from './check.ts';
import { firstChecks } from './first-checks.ts';
import { boardOverload } from './rules/board-overload.ts';
import { contactOverload } from './rules/contact-overload.ts';
import { doubleFeed } from './rules/double-feed.ts';
import { groundShift } from './rules/ground-shift.ts';
import { joinedSupplies } from './rules/joined-supplies.ts';
import { lowHeadroom } from './rules/low-headroom.ts';
import { lowVoltage } from './rules/low-voltage.ts';
import { overload } from './rules/overload.ts';

/**
 * Every check, in the order in which findings of one level are listed. Those on feeds and currents stand apart from
 * the first ones, so that the app can load them, and the computation behind them, once its first picture stands.
 */
export const checks: readonly Check[] = [
  ...firstChecks,
  doubleFeed,
  joinedSupplies,
  overload,
  lowHeadroom,
  boardOverload,
  contactOverload,
  lowVoltage,
  groundShift,
];
