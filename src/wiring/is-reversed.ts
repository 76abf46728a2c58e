import { isWrongAxis, type Joint, stripeAt } from './laid-ribbon.ts';

/** Whether a seat's stripe lies at the wrong end; an unknown pin-1 end tells nothing. */
export function isReversed(joint: Joint): boolean {
  const { ribbon: own, connector, on } = joint;
  if (!own.facts.flat || !joint.conducts || isWrongAxis(joint)) return false;
  const stripe = stripeAt(own, connector);
  if (on.type === 'connector') return on.ribbon.facts.flat && stripe !== stripeAt(on.ribbon, on.connector);
  return on.header.pin1 !== undefined && on.header.pin1 !== stripe;
}
