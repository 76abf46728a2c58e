import { DEFAULT_AWG } from '../electrical/network.ts';
import { exceeds } from '../geometry/exceeds.ts';
import { faceOf, typeOf } from '../layout/defaults.ts';
import type { RibbonFacts } from '../layout/kit-index.ts';
import type { Face, Key, Limits } from '../layout/layout.ts';
import type { LaidRibbon } from '../wiring/laid-ribbon.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import { type Stocked, stockedOf } from './stocked.ts';

/** How far a trimmed end may stand out of its connector's body, mm (NASA workmanship on ribbon cable). */
export const OVERHANG_MM = 0.8;

/** What a fold over the connector's back and under its clip takes, mm (common practice, no source). */
const FOLD_MM = 14;

/** What is cut off when the last connector is on, mm (common practice, no source). */
const TRIM_MM = 5;

/** Lengths are cut in steps of so many mm, upwards (common practice, no source). */
const STEP_MM = 5;

/** A piece may be so much longer than it is called, and never shorter, mm (common practice, no source). */
export const CUT_TOLERANCE_MM = 10;

/** A connector to be pressed on. */
export interface CutConnector {
  /** As people count. */
  readonly number: number;
  /** Of its centre, from the centre of the first connector, mm. */
  readonly atMm: number;
  /** The same from the end that was cut square, mm. */
  readonly fromEndMm: number;
  readonly ways: number;
  readonly type: 'socket' | 'plug';
  readonly face: Face;
  readonly key: Key;
  /** The ribbon is folded back over it and held by a clip. */
  readonly isFolded: boolean;
}

/** How a kind of ribbon is made. */
export interface Cut {
  readonly facts: RibbonFacts;
  readonly conductors: number;
  readonly awg: number;
  /** Nobody says which gauge it has: what is reckoned with. */
  readonly isAwgAssumed: boolean;
  readonly cutMm: number;
  /** From the first connector's centre to the end that was cut square, mm. */
  readonly endMm: number;
  /** From the first connector's centre to the last one's, mm. */
  readonly spanMm: number;
  /** How far each centre may lie from its place, measured from the first one, mm either way. */
  readonly placeToleranceMm: number;
  readonly connectors: readonly CutConnector[];
}

/** One ribbon of a take. */
export interface Piece {
  readonly ribbon: LaidRibbon;
  readonly stocked: Stocked;
  readonly cut: Cut;
}

/** Up to the next step; what lies on it but for the last bits of a sum stays. */
function roundedUp(lengthMm: number): number {
  const steps = Math.floor(lengthMm / STEP_MM);
  return (exceeds(lengthMm, steps * STEP_MM) ? steps + 1 : steps) * STEP_MM;
}

/**
 * How a kind of ribbon is made. A loose one is folded back over the connectors at its ends, which takes the pull
 * off the contacts; a flat one ends flush with them, since a fold would turn its ends over.
 */
export function cutOf(facts: RibbonFacts, limits: Limits): Cut {
  const { connectors, ways, flat, conductors, kind } = facts;
  const last = connectors.length - 1;
  const spanMm = connectors[last]?.atMm ?? 0;
  const endMm = flat ? limits.connectorBodyMm / 2 : FOLD_MM;
  return {
    facts,
    conductors,
    awg: kind.awg ?? DEFAULT_AWG,
    isAwgAssumed: kind.awg === undefined,
    cutMm: roundedUp(spanMm + 2 * endMm + TRIM_MM),
    endMm,
    spanMm,
    placeToleranceMm: limits.seatToleranceMm / 2,
    connectors: connectors.map((connector, i) => ({
      number: i + 1,
      atMm: connector.atMm,
      fromEndMm: endMm + connector.atMm,
      ways: ways[i] as number,
      type: typeOf(connector),
      face: faceOf(connector),
      key: connector.key ?? 'none',
      isFolded: !flat && (i === 0 || i === last),
    })),
  };
}

/** Every ribbon of a take and how it is made, as the document lists them. */
export function piecesOf(take: WholeTake): readonly Piece[] {
  const cuts = new Map<RibbonFacts, Cut>();
  const cutFor = (facts: RibbonFacts): Cut => {
    const known = cuts.get(facts) ?? cutOf(facts, take.limits);
    cuts.set(facts, known);
    return known;
  };
  return [...stockedOf(take)].map(([ribbon, stocked]) => ({ ribbon, stocked, cut: cutFor(ribbon.facts) }));
}

/** What must be made: all that is not owned; of what nobody counts it is taken that there is none. */
export const toMake = (pieces: readonly Piece[]): readonly Piece[] =>
  pieces.filter(({ stocked }) => stocked !== 'owned');
