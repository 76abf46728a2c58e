import type { PlacedHeader } from '../geometry/place.ts';
import type { DerivedTake } from '../wiring/derived-take.ts';
import { atMmOf, connectorAt, type Joint, type LaidRibbon, orderOf } from '../wiring/laid-ribbon.ts';
import { directionOf, type Lie } from '../wiring/lie.ts';
import { headerPoint, type Point, rowOf, type Sheet, xOf, yOf } from './sheet.ts';

/** Where the free end of a loose ribbon hangs, mm from its last seat. */
const HANG_MM = { across: 9, down: 26 } as const;

/** Places of the connectors by order along the ribbon; holes where nothing tells. */
type Places = (Point | undefined)[];

/** The header that a connector is drawn on; of two the one where it conducts. */
export function headerUnder({ uses }: LaidRibbon, connector: number): PlacedHeader | undefined {
  let header: PlacedHeader | undefined;
  for (const { on, conducts } of uses[connector] ?? []) {
    if (on.type !== 'header') continue;
    if (conducts) return on.header;
    header ??= on.header;
  }
  return header;
}

export const pointBetween = (a: Point, b: Point, share: number): Point => ({
  x: a.x + (b.x - a.x) * share,
  y: a.y + (b.y - a.y) * share,
});

/** Where a ribbon that does not bend has a connector. */
function stiffPoint(sheet: Sheet, lie: Lie, connector: number): Point {
  const row = rowOf(sheet, lie);
  const alongMm = directionOf(lie.ribbon) * atMmOf(lie.ribbon, connector);
  return { x: xOf(row, lie.originMm + alongMm), y: yOf(row, lie.yMm) };
}

/**
 * Where a connector is joined to another ribbon's: a plug goes where the socket is, and so does a socket of a
 * ribbon that is seated on nothing else. Joints that lead round to where they came from lead nowhere.
 */
function jointPoint(
  sheet: Sheet,
  take: DerivedTake,
  joint: Joint,
  path: readonly LaidRibbon[],
): Point | undefined {
  if (joint.on.type !== 'connector') return undefined;
  const asking = path[0] as LaidRibbon;
  const isPlug = joint.ribbon === asking;
  const { ribbon, connector } = isPlug ? joint.on : joint;
  const follows = isPlug || !asking.uses.some((_, own) => headerUnder(asking, own));
  if (!follows || path.includes(ribbon)) return undefined;
  return connectorPoints(sheet, take, ribbon, path)?.[orderOf(ribbon, connector)];
}

function pointAt(
  sheet: Sheet,
  take: DerivedTake,
  connector: number,
  path: readonly LaidRibbon[],
): Point | undefined {
  const ribbon = path[0] as LaidRibbon;
  const lie = take.lies.get(ribbon);
  if (lie) return stiffPoint(sheet, lie, connector);
  const header = headerUnder(ribbon, connector);
  if (header) return headerPoint(sheet, header);
  for (const joint of ribbon.uses[connector] ?? []) {
    const point = jointPoint(sheet, take, joint, path);
    if (point) return point;
  }
  return undefined;
}

/** A free connector beyond the last seat: along the row on a flat ribbon, hanging on a loose one. */
function beyond(sheet: Sheet, ribbon: LaidRibbon, from: Point, lengthMm: number): Point {
  if (!ribbon.facts.flat) {
    return { x: from.x + HANG_MM.across * sheet.scale, y: from.y + HANG_MM.down * sheet.scale };
  }
  const step = sheet.side === 'rear' ? -sheet.scale : sheet.scale;
  return { x: from.x + step * directionOf(ribbon) * lengthMm, y: from.y };
}

/** Gives every connector without a seat a place between, or beyond, those that have one. */
function fillPlaces(sheet: Sheet, ribbon: LaidRibbon, places: Places): Point[] {
  const known = places.flatMap((place, order) => (place ? [order] : []));
  const at = (order: number): number => atMmOf(ribbon, connectorAt(ribbon, order));
  return places.map((place, order) => {
    if (place) return place;
    const before = known.filter((other) => other < order).at(-1);
    const after = known.find((other) => other > order);
    const near = before ?? (after as number);
    const start = places[near] as Point;
    if (before === undefined || after === undefined)
      return beyond(sheet, ribbon, start, at(order) - at(near));
    return pointBetween(start, places[after] as Point, (at(order) - at(near)) / (at(after) - at(near)));
  });
}

/**
 * Places of all connectors in their order along the ribbon; nothing if it is seated nowhere. `from`: the ribbons
 * that asked for it, the last one first.
 */
export function connectorPoints(
  sheet: Sheet,
  take: DerivedTake,
  ribbon: LaidRibbon,
  from: readonly LaidRibbon[] = [],
): Point[] | undefined {
  const path = [ribbon, ...from];
  const places = ribbon.uses.map((_, order) => pointAt(sheet, take, connectorAt(ribbon, order), path));
  return places.some(Boolean) ? fillPlaces(sheet, ribbon, places) : undefined;
}
