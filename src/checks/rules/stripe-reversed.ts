import type { DerivedTake } from '../../wiring/derived-take.ts';
import { isReversed } from '../../wiring/is-reversed.ts';
import { connectorOf, type Joint, stripeAt } from '../../wiring/laid-ribbon.ts';
import type { About, Check, Examples } from '../check.ts';
import { tellMishap } from '../consequence.ts';
import { along, example, kind, ribbon, shoreHeader } from '../example.ts';
import { jointSpots } from '../spots.ts';
import { connectorName, seatPart, seatSubjects, targetName } from '../words.ts';

/** A key that runs with the stripe and a boxed header refuse the reversed connector. */
const isHeldByKeys = ({ ribbon: own, connector, on }: Joint): boolean =>
  on.type === 'header' && on.header.keyed && connectorOf(own, connector).key === 'with-stripe';

/** Turning mends a ribbon that is wrong at every header and reads the same from both ends. */
const turns = ({ ribbon: own }: Joint): boolean =>
  own.facts.symmetric &&
  own.uses.flat().every((joint) => joint.ribbon === own && joint.on.type === 'header' && isReversed(joint));

export const about: About = {
  title: 'Stripe at the wrong end',
  why: 'The stripe marks conductor 1; at the other end of a header every line meets another.',
  source: 'NASA-STD-8739.4 [19.6.1.e.10], stripe aligned with the connector’s mark; reversal by pin map',
};

export const stripeReversed: Check = {
  id: 'stripe-reversed',
  level: 'damage',
  *find(take: DerivedTake) {
    for (const joint of take.wiring.joints) {
      if (!isReversed(joint)) continue;
      const { ribbon: own, connector, on } = joint;
      const held = isHeldByKeys(joint);
      const stripe = stripeAt(own, connector);
      yield {
        level: held ? 'fault' : 'damage',
        subjects: seatSubjects(joint),
        part: seatPart(joint),
        headline: `${connectorName(joint)} sits with its stripe ${stripe} on ${targetName(on)}`,
        detail:
          on.type === 'header'
            ? `Pin 1 is ${on.header.pin1}. ${held ? 'The key keeps it from going in.' : tellMishap(joint, { type: 'reversed' }, 'Reversed', take.kit)}`
            : `The stripe of ${on.ribbon.name} lies ${stripeAt(on.ribbon, on.connector)}. ${tellMishap(joint, { type: 'reversed' }, 'Reversed', take.kit)}`,
        remedy: turns(joint)
          ? `Turn ${own.name}.`
          : 'Turn the ribbon, or put a half-twist before this connector and press it on the other face.',
        spots: jointSpots(joint),
      };
    }
  },
};

const pin1 = (end: 'down' | 'up') =>
  example({
    kinds: [kind('turned', { headers: [shoreHeader({ pin1: end })] })],
    modules: [
      ['a', 'voice', 5],
      ['b', 'turned', 0],
    ],
    ribbons: [ribbon('r', 'stiff', along('a', 'b'))],
  });

export const examples: Examples = { good: () => pin1('down'), bad: () => pin1('up') };
