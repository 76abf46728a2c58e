import type { PlacedHeader } from '../geometry/place.ts';
import { faceOf, GND, typeOf } from '../layout/defaults.ts';
import type { RibbonFacts } from '../layout/kit-index.ts';
import type { Connector, Face, Ribbon, StripeEdge } from '../layout/layout.ts';
import { remember } from '../layout/remember.ts';

/**
 * A ribbon of a take as every rule reads it. Connectors keep the numbers that they have in the document;
 * `order` says where each comes along the ribbon, which differs only for a ribbon that reads the same from
 * both ends and was numbered from the other one.
 */
export interface LaidRibbon {
  readonly type: 'ribbon';
  readonly id: string;
  /** In the document. */
  readonly index: number;
  readonly ribbon: Ribbon;
  readonly facts: RibbonFacts;
  readonly name: string;
  /** Joints that conduct or not, by connector: those that this connector makes, and those made to it. */
  readonly uses: readonly Joint[][];
  fromOtherEnd: boolean;
}

/** Why a drawn seat does not join anything. */
export interface JointFlaws {
  /** It has more contacts than what it sits on has pins. */
  readonly excessWays: boolean;
  /** The halves cannot mate: plug on header, socket on socket, plug on plug. */
  readonly cannotMate: boolean;
  /** Pins (from 0) on which the lines differ. */
  readonly differingPins: readonly number[];
}

/**
 * One drawn seat: a connector and what it sits on. A socket seated on another ribbon's plug is the same joint
 * as the plug seated in the socket, and stands here as the latter.
 */
export interface Joint {
  readonly ribbon: LaidRibbon;
  readonly connector: number;
  readonly on: JointTarget;
  /** Place in the document among all seats of its part of the take. */
  readonly order: number;
  readonly flaws: JointFlaws;
  /** Another seat came first to what it sits on, or to its own connector. */
  doubled: boolean;
  /** It opens to the side on which what it sits on is not. */
  looksAway: boolean;
  /** None of the above keeps it from joining anything. */
  conducts: boolean;
}

export type JointTarget =
  | { readonly type: 'header'; readonly header: PlacedHeader }
  | { readonly type: 'connector'; readonly ribbon: LaidRibbon; readonly connector: number };

const NO_PINS: readonly number[] = [];

const NO_FLAWS: JointFlaws = { excessWays: false, cannotMate: false, differingPins: NO_PINS };

/** Whether a seat conducts as far as is known of it. */
export const isSound = ({ doubled, looksAway, flaws }: Joint): boolean =>
  !doubled && !looksAway && flaws === NO_FLAWS;

/** Connectors with a conducting seat, a socket that carries a plug included. */
export const connectorsInUse = remember(({ uses }: LaidRibbon): readonly number[] =>
  uses.flatMap((joints, connector) => (joints.some(({ conducts }) => conducts) ? [connector] : [])),
);

/** Where a connector comes along the ribbon, from 0. */
export const orderOf = (ribbon: LaidRibbon, connector: number): number =>
  ribbon.fromOtherEnd ? ribbon.facts.connectors.length - 1 - connector : connector;

/** The document's number of the connector at a place along the ribbon; the inverse of `orderOf`. */
export const connectorAt = (ribbon: LaidRibbon, order: number): number => orderOf(ribbon, order);

export const connectorOf = (ribbon: LaidRibbon, connector: number): Connector =>
  ribbon.facts.connectors[connector] as Connector;

export const waysOf = (ribbon: LaidRibbon, connector: number): number =>
  ribbon.facts.ways[connector] as number;

/** Place along the ribbon, mm from its first connector. */
export const atMmOf = (ribbon: LaidRibbon, connector: number): number =>
  connectorOf(ribbon, orderOf(ribbon, connector)).atMm;

/** Whether an odd number of half-twists lies between connector 0 and this one. */
function isTurnedOver(ribbon: LaidRibbon, connector: number): boolean {
  const { twists } = ribbon.ribbon;
  if (!twists) return false;
  let halfTwists = 0;
  for (let i = Math.min(orderOf(ribbon, connector), twists.length) - 1; i >= 0; i--)
    halfTwists += twists[i] as number;
  return halfTwists % 2 === 1;
}

/** The edge on which the stripe lies at a connector of a flat ribbon. */
export function stripeAt(ribbon: LaidRibbon, connector: number): StripeEdge {
  const down = (ribbon.ribbon.stripe ?? 'down') === 'down';
  return down !== isTurnedOver(ribbon, connector) ? 'down' : 'up';
}

/** Where a connector of a flat ribbon opens to. */
export function faceAt(ribbon: LaidRibbon, connector: number): Face {
  const panel = faceOf(connectorOf(ribbon, connector)) === 'panel';
  return panel !== isTurnedOver(ribbon, connector) ? 'panel' : 'rear';
}

/** Lines of a ribbon by conductor. */
export const linesOf = (ribbon: LaidRibbon): readonly string[] => ribbon.facts.bus.bus.pinout;

/** Lines of what a connector sits on, by pin; as many as it has contacts. */
export function linesUnder(on: JointTarget): readonly string[] {
  if (on.type === 'header') return on.header.bus.bus.pinout;
  return linesOf(on.ribbon).slice(0, waysOf(on.ribbon, on.connector));
}

const pinsUnder = (on: JointTarget): number =>
  on.type === 'header' ? on.header.bus.pins : waysOf(on.ribbon, on.connector);

/** Two lines on one contact: an open pin takes any signal, never a voltage or GND. */
function differ(a: string, b: string, isSupply: (line: string) => boolean): boolean {
  if (a === b) return false;
  if (a === '') return isSupply(b);
  if (b === '') return isSupply(a);
  return true;
}

function differingPins(
  ribbon: LaidRibbon,
  connector: number,
  on: JointTarget,
  isSupply: (line: string) => boolean,
) {
  const bus = on.type === 'header' ? on.header.bus : on.ribbon.facts.bus;
  if (bus === ribbon.facts.bus) return NO_PINS;
  const mine = linesOf(ribbon);
  const theirs = linesUnder(on);
  const pins = Math.min(waysOf(ribbon, connector), theirs.length);
  let differing: number[] | undefined;
  for (let pin = 0; pin < pins; pin++) {
    if (differ(mine[pin] as string, theirs[pin] as string, isSupply)) {
      differing ??= [];
      differing.push(pin);
    }
  }
  return differing ?? NO_PINS;
}

export function jointFlaws(
  ribbon: LaidRibbon,
  connector: number,
  on: JointTarget,
  voltages: ReadonlyMap<string, unknown>,
): JointFlaws {
  const type = typeOf(connectorOf(ribbon, connector));
  const under = on.type === 'header' ? 'header' : typeOf(connectorOf(on.ribbon, on.connector));
  const excessWays = waysOf(ribbon, connector) > pinsUnder(on);
  const cannotMate = type === 'socket' ? under !== 'header' : under !== 'socket';
  const differing = differingPins(ribbon, connector, on, (line) => line === GND || voltages.has(line));
  const isFlawed = excessWays || cannotMate || differing.length > 0;
  return isFlawed ? { excessWays, cannotMate, differingPins: differing } : NO_FLAWS;
}

/** A flat ribbon leaves a horizontal header up or down and not along the row; such a seat has no geometry. */
export const isWrongAxis = (joint: Joint): boolean =>
  joint.ribbon.facts.flat && joint.on.type === 'header' && joint.on.header.axis === 'horizontal';
