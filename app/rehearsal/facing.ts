import { type JointTarget, stripeAt } from '../../src/index.ts';

/** How the pins lie before the one who plugs. */
export interface Facing {
  /** Pin 1 is above. */
  readonly pin1Up: boolean;
  /** The odd pins stand left. */
  readonly oddLeft: boolean;
  /** From where that is seen. */
  readonly from: string;
  /** What is not drawn as it is. */
  readonly besides?: string;
}

/** Seen with pin 1 above, the odd pins of a header stand left; the holes of a socket mirror them. */
const facing = (pin1Up: boolean, isSocket: boolean, from: string, besides?: string): Facing => ({
  pin1Up,
  oddLeft: pin1Up !== isSocket,
  from,
  ...(besides && { besides }),
});

const FROM_WHERE_PLUGGED = 'Seen from the side where it is plugged in';

/** Headers of modules look to the rear; on a board or another ribbon one stands before where it is plugged. */
export function facingOf(on: JointTarget): Facing {
  if (on.type === 'connector') {
    const isUp = on.ribbon.facts.flat && stripeAt(on.ribbon, on.connector) === 'up';
    return facing(isUp, true, FROM_WHERE_PLUGGED);
  }
  const { owner, axis, pin1 } = on.header;
  const isModule = owner.type === 'module';
  const from = isModule ? 'Seen from the rear' : FROM_WHERE_PLUGGED;
  if (pin1 === undefined) return facing(false, false, from, 'Which end has pin 1 is not known: drawn below.');
  if (axis === 'vertical') return facing(pin1 === 'up', false, from);
  const side = isModule === (pin1 === 'left') ? 'right' : 'left';
  return facing(
    false,
    false,
    from,
    `It lies flat with pin 1 on the ${side}: drawn turned by a quarter, pin 1 below.`,
  );
}

/** Pin rows and pairs that one step to the right or down comes to. */
export const rightward = ({ oddLeft }: Facing): number => (oddLeft ? 1 : -1);
export const downward = ({ pin1Up }: Facing): number => (pin1Up ? 1 : -1);
