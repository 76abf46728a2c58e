import { connectorName, count, hp, list, targetInFull } from '../../checks/words.ts';
import { endSeenFrom } from '../../geometry/side.ts';
import type { HeaderJoint } from '../../wiring/harness.ts';
import { stripeAt, waysOf } from '../../wiring/laid-ribbon.ts';
import type { PageMaker } from '../sheet-page.ts';
import { orderOfWork, type WorkStep } from '../steps.ts';
import { caution, pagesWith, sentences } from './table.ts';

const pin1Words = ({ on }: HeaderJoint): string => {
  const end = endSeenFrom('rear', on.header.pin1);
  return end ? `pin 1 ${end} (rear)` : 'pin 1 not known: find it first';
};

const freeWords = ({ ribbon, connector, on }: HeaderJoint): string => {
  const free = on.header.bus.pins - waysOf(ribbon, connector);
  return free > 0 ? `, ${count(free, 'pin')} free at the other end` : ', no pin free';
};

interface Told {
  readonly what: string;
  readonly lookFor: string;
}

function tell(step: WorkStep): Told {
  switch (step.type) {
    case 'make':
      return {
        what: `Make ${step.ribbon.name}, ${step.ribbon.facts.kind.name}`,
        lookFor: 'cut list; marks at the stripe',
      };
    case 'test':
      return { what: `Test ${step.ribbon.name}`, lookFor: 'continuity table; label at both ends' };
    case 'mount-board': {
      const { board } = step;
      return {
        what: `Mount ${board.name} in ${board.row.row.name ?? `row ${board.row.index + 1}`}, its lead to ${board.supply.name}`,
        lookFor: 'mains unplugged; lead the right way round',
      };
    }
    case 'seat-flat': {
      const { ribbon, seats } = step;
      const places = seats.map((seat) => `${seat.connector + 1} → ${targetInFull(seat.on)}`);
      const [first] = seats as [HeaderJoint];
      return {
        what: `Seat ${ribbon.name} on modules lying face down: ${places.join(', ')}`,
        lookFor: `stripe ${stripeAt(ribbon, first.connector)} at connector ${first.connector + 1}; ${pin1Words(first)}${freeWords(first)}`,
      };
    }
    case 'seat-loose': {
      const { joint } = step;
      return {
        what: `Seat ${connectorName(joint)} on ${targetInFull(joint.on)}`,
        lookFor: `stripe at pin 1; ${pin1Words(joint)}${freeWords(joint)}`,
      };
    }
    case 'plug-in':
      return {
        what: `Plug ${connectorName(step.joint)} into ${targetInFull(step.joint.on)}`,
        lookFor: 'stripe to stripe',
      };
    case 'screw-in': {
      const { module } = step;
      return {
        what: `Screw in ${module.name}, ${module.row.row.name ?? `row ${module.row.index + 1}`}, at ${hp(module.module.atHp)}`,
        lookFor: 'no ribbon pinched, all still seated',
      };
    }
  }
}

const short = (step: WorkStep): string => tell(step).what;

/** In which order the rack is built, deep things first, nothing out of reach. */
export const orderPage: PageMaker = ({ take, options }) => {
  const { steps, knots } = orderOfWork(take);
  if (steps.length === 0) return [];
  const unseated = take.wiring.joints.filter(({ conducts }) => !conducts);
  const notes = [
    'Lay the modules of each row face down side by side on a soft cloth, as they will be seen from the rear. Press flat ribbons on there; carry what hangs together into the case together, seat its leads, and only then screw it in.',
    'Pull connectors by their bodies, straight, never by the ribbon.',
    ...knots.map(
      (knot) =>
        `These wait for one another, since each lies over the next somewhere: ${list(knot.map(short), 6)}. Seat them together.`,
    ),
    unseated.length > 0 &&
      `${count(unseated.length, 'seat')} of the drawing ${unseated.length === 1 ? 'joins' : 'join'} nothing and ${unseated.length === 1 ? 'is' : 'are'} left out here: see the findings.`,
  ].filter((sentence) => sentence !== false);
  return pagesWith(
    { id: 'order', title: 'Order of work', side: 'rear' },
    [
      caution(
        'All of this with the mains and any adapter unplugged for 30 s or more. Off at the switch is not unplugged.',
      ),
      sentences('Before you begin', notes),
      {
        heading: 'Steps',
        columns: [
          { head: 'Step', share: 11, align: 'right' },
          { head: 'Do', share: 82 },
          { head: 'Look for', share: 84 },
          { head: 'Done', share: 13, box: true },
        ],
        rows: steps.map((step, i) => {
          const { what, lookFor } = tell(step);
          return [String(i + 1), what, lookFor, ''];
        }),
      },
    ],
    options,
  );
};
