import { figure, list, targetInFull, targetName } from '../checks/words.ts';
import type { Seat } from '../layout/layout.ts';
import { compareTakes, type Difference } from '../share/compare.ts';
import { fingerprintOf } from '../wiring/fingerprint.ts';
import { harnessStates } from '../wiring/harness-tests.ts';
import { type LaidRibbon, stripeAt } from '../wiring/laid-ribbon.ts';
import { ownedLeft } from '../wiring/stock.ts';
import type { WholeTake } from '../wiring/whole-take.ts';

/** What is done together, in this order. */
const STAGES = ['have', 'off', 'unplug', 'out', 'move', 'make', 'seat', 'test', 'on'] as const;

type Stage = (typeof STAGES)[number];

export const STAGE_WORDS: Readonly<Record<Stage, string>> = {
  have: 'Before you begin, have these',
  off: 'Power off first',
  unplug: 'Unplug these',
  out: 'Take these out',
  move: 'Move these, put these in',
  make: 'Make or remake these',
  seat: 'Seat these',
  test: 'Test these again, unplugged',
  on: 'Power up',
};

export interface ChangeStep {
  /** Stable: what it is about, for a tick. */
  readonly key: string;
  readonly stage: Stage;
  readonly words: string;
}

/** Connectors of one ribbon that come off, or go on. */
export interface SeatsOf {
  readonly ribbon: string;
  readonly seats: readonly Seat[];
}

/** The way from one take, as it stands in the case, to another. */
export interface ChangeSheet {
  readonly from: string;
  readonly to: string;
  readonly unplug: readonly SeatsOf[];
  readonly seat: readonly SeatsOf[];
  readonly steps: readonly ChangeStep[];
}

/** A seat as text: what is the same is written the same. */
const seatText = ({ connector, on }: Seat): string =>
  'ribbon' in on
    ? `${connector} in ${on.ribbon} ${on.connector}`
    : JSON.stringify([connector, 'module' in on ? ['module', on.module] : ['board', on.board], on.header]);

/** Modules and boards that stand in the other take just as in this one: what sits on them may stay. */
function steadyIn(from: WholeTake, to: WholeTake): ReadonlySet<string> {
  const modules = from.places.modules.filter(({ id, module, row }) => {
    const there = to.places.moduleById.get(id);
    return (
      there &&
      there.module.kind === module.kind &&
      there.row.row.id === row.row.id &&
      there.module.atHp === module.atHp
    );
  });
  const boards = from.places.boards.filter(
    ({ id, board }) => JSON.stringify(to.places.boardById.get(id)?.board) === JSON.stringify(board),
  );
  return new Set([...modules.map(({ id }) => `module ${id}`), ...boards.map(({ id }) => `board ${id}`)]);
}

/** Whether the very ribbon lies in both takes in the same way. */
function liesSame(from: LaidRibbon, to: LaidRibbon | undefined): boolean {
  if (!to || from.ribbon.kind !== to.ribbon.kind) return false;
  const twists = ({ ribbon }: LaidRibbon): string => (ribbon.twists ?? []).join(' ').replace(/( 0)+$/, '');
  const edge = ({ ribbon }: LaidRibbon): string => ribbon.stripe ?? 'down';
  return edge(from) === edge(to) && (twists(from) || '0') === (twists(to) || '0');
}

/** Seats of a take that are not there in the other one, by ribbon. */
function seatsOnlyIn(take: WholeTake, other: WholeTake, steady: ReadonlySet<string>): readonly SeatsOf[] {
  const lasting = new Map(
    take.wiring.ribbons.map((ribbon) => [
      ribbon.id,
      liesSame(ribbon, other.wiring.ribbonById.get(ribbon.id)),
    ]),
  );
  return take.wiring.ribbons.flatMap(({ id, ribbon }): SeatsOf[] => {
    const there = new Set((other.wiring.ribbonById.get(id)?.ribbon.seats ?? []).map(seatText));
    const isKept = (seat: Seat): boolean => {
      const { on } = seat;
      if (!lasting.get(id) || !there.has(seatText(seat))) return false;
      if ('ribbon' in on) return lasting.get(on.ribbon) === true;
      return steady.has('module' in on ? `module ${on.module}` : `board ${on.board}`);
    };
    const seats = ribbon.seats.filter((seat) => !isKept(seat));
    return seats.length > 0 ? [{ ribbon: id, seats }] : [];
  });
}

/** "connector 2 (stripe down) on Cobble 3" */
function seatWords(
  take: WholeTake,
  { ribbon: id, seats }: SeatsOf,
  link: 'off' | 'on',
  tellsStripe: boolean,
): string {
  const ribbon = take.wiring.ribbonById.get(id) as LaidRibbon;
  const each = seats.map((seat) => {
    const joint =
      ribbon.uses[seat.connector]?.find((one) => one.ribbon === ribbon && one.connector === seat.connector) ??
      ribbon.uses[seat.connector]?.[0];
    const stripe = tellsStripe && ribbon.facts.flat ? ` (stripe ${stripeAt(ribbon, seat.connector)})` : '';
    const target = joint ? (tellsStripe ? targetInFull : targetName)(joint.on) : 'its place';
    return `connector ${seat.connector + 1}${stripe} ${link} ${target}`;
  });
  return `${ribbon.name}: ${list(each, Number.POSITIVE_INFINITY)}.`;
}

