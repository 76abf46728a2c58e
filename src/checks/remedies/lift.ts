import type { Edit } from '../../edit/edit.ts';
import type { Seat } from '../../layout/layout.ts';
import { connectorsInUse, type Joint, type LaidRibbon } from '../../wiring/laid-ribbon.ts';
import type { WholeTake } from '../../wiring/whole-take.ts';
import type { Mend } from '../check.ts';
import { connectorName, list, namesOf, targetName } from '../words.ts';
import { mend } from './remedy.ts';

/** A seat as the document has it: on which ribbon it stands, and which it is. */
interface Stated {
  readonly ribbon: LaidRibbon;
  readonly seat: Seat;
}

/** Whether a seat of a ribbon states a joint. */
function states({ seat, ribbon }: Stated, joint: Joint): boolean {
  const { on } = seat;
  if (joint.on.type === 'header') {
    const { owner, id } = joint.on.header;
    const same = owner.type === 'module' ? 'module' in on && on.module : 'board' in on && on.board;
    return (
      joint.ribbon === ribbon &&
      joint.connector === seat.connector &&
      same === owner.id &&
      'header' in on &&
      on.header === id
    );
  }
  if (!('ribbon' in on)) return false;
  const isEnd = (end: { ribbon: LaidRibbon; connector: number }, id: string, connector: number): boolean =>
    end.ribbon.id === id && end.connector === connector;
  const own = isEnd(joint, ribbon.id, seat.connector) && isEnd(joint.on, on.ribbon, on.connector);
  return own || (isEnd(joint.on, ribbon.id, seat.connector) && isEnd(joint, on.ribbon, on.connector));
}

/** A joint between two ribbons may be stated by either, and by both. */
function statedBy(joint: Joint): Stated[] {
  const ribbons = joint.on.type === 'connector' ? [joint.ribbon, joint.on.ribbon] : [joint.ribbon];
  return ribbons.flatMap((ribbon) =>
    ribbon.ribbon.seats.map((seat) => ({ ribbon, seat })).filter((stated) => states(stated, joint)),
  );
}

/** Off this one and no other: of a connector that is drawn on two things the other stays. */
function unseat(take: WholeTake, { ribbon, seat }: Stated): Edit {
  const { connector } = seat;
  const other = ribbon.ribbon.seats.find((each) => each.connector === connector && each !== seat);
  const named = { take: take.take.id, ribbon: ribbon.id, connector };
  return other ? { type: 'seat-connector', ...named, on: other.on } : { type: 'unseat', ...named };
}

/** Ribbons that joints leave with fewer than two connectors in use, and that had two; locked ones stay. */
function leftBare(joints: readonly Joint[]): LaidRibbon[] {
  const touched = new Set(
    joints.flatMap(({ ribbon, on }) => (on.type === 'connector' ? [ribbon, on.ribbon] : [ribbon])),
  );
  return [...touched].filter((ribbon) => {
    if (ribbon.ribbon.locked) return false;
    const staying = connectorsInUse(ribbon).filter((connector) =>
      ribbon.uses[connector]?.some((joint) => joint.conducts && !joints.includes(joint)),
    );
    return staying.length < 2;
  });
}

/** Lifts connectors off what they sit on; a ribbon that would be left with one end in the air is taken out. */
function liftEdits(take: WholeTake, joints: readonly Joint[]): Edit[] {
  const bare = leftBare(joints);
  const stated = joints.flatMap(statedBy).filter(({ ribbon }) => !bare.includes(ribbon));
  return [...stated.map((each) => unseat(take, each)), ...takeOut(take, bare)];
}

const takeOut = (take: WholeTake, ribbons: readonly LaidRibbon[]): Edit[] =>
  ribbons.length === 0
    ? []
    : [{ type: 'remove-ribbons', take: take.take.id, ribbons: ribbons.map(({ id }) => id) }];

/** Lifts connectors, told by what happens to the ribbons. */
export function lift(take: WholeTake, joints: readonly Joint[], why?: string): Mend {
  const bare = leftBare(joints);
  const lifted = joints.filter(({ ribbon }) => !bare.includes(ribbon));
  const words = [
    ...(lifted.length > 0
      ? [`lift ${list(lifted.map((joint) => `${connectorName(joint)}, off ${targetName(joint.on)}`))}`]
      : []),
    ...(bare.length > 0 ? [`take ${namesOf(bare)} out`] : []),
  ];
  const label = words.join(' and ');
  return mend(label.charAt(0).toUpperCase() + label.slice(1), liftEdits(take, joints), why);
}

/** Takes whole ribbons out; nothing where one of them is locked. */
export function* without(take: WholeTake, ribbons: readonly LaidRibbon[], why?: string): Generator<Mend> {
  if (ribbons.some(({ ribbon }) => ribbon.locked)) return;
  yield mend(`Take ${namesOf(ribbons)} out`, takeOut(take, ribbons), why);
}
