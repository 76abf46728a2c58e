import type { Note } from '../checks/check.ts';
import { inventoryOf, shoppingFor } from '../checks/inventory.ts';
import { estimate } from '../checks/load-words.ts';
import { type NoteChanges, noteChanges } from '../checks/note-changes.ts';
import { farthestApart } from '../checks/rules/ground-shift.ts';
import { checkTake } from '../checks/run.ts';
import { figure, lineName } from '../checks/words.ts';
import { freeSpans } from '../drawing/free-spans.ts';
import { worstLossMv } from '../electrical/best-feed.ts';
import { supplyBudgets } from '../electrical/budget.ts';
import { powerOf } from '../electrical/power.ts';
import type { Kit, Take } from '../layout/layout.ts';
import { deriveTake } from '../wiring/derive.ts';
import { connectorsInUse } from '../wiring/laid-ribbon.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import { compareTakes, type Difference } from './compare.ts';

/** One figure of two takes, in words; `better` says which of them has the better one, where one can say. */
export interface FigureLine {
  readonly what: string;
  readonly mine: string;
  readonly theirs: string;
  readonly better?: 'mine' | 'theirs';
}

/** All that is to be told of two takes beside one another. */
export interface SideBySide {
  readonly figures: readonly FigureLine[];
  /** Modules that moved, came or went, then ribbons and leads, then the rest: what one finds in the other take. */
  readonly differences: readonly Difference[];
  /** Notes that the other take has and mine has not, and the other way round. */
  readonly notes: NoteChanges;
}

interface Figure {
  readonly what: string;
  readonly text: string;
  /** The lower the better; absent where neither is. */
  readonly cost?: number;
  /** Costs say something only where this is the same. */
  readonly among?: number;
}

const countOf = (notes: readonly Note[], level: Note['level']): number =>
  notes.filter((note) => note.level === level && !note.accepted).length;

function groundShiftMv(take: WholeTake): number {
  let worst = 0;
  for (const power of powerOf(take).parts)
    for (const group of power.part.linkGroups) {
      const pair = farthestApart(group, power);
      if (pair) worst = Math.max(worst, pair.high.mv - pair.low.mv);
    }
  return worst;
}

const freeHp = ({ places }: WholeTake): number =>
  places.rows.reduce((sum, row) => {
    const spans = freeSpans(
      row.row.widthHp,
      places.modules.filter((module) => module.row === row),
    );
    return sum + spans.reduce((hp, { fromHp, toHp }) => hp + toHp - fromHp, 0);
  }, 0);

const spareConnectors = ({ wiring }: WholeTake): number =>
  wiring.ribbons.reduce((sum, laid) => {
    const inUse = connectorsInUse(laid).length;
    return sum + (inUse > 0 ? laid.facts.connectors.length - inUse : 0);
  }, 0);

function figuresOf(take: WholeTake, notes: readonly Note[]): Figure[] {
  const plain = (what: string, value: number, text = String(value)): Figure => ({ what, text, cost: value });
  const { pieces, cost, unpriced } = shoppingFor(inventoryOf(take));
  const lossMv = worstLossMv(take, new Set(take.places.modules.map(({ id }) => id)));
  const shiftMv = groundShiftMv(take);
  const unlinked = notes.find(({ check }) => check === 'unlinked')?.subjects.length ?? 0;
  const dark = take.supplyNet.islands
    .filter(({ feeds }) => feeds.length === 0)
    .flatMap(({ modules }) => modules)
    .filter(({ facts }) => facts.draws.length > 0).length;
  const hp = freeHp(take);
  return [
    plain('Damage and faults', countOf(notes, 'damage') + countOf(notes, 'fault')),
    plain('Reminders', countOf(notes, 'reminder')),
    plain('Modules not linked', unlinked),
    plain('Modules without power', dark),
    plain('Ribbons and leads', take.take.ribbons.length),
    plain('Pieces to buy', pieces),
    plain('Cost of these', cost, `${figure(cost)}${unpriced > 0 ? `, ${unpriced} without a price` : ''}`),
    // Where fewer modules are fed less is lost, which is no merit.
    { ...plain('Worst voltage loss', lossMv, `${estimate(lossMv)} mV`), among: dark },
    { ...plain('Worst ground shift', shiftMv, `${estimate(shiftMv)} mV`), among: dark },
    ...[...supplyBudgets(powerOf(take))].map(({ supply, voltage, ma, allowedMa }) => ({
      what: `${supply.name}, ${lineName(voltage)}`,
      text: `${estimate(ma)} of ${figure(allowedMa)} mA`,
    })),
    { what: 'Free HP', text: figure(hp) },
    { what: 'Spare connectors', text: String(spareConnectors(take)) },
  ];
}

const SAME = 1e-6;

/** Figures in which a proposal is told beside the take that it is made of. */
const PRESSING = new Set([
  'Damage and faults',
  'Modules not linked',
  'Modules without power',
  'Ribbons and leads',
  'Pieces to buy',
  'Cost of these',
  'Worst voltage loss',
]);

/** What differs in what counts first; from mine to theirs. */
export const pressingFigures = ({ figures }: SideBySide): readonly FigureLine[] =>
  figures.filter(({ what, mine, theirs }) => PRESSING.has(what) && mine !== theirs);

function inLines(mine: readonly Figure[], theirs: readonly Figure[]): FigureLine[] {
  const names = [...new Set([...mine, ...theirs].map(({ what }) => what))];
  return names.map((what) => {
    const own = mine.find((each) => each.what === what);
    const other = theirs.find((each) => each.what === what);
    const isLike = own?.among === other?.among;
    const gain = isLike && own?.cost !== undefined && other?.cost !== undefined ? own.cost - other.cost : 0;
    const better = gain > SAME ? 'theirs' : gain < -SAME ? 'mine' : undefined;
    return { what, mine: own?.text ?? '–', theirs: other?.text ?? '–', ...(better && { better }) };
  });
}

/** Compares two takes, each with the kit that it is made of. */
export function sideBySide(
  mine: { readonly kit: Kit; readonly take: Take },
  theirs: { readonly kit: Kit; readonly take: Take },
): SideBySide {
  const own = deriveTake(mine.kit, mine.take);
  const other = deriveTake(theirs.kit, theirs.take);
  const before = checkTake(own);
  const after = checkTake(other);
  return {
    figures: inLines(figuresOf(own, before), figuresOf(other, after)),
    differences: compareTakes(mine, theirs),
    notes: noteChanges(before, after),
  };
}