/** What the other take needs of each kind beyond what is owned or in the case already. */
function toHave(from: WholeTake, to: WholeTake): ChangeStep[] {
  const { kit } = to.kit;
  const countIn = (things: readonly { readonly kind: string }[], id: string): number =>
    things.filter(({ kind }) => kind === id).length;
  const wanted = (sort: 'modules' | 'ribbons') =>
    kit[sort].flatMap(({ id, name, owned }): ChangeStep[] => {
      const more = countIn(to.take[sort], id) - Math.max(owned ?? 0, countIn(from.take[sort], id));
      return more > 0
        ? [{ key: `have/${sort}/${id}`, stage: 'have', words: `${figure(more)} × ${name} to buy or make.` }]
        : [];
    });
  return [...wanted('modules'), ...wanted('ribbons')];
}

/** Ribbons that do not lie in the case yet, and those that become another kind. */
function toMake(from: WholeTake, to: WholeTake): ChangeStep[] {
  return to.wiring.ribbons.flatMap(({ id, name, ribbon, facts: { kind } }): ChangeStep[] => {
    const before = from.wiring.ribbonById.get(id);
    if (before?.ribbon.kind === ribbon.kind) return [];
    const step = (words: string): ChangeStep[] => [{ key: `make/${id}`, stage: 'make', words }];
    if (before) return step(`${name}: a ${kind.name} now, not a ${before.facts.kind.name}.`);
    const isOwned = (ownedLeft(to.take, kind) ?? -1) >= 0;
    return step(`${name}: a ${kind.name} more${isOwned ? ', from the stock' : ''}.`);
  });
}

/** Whether a difference of modules is one of place or kind, and not of a name. */
function isWork(from: WholeTake, to: WholeTake, { sort, change, id }: Difference): boolean {
  if (sort !== 'module' || change !== 'changed') return true;
  const [own, other] = [from.places.moduleById.get(id)?.module, to.places.moduleById.get(id)?.module];
  return own?.row !== other?.row || own?.atHp !== other?.atHp || own?.kind !== other?.kind;
}

function fromDifferences(from: WholeTake, to: WholeTake): ChangeStep[] {
  const differences = compareTakes(
    { kit: from.kit.kit, take: from.take },
    { kit: to.kit.kit, take: to.take },
  ).filter((difference) => isWork(from, to, difference));
  return differences.flatMap(({ sort, change, id, words }): ChangeStep[] => {
    const isOut = change === 'removed' && sort !== 'row' && sort !== 'supply';
    // What becomes of ribbons that stay is told connector by connector.
    if (sort === 'ribbon' && !isOut) return [];
    const stage = isOut ? 'out' : 'move';
    return [{ key: `${stage}/${sort}/${id}`, stage, words }];
  });
}

/** Harnesses that are not in the case as they are to be, or of which something was unplugged. */
function toTest(from: WholeTake, to: WholeTake, touched: ReadonlySet<string>): ChangeStep[] {
  const known = new Set(harnessStates(from).map(({ harness }) => fingerprintOf(harness)));
  return harnessStates(to).flatMap(({ harness, ribbons, name }): ChangeStep[] =>
    known.has(fingerprintOf(harness)) && !ribbons.some((id) => touched.has(id))
      ? []
      : [
          {
            key: `test/${ribbons.join('+')}`,
            stage: 'test',
            words: `${name}: stripe, continuity, no short.`,
          },
        ],
  );
}

const OFF: ChangeStep = {
  key: 'off',
  stage: 'off',
  words: 'Switch off and unplug, mains and adapter; wait 30 s. Switched off is not unplugged.',
};

const ON: ChangeStep = {
  key: 'on',
  stage: 'on',
  words:
    'Look at stripe and seating of every connector that was touched. Then one island at a time: 5 s, watch, smell, off.',
};

/** What to do in the case to get from one take to another, in a safe order; no step where nothing differs. */
export function changeSheet(from: WholeTake, to: WholeTake): ChangeSheet {
  const steady = steadyIn(from, to);
  const unplug = seatsOnlyIn(from, to, steady);
  const seat = seatsOnlyIn(to, from, steady);
  const touched = new Set([...unplug, ...seat].map(({ ribbon }) => ribbon));
  const work: ChangeStep[] = [
    ...unplug.map(
      (seats): ChangeStep => ({
        key: `unplug/${seats.ribbon}`,
        stage: 'unplug',
        words: seatWords(from, seats, 'off', false),
      }),
    ),
    ...fromDifferences(from, to),
    ...toMake(from, to),
    ...seat.map(
      (seats): ChangeStep => ({
        key: `seat/${seats.ribbon}`,
        stage: 'seat',
        words: seatWords(to, seats, 'on', true),
      }),
    ),
    ...toTest(from, to, touched),
  ];
  const steps = work.length > 0 ? [...toHave(from, to), OFF, ...work, ON] : [];
  const inOrder = STAGES.flatMap((stage) => steps.filter((step) => step.stage === stage));
  return { from: from.take.name, to: to.take.name, unplug, seat, steps: inOrder };
}

/** Steps by stage, in order; stages without steps are left out. */
export const stagesOf = ({
  steps,
}: ChangeSheet): readonly { readonly stage: Stage; readonly steps: readonly ChangeStep[] }[] =>
  STAGES.flatMap((stage) => {
    const own = steps.filter((step) => step.stage === stage);
    return own.length > 0 ? [{ stage, steps: own }] : [];
  });
