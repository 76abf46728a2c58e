import { targetInFull } from '../checks/words.ts';
import type { PlacedHeader } from '../geometry/place.ts';
import { endSeenFrom } from '../geometry/side.ts';
import { type Joint, type LaidRibbon, orderOf, stripeAt } from '../wiring/laid-ribbon.ts';

const MINUS = '\u2212';

/** A figure with so many decimals, as on an instrument. */
export const reading = (value: number, decimals: number): string =>
  (value + 0).toFixed(decimals).replace('-', MINUS);

/** Which way the stripe points at a connector, seen from the rear. */
export function stripeWords(ribbon: LaidRibbon, connector: number, header: PlacedHeader | undefined): string {
  if (!header && ribbon.uses[connector]?.some(({ on }) => on.type === 'connector')) return 'stripe to stripe';
  if (ribbon.facts.flat) return `stripe ${stripeAt(ribbon, connector)}`;
  return header?.pin1 ? `stripe ${endSeenFrom('rear', header.pin1)}` : 'stripe at pin 1';
}

/** What a connector sits on: of several drawn seats the one that conducts. */
export const jointOf = ({ uses }: LaidRibbon, connector: number): Joint | undefined =>
  uses[connector]?.find(({ conducts }) => conducts) ?? uses[connector]?.[0];

/** What a connector is plugged to. */
export function pluggedWords(ribbon: LaidRibbon, connector: number): string {
  const joint = jointOf(ribbon, connector);
  if (!joint) return 'left free';
  if (joint.on.type === 'connector' && joint.ribbon !== ribbon)
    return `connector ${joint.connector + 1} of ${joint.ribbon.name}`;
  return targetInFull(joint.on);
}

/** Connectors of a ribbon in their order along it. */
export const connectorsAlong = (ribbon: LaidRibbon): number[] =>
  ribbon.uses.map((_, connector) => connector).sort((a, b) => orderOf(ribbon, a) - orderOf(ribbon, b));

/** Ribbons that are used: a seat is drawn for one of their connectors. */
export const isUsed = ({ uses }: LaidRibbon): boolean => uses.some(({ length }) => length > 0);
