import { connectorOf, type Joint, waysOf } from '../wiring/laid-ribbon.ts';

const TURNING = {
  'with-stripe': 'The key keeps it from going in turned, unless the cable was made wrongly.',
  'against-stripe': 'But its key lies against the stripe: it goes in only turned end for end.',
  none: 'No key is known on the connector: it may still go in turned.',
} as const;

/** What box and key leave of all that can go wrong at a seat; nothing where there is no box. */
export function boxWords({ ribbon, connector, on }: Joint): string | undefined {
  if (on.type !== 'header' || !on.header.keyed) return undefined;
  const { key = 'none' } = connectorOf(ribbon, connector);
  const sits =
    waysOf(ribbon, connector) < on.header.bus.pins
      ? 'This header is boxed, but wider than the connector, which can still sit some pairs off.'
      : 'This header is boxed: the box keeps the connector over its pins.';
  return `${sits} ${TURNING[key]}`;
}
