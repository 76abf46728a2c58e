import { exceeds } from '../geometry/exceeds.ts';
import type { PlacedBoard, PlacedHeader, PlacedModule, Places } from '../geometry/place.ts';
import { typeOf } from '../layout/defaults.ts';
import { type KitIndex, resolve } from '../layout/kit-index.ts';
import type { Ribbon, SeatedOn } from '../layout/layout.ts';
import type { HeaderJoint } from './harness.ts';
import {
  connectorAt,
  connectorOf,
  faceAt,
  isSound,
  isWrongAxis,
  type Joint,
  type JointTarget,
  jointFlaws,
  type LaidRibbon,
} from './laid-ribbon.ts';

/** A header or connector that holds more than it can, with its seats in document order. */
export type DoubleUse =
  | { readonly type: 'header'; readonly header: PlacedHeader; readonly joints: readonly Joint[] }
  | {
      readonly type: 'connector';
      readonly ribbon: LaidRibbon;
      readonly connector: number;
      readonly joints: readonly Joint[];
    };

/** Ribbons and every seat drawn, with what keeps a seat from conducting. */
export interface Joints {
  /** In document order. */
  readonly ribbons: readonly LaidRibbon[];
  readonly ribbonById: ReadonlyMap<string, LaidRibbon>;
  /** In document order within each part of a take. */
  readonly joints: readonly Joint[];
  readonly seatedOn: ReadonlyMap<PlacedHeader, readonly Joint[]>;
  readonly doubleUses: readonly DoubleUse[];
}

/** A ribbon of the document, and its index there. */
export interface DrawnRibbon {
  readonly ribbon: Ribbon;
  readonly index: number;
}

function layRibbons(kit: KitIndex, drawn: readonly DrawnRibbon[]): LaidRibbon[] {
  return drawn.map(({ ribbon, index }) => {
    const facts = resolve(kit.ribbons, ribbon.kind);
    return {
      type: 'ribbon',
      id: ribbon.id,
      index,
      ribbon,
      facts,
      name: ribbon.label || ribbon.id,
      uses: facts.connectors.map((): Joint[] => []),
      fromOtherEnd: false,
    };
  });
}

const headerOf = (owner: PlacedModule | PlacedBoard, id: string): PlacedHeader => {
  const header = owner.headers.find((candidate) => candidate.id === id);
  if (!header) throw new Error(`nothing is called "${id}"`);
  return header;
};

function targetOf(on: SeatedOn, places: Places, ribbons: ReadonlyMap<string, LaidRibbon>): JointTarget {
  if ('module' in on)
    return { type: 'header', header: headerOf(resolve(places.moduleById, on.module), on.header) };
  if ('board' in on)
    return { type: 'header', header: headerOf(resolve(places.boardById, on.board), on.header) };
  return { type: 'connector', ribbon: resolve(ribbons, on.ribbon), connector: on.connector };
}

/** A socket seated on a plug is read as the plug seated in the socket. */
function fromThePlug(
  ribbon: LaidRibbon,
  connector: number,
  on: JointTarget,
): [LaidRibbon, number, JointTarget] {
  if (on.type === 'connector') {
    const socketOnPlug =
      typeOf(connectorOf(ribbon, connector)) === 'socket' &&
      typeOf(connectorOf(on.ribbon, on.connector)) === 'plug';
    if (socketOnPlug) return [on.ribbon, on.connector, { type: 'connector', ribbon, connector }];
  }
  return [ribbon, connector, on];
}

/** One joint drawn from both of its ribbons is one joint. */
const isStated = (uses: readonly Joint[], on: JointTarget): boolean =>
  on.type === 'connector' &&
  uses.some(
    (joint) =>
      joint.on.type === 'connector' && joint.on.ribbon === on.ribbon && joint.on.connector === on.connector,
  );

function drawJoints(kit: KitIndex, places: Places, ribbons: readonly LaidRibbon[]) {
  const ribbonById = new Map(ribbons.map((ribbon) => [ribbon.id, ribbon]));
  const seatedOn = new Map<PlacedHeader, Joint[]>();
  const joints: Joint[] = [];
  for (const laid of ribbons) {
    for (const seat of laid.ribbon.seats) {
      const [ribbon, connector, on] = fromThePlug(
        laid,
        seat.connector,
        targetOf(seat.on, places, ribbonById),
      );
      const own = ribbon.uses[connector] as Joint[];
      if (isStated(own, on)) continue;
      const flaws = jointFlaws(ribbon, connector, on, kit.voltages);
      const joint: Joint = {
        ribbon,
        connector,
        on,
        order: joints.length,
        flaws,
        doubled: false,
        looksAway: false,
        conducts: false,
      };
      joints.push(joint);
      own.push(joint);
      if (on.type === 'connector') {
        const other = on.ribbon.uses[on.connector] as Joint[];
        if (other !== own) other.push(joint);
      } else {
        const already = seatedOn.get(on.header);
        if (already) already.push(joint);
        else seatedOn.set(on.header, [joint]);
      }
    }
  }
  return { ribbonById, seatedOn, joints };
}

