import { socketBodyMm } from '../geometry/connector.ts';
import type { PlacedHeader } from '../geometry/place.ts';
import { endSeenFrom } from '../geometry/side.ts';
import type { Axis, PinEnd } from '../layout/layout.ts';
import type { DerivedTake } from '../wiring/derived-take.ts';
import { type LaidRibbon, stripeAt, waysOf } from '../wiring/laid-ribbon.ts';
import { headerUnder } from './connector-points.ts';
import { headerPoint, type Point, type Sheet } from './sheet.ts';

/** seated: lands and joins. missing: drawn as seated, but does not land or does not join. free: not seated. */
type SeatState = 'seated' | 'missing' | 'free';

/** A connector on the sheet. */
export interface Knot extends Point {
  readonly connector: number;
  readonly state: SeatState;
  readonly axis: Axis;
  /** Half of its outline, px. */
  readonly halfWidth: number;
  readonly halfHeight: number;
  /** Edge of the screen towards which conductor 1 lies. */
  readonly pin1: PinEnd | undefined;
  readonly header: PlacedHeader | undefined;
  /** Where its header lies instead, and how far that is. */
  readonly stray:
    | (Point & { readonly dxMm: number; readonly dyMm: number; readonly otherRow: boolean })
    | undefined;
}

function strayAt(sheet: Sheet, take: DerivedTake, ribbon: LaidRibbon, connector: number): Knot['stray'] {
  const stray = take.lies.get(ribbon)?.strays.find(({ seat }) => seat.connector === connector);
  if (!stray) return undefined;
  const { dxMm, dyMm, otherRow } = stray;
  return { ...headerPoint(sheet, stray.seat.on.header), dxMm, dyMm, otherRow };
}

function stateOf(ribbon: LaidRibbon, connector: number, stray: Knot['stray']): SeatState {
  const joints = ribbon.uses[connector] ?? [];
  if (joints.length === 0) return 'free';
  return !stray && joints.some(({ conducts }) => conducts) ? 'seated' : 'missing';
}

/** A connector of a ribbon that lies at a point. */
export function knotAt(
  sheet: Sheet,
  take: DerivedTake,
  ribbon: LaidRibbon,
  connector: number,
  { x, y }: Point,
): Knot {
  const header = headerUnder(ribbon, connector);
  const stray = strayAt(sheet, take, ribbon, connector);
  const { flat } = ribbon.facts;
  const axis = flat ? 'vertical' : (header?.axis ?? 'vertical');
  const { longMm, wideMm } = socketBodyMm(waysOf(ribbon, connector));
  const long = (longMm * sheet.scale) / 2;
  const wide = (wideMm * sheet.scale) / 2;
  return {
    x,
    y,
    connector,
    state: stateOf(ribbon, connector, stray),
    axis,
    halfWidth: axis === 'vertical' ? wide : long,
    halfHeight: axis === 'vertical' ? long : wide,
    pin1: flat ? stripeAt(ribbon, connector) : endSeenFrom(sheet.side, header?.pin1),
    header,
    stray,
  };
}
