import type { PlacedHeader } from '../geometry/place.ts';
import { typeOf } from '../layout/defaults.ts';
import type { KitIndex, RibbonFacts } from '../layout/kit-index.ts';
import type { Ribbon, Seat, StripeEdge } from '../layout/layout.ts';
import { type Berth, isTaken, nameOf } from './berth.ts';
import type { DerivedTake } from './derived-take.ts';
import type { Gap } from './gap.ts';
import type { HeaderJoint } from './harness.ts';
import { faceAt, type Joint, type JointTarget, jointFlaws, type LaidRibbon } from './laid-ribbon.ts';

/** Where a connector of a ribbon that is being laid lies beside a header, measured from the connector. */
export interface Miss {
  readonly header: PlacedHeader;
  readonly dxMm: number;
  readonly dyMm: number;
  /** Whole pin distances at which it can be plugged displaced: rows along the rail, pairs upward. */
  readonly displaced?: { readonly rows: number; readonly pairs: number };
  /** The ribbon is so much too short, mm. */
  readonly missingMm?: number;
}

/** What becomes of one connector of a ribbon that is being laid. */
export interface Landing {
  readonly connector: number;
  /** Place along the row, seen from the front, and height, mm; of a loose ribbon only where it sits. */
  readonly xMm: number;
  readonly yMm: number;
  /** What it sits on when the ribbon is let go. */
  readonly on?: JointTarget;
  /** The header that it should sit on and does not land on. */
  readonly miss?: Miss;
  /** It sits on its pins, and the ribbon towards the start lies as it should. */
  readonly lands: boolean;
}

/** A ribbon as it would be laid. */
export interface Laying {
  readonly facts: RibbonFacts;
  readonly seats: readonly Seat[];
  /** Of a flat ribbon, at connector 0. */
  readonly stripe?: StripeEdge;
  readonly start: Berth;
  /** By connector. */
  readonly landings: readonly Landing[];
  /** Ribbon between each two seats, through the socket that it starts on too. */
  readonly gaps: readonly Gap[];
}

/** Why a ribbon cannot start, or end, at a place. */
export type WhyNot =
  /** Something sits there. */
  | 'taken'
  /** The lines differ. */
  | 'other-bus'
  /** It lies on its side, where no flat ribbon can go along the row. */
  | 'lying'
  /** Flat ribbons join modules. */
  | 'board'
  /** None of its connectors mates. */
  | 'no-mate';

/** Whether a connector can sit on something: halves mate, contacts find pins, lines agree, and it faces the right way. */
function mates(kit: KitIndex, ribbon: LaidRibbon, connector: number, on: JointTarget): boolean {
  const { facts } = ribbon;
  const { excessWays, cannotMate, differingPins } = jointFlaws(ribbon, connector, on, kit.voltages);
  if (excessWays || cannotMate || differingPins.length > 0) return false;
  if (!facts.flat) return true;
  const face = faceAt(ribbon, connector);
  if (on.type === 'connector') return !on.ribbon.facts.flat || face !== faceAt(on.ribbon, on.connector);
  return on.header.owner.type === 'board' || face === 'panel';
}

/** Connectors that can sit on something, in their order. */
export function connectorsFor(take: DerivedTake, facts: RibbonFacts, on: JointTarget): number[] {
  const ribbon = asLaid(take, facts, []);
  return facts.connectors.flatMap((_, i) => (mates(take.kit, ribbon, i, on) ? [i] : []));
}

/** Why no connector of a ribbon can sit at a place; nothing where one can. */
export function whyNotOn(take: DerivedTake, facts: RibbonFacts, on: JointTarget): WhyNot | undefined {
  if (isTaken(take, on)) return 'taken';
  if (on.type === 'header' && facts.flat) {
    if (on.header.bus !== facts.bus) return 'other-bus';
    if (on.header.axis === 'horizontal') return 'lying';
    if (on.header.owner.type === 'board') return 'board';
  }
  if (connectorsFor(take, facts, on).length > 0) return undefined;
  const wanted = on.type === 'header' ? 'socket' : 'plug';
  return facts.connectors.some((connector) => typeOf(connector) === wanted) ? 'other-bus' : 'no-mate';
}

/** A connector of the new ribbon, and what it is put on. */
export interface Placing {
  readonly connector: number;
  readonly on: JointTarget;
}

export const seatOf = ({ connector, on }: Placing): Seat => ({ connector, on: nameOf(on) });

/** The new ribbon as every rule would read it once it is laid. Nothing of the take is touched. */
export function asLaid(
  take: DerivedTake,
  facts: RibbonFacts,
  placings: readonly Placing[],
  stripe?: StripeEdge,
): LaidRibbon {
  const index = take.wiring.ribbons.length;
  const ribbon: Ribbon = {
    id: '',
    kind: facts.kind.id,
    ...(stripe && { stripe }),
    seats: placings.map(seatOf),
  };
  const uses = facts.connectors.map((): Joint[] => []);
  const laid: LaidRibbon = {
    type: 'ribbon',
    id: '',
    index,
    ribbon,
    facts,
    name: '',
    uses,
    fromOtherEnd: false,
  };
  placings.forEach(({ connector, on }, i) => {
    uses[connector]?.push({
      ribbon: laid,
      connector,
      on,
      order: take.wiring.joints.length + i,
      flaws: jointFlaws(laid, connector, on, take.kit.voltages),
      doubled: false,
      looksAway: false,
      conducts: true,
    });
  });
  return laid;
}

/** The seat of a connector of a new ribbon on a header. */
export function headerSeatAt(laid: LaidRibbon, connector: number): HeaderJoint | undefined {
  return laid.uses[connector]?.find((joint): joint is HeaderJoint => joint.on.type === 'header');
}