/** Of a doubly used header or connector the first seat in document order is the one that conducts. */
function findDoubleUses(
  ribbons: readonly LaidRibbon[],
  seatedOn: ReadonlyMap<PlacedHeader, readonly Joint[]>,
): DoubleUse[] {
  const found: DoubleUse[] = [];
  for (const [header, joints] of seatedOn)
    if (joints.length > 1) found.push({ type: 'header', header, joints });
  for (const ribbon of ribbons) {
    ribbon.uses.forEach((joints, connector) => {
      if (joints.length > 1) found.push({ type: 'connector', ribbon, connector, joints });
    });
  }
  for (const { joints } of found) for (const joint of joints.slice(1)) joint.doubled = true;
  return found;
}

/** Whether seats, first along the ribbon first, follow the connectors' order: stripe down, rear view left to right. */
function followsOrder(ribbon: LaidRibbon, seats: readonly PlacedHeader[]): boolean {
  const leftwards = (ribbon.ribbon.stripe ?? 'down') === 'down';
  for (let i = 1; i < seats.length; i++) {
    const step = (seats[i] as PlacedHeader).xMm - (seats[i - 1] as PlacedHeader).xMm;
    if (exceeds(leftwards ? step : -step, 0)) return false;
  }
  return true;
}

/** Headers under the sound seats of a flat ribbon, first along it first; a lying header has no place along it. */
function headersAlong(ribbon: LaidRibbon): PlacedHeader[] {
  const headers: PlacedHeader[] = [];
  for (let order = 0; order < ribbon.uses.length; order++) {
    for (const joint of ribbon.uses[connectorAt(ribbon, order)] as Joint[]) {
      if (joint.on.type === 'header' && isSound(joint) && !isWrongAxis(joint)) headers.push(joint.on.header);
    }
  }
  return headers;
}

/** Reads a ribbon that is alike from both ends from the end from which its seats run in order. */
function chooseEnd(ribbon: LaidRibbon): void {
  if (!ribbon.facts.flat || !ribbon.facts.symmetric) return;
  const headers = headersAlong(ribbon);
  if (headers.length < 2 || followsOrder(ribbon, headers)) return;
  if (followsOrder(ribbon, headers.reverse())) ribbon.fromOtherEnd = true;
}

/** Whether the conducting seats of a flat ribbon, first along it first, are out of the connectors' order. */
export const isCrossed = (ribbon: LaidRibbon, along: readonly HeaderJoint[]): boolean =>
  ribbon.facts.flat &&
  along.length > 1 &&
  !followsOrder(
    ribbon,
    along.map(({ on }) => on.header),
  );

/** A socket on a module opens to the panel; at a joint plug and socket open to opposite sides. Flat only. */
function looksAway({ ribbon, connector, on }: Joint): boolean {
  if (!ribbon.facts.flat) return false;
  const face = faceAt(ribbon, connector);
  if (on.type === 'connector') return on.ribbon.facts.flat && face === faceAt(on.ribbon, on.connector);
  return (
    on.header.owner.type === 'module' &&
    typeOf(connectorOf(ribbon, connector)) === 'socket' &&
    face === 'rear'
  );
}

/**
 * Reads ribbons and their seats. Linear in the seats drawn.
 * @param drawn - in document order, with all that sit on one another or on one header
 */
export function joinRibbons(kit: KitIndex, drawn: readonly DrawnRibbon[], places: Places): Joints {
  const ribbons = layRibbons(kit, drawn);
  const { ribbonById, seatedOn, joints } = drawJoints(kit, places, ribbons);
  const doubleUses = findDoubleUses(ribbons, seatedOn);
  for (const ribbon of ribbons) chooseEnd(ribbon);
  for (const joint of joints) {
    joint.looksAway = looksAway(joint);
    joint.conducts = isSound(joint);
  }
  return { ribbons, ribbonById, joints, seatedOn, doubleUses };
}
