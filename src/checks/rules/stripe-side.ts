import { groupBy } from '../../layout/group-by.ts';
import { remember } from '../../layout/remember.ts';
import { connectorOf, type Joint } from '../../wiring/laid-ribbon.ts';
import type { About, Check, Examples, Found } from '../check.ts';
import { eachPart } from '../each-part.ts';
import { example, kind, onBoard, onModule, powerHeader, ribbon, ribbonKind, SUPPLY } from '../example.ts';
import { count, inDocumentOrder, namesOf, ribbonSubject } from '../words.ts';

const isKeyed = (key: string | undefined): boolean => key !== undefined && key !== 'none';

/** Both halves must be keyed for the joint to go in one way only. */
function isProtected({ ribbon: own, connector, on }: Joint): boolean {
  if (!isKeyed(connectorOf(own, connector).key)) return false;
  return on.type === 'header' ? on.header.keyed : isKeyed(connectorOf(on.ribbon, on.connector).key);
}

/** Ribbons with seats that nothing keeps from being plugged the other way round, and how many. */
const openRibbons = eachPart(({ wiring }) => {
  const open = wiring.joints.filter((joint) => joint.conducts && !isProtected(joint));
  return [...groupBy(open, ({ ribbon: own }) => own)].map(([{ id, index, name }, joints]) => ({
    id,
    index,
    name,
    seats: joints.length,
  }));
});

const tell = remember((open: ReturnType<typeof openRibbons>): Found => {
  const ribbons = inDocumentOrder(open);
  const seats = open.reduce((sum, each) => sum + each.seats, 0);
  return {
    subjects: ribbons.map(ribbonSubject),
    headline: `Look at the stripe on ${count(seats, 'open seat')}`,
    detail: `No key helps at ${namesOf(ribbons)}: the drawing cannot tell how they are plugged.`,
    remedy: 'Look at each stripe before power: it lies at pin 1.',
    measure: { seats },
  };
});

export const about: About = {
  title: 'Seats that no key protects',
  why: 'An open header takes a connector either way round; only the eye on the stripe prevents it.',
  source: 'common practice, no source',
};

export const stripeSide: Check = {
  id: 'stripe-side',
  level: 'reminder',
  whole: true,
  *find(take) {
    const open = openRibbons(take);
    if (open.length > 0) yield tell(open);
  },
};

const boxed = (keyed: boolean) => {
  const [board] = SUPPLY.boards;
  const header = { id: 'k', bus: 'power', keyed: true };
  return example({
    kinds: [kind('boxed', { headers: [powerHeader({ keyed })] })],
    ribbonKinds: [
      {
        ...ribbonKind('own', [], { bus: 'power', lay: 'loose' }),
        connectors: [
          { atMm: 0, key: 'with-stripe' },
          { atMm: 500, key: 'with-stripe' },
        ],
      },
    ],
    supplies: board ? [{ ...SUPPLY, boards: [{ ...board, headers: [header] }] }] : [],
    modules: [['a', 'boxed', 40]],
    ribbons: [ribbon('r', 'own', [onBoard(0, 'k'), onModule(1, 'a', 'power')])],
  });
};

export const examples: Examples = { good: () => boxed(true), bad: () => boxed(false) };
