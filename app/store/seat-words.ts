import {
  crossesJoint,
  type DerivedTake,
  distanceMm,
  type Gap,
  gapOf,
  type Joint,
  type JointTarget,
  type LaidRibbon,
  orderOf,
} from '../../src/index.ts';
import { ownSeat, plugIn } from './aim.ts';

const MINUS = '−';

const tenths = (value: number): string => String(Number(value.toFixed(1))).replace('-', MINUS);

const mm = (value: number): string => `${tenths(value)} mm`;

/** "Cobble 3, shore"; "connector 2 of T1". */
export function placeWords(on: JointTarget): string {
  if (on.type === 'connector') return `connector ${on.connector + 1} of ${on.ribbon.name}`;
  const { owner, name } = on.header;
  return `${owner.name}, ${name}`;
}

/** How a seat stands, and whether it stands well. */
export interface SeatState {
  readonly words: string;
  readonly isGood: boolean;
}

const bad = (words: string): SeatState => ({ words, isGood: false });

function flawOf({ flaws, doubled, looksAway }: Joint): string | undefined {
  if (flaws.cannotMate) return 'does not mate';
  if (flaws.excessWays) return 'too many contacts';
  if (flaws.differingPins.length > 0) return 'other lines';
  if (doubled) return 'already taken';
  return looksAway ? 'opens away' : undefined;
}

/** Whether a connector lands, or by how much it misses. */
export function seatState(take: DerivedTake, ribbon: LaidRibbon, connector: number): SeatState {
  const joint = ribbon.uses[connector]?.[0];
  if (!joint) return bad('free');
  const flaw = flawOf(joint);
  if (flaw) return bad(flaw);
  const stray = take.lies.get(ribbon)?.strays.find(({ seat }) => seat.connector === connector);
  if (!stray) return { words: 'lands', isGood: true };
  if (stray.otherRow) return bad('other row');
  const [dx, dy] = [Math.abs(stray.dxMm), Math.abs(stray.dyMm)];
  return bad(dx >= dy ? `${mm(dx)} off` : `${mm(dy)} off in height`);
}

/** What a connector sits on, or what sits in it. */
function seatWords(ribbon: LaidRibbon, connector: number): string | undefined {
  const own = ownSeat({ ribbon, connector });
  if (own) return placeWords(own);
  const plug = plugIn({ ribbon, connector });
  return plug && `carries connector ${plug.connector + 1} of ${plug.ribbon.name}`;
}

/** A connector in one breath: "connector 3, Cobble 2, shore, lands". */
export function connectorWords(take: DerivedTake, ribbon: LaidRibbon, connector: number): string {
  const on = seatWords(ribbon, connector);
  return [`connector ${connector + 1}`, ...(on ? [on] : []), seatState(take, ribbon, connector).words].join(
    ', ',
  );
}

/** What lies between two seats of a ribbon. */
export interface GapWords extends SeatState {
  /** Order along the ribbon of the connector at its far end. */
  readonly to: number;
}

function gapState({ pair, neededMm, missingMm, arch, flaws }: Gap): SeatState {
  const isGood = flaws.length === 0;
  const short = missingMm === undefined ? '' : `, ${mm(missingMm)} too short`;
  if (pair.lay === 'stiff') return { words: isGood ? '' : 'no room side by side', isGood };
  if (pair.lay === 'loose')
    return { words: `needs ${mm(neededMm)}${short || ` of ${mm(pair.lengthMm)}`}`, isGood };
  if (flaws.includes('out-of-line')) return bad('not in one line');
  const over = `over ${tenths(distanceMm(pair))}`;
  if (arch?.kind === 'legs-touch') return bad(`${over}, folds onto itself`);
  const high = arch ? `, ${tenths(arch.heightMm)} high, radius ${tenths(arch.radiusMm)}` : '';
  return { words: `${over}${short}${high}`, isGood };
}

/** What can be said of the ribbon from a connector to the next seat; by order along it. */
export function gapsOf(take: DerivedTake, ribbon: LaidRibbon): ReadonlyMap<number, GapWords> {
  const gaps = new Map<number, GapWords>();
  if (take.crossed.has(ribbon)) return gaps;
  for (const pair of take.neighbours) {
    if (pair.a.ribbon !== ribbon || pair.b.ribbon !== ribbon || crossesJoint(pair)) continue;
    const orders = [orderOf(ribbon, pair.a.connector), orderOf(ribbon, pair.b.connector)] as const;
    const state = gapState(gapOf(pair, take));
    gaps.set(Math.min(...orders), { ...state, to: Math.max(...orders) });
  }
  return gaps;
}
