import {
  headerBodyMm,
  NOTCH_MM,
  PIN_MM,
  type PinEnd,
  type PlacedHeader,
  socketBodyMm,
} from '../../../src/index.ts';
import { type Box, headerPoint, type Point, type Sheet } from '../sheet.ts';
import { addBox, addPolygon, boxAround, type Context, type Paper, paint, thinLine } from './paper.ts';

/** Half of a header's outline on the rear, mm; the larger of box and plug, along and across the screen. */
function headerHalfMm({ bus, keyed, axis }: PlacedHeader): { readonly x: number; readonly y: number } {
  const { longMm, wideMm } = headerBodyMm(bus.pins, keyed);
  return axis === 'vertical' ? { x: wideMm / 2, y: longMm / 2 } : { x: longMm / 2, y: wideMm / 2 };
}

/** Half of what a header and a connector on it cover upward and downward, mm. */
export const headerReachMm = (header: PlacedHeader): number =>
  header.axis === 'vertical'
    ? Math.max(headerHalfMm(header).y, socketBodyMm(header.bus.pins).longMm / 2) + 2.2
    : 5;

export function headerBox(sheet: Sheet, header: PlacedHeader): Box {
  const half = headerHalfMm(header);
  return boxAround(headerPoint(sheet, header), half.x * sheet.scale, half.y * sheet.scale);
}

/** Direction from the middle of a header to its pin 1, as seen from the rear. */
const TO_PIN1: Record<PinEnd, Point> = {
  up: { x: 0, y: -1 },
  down: { x: 0, y: 1 },
  left: { x: 1, y: 0 },
  right: { x: -1, y: 0 },
};

/** From the middle of a header along its pins, and across them towards the side of pin 1; mm to px. */
export function fromMiddle(
  { x, y }: Point,
  end: PinEnd,
  scale: number,
): (along: number, across: number) => Point {
  const to = TO_PIN1[end];
  return (along, across) => ({
    x: x + (to.x * along + to.y * across) * scale,
    y: y + (to.y * along - to.x * across) * scale,
  });
}

/** Below this distance of the pins, px, a row of pins is drawn as a line. */
const PINS_APART = 2.2;

function addPins(ctx: Context, { x, y }: Point, { bus, axis }: PlacedHeader, scale: number): void {
  const pairs = bus.pins / 2;
  const pitch = PIN_MM * scale;
  const size = Math.max(1.2, 0.85 * scale);
  const upright = axis === 'vertical';
  const along = pitch < PINS_APART ? 1 : pairs;
  const long = pitch < PINS_APART ? pitch * pairs : size;
  for (let pair = 0; pair < along; pair++) {
    const offset = (pair - (along - 1) / 2) * pitch;
    for (const across of [-pitch / 2, pitch / 2]) {
      if (upright) ctx.rect(x + across - size / 2, y + offset - long / 2, size, long);
      else ctx.rect(x + offset - long / 2, y + across - size / 2, long, size);
    }
  }
}

/** An arrow at pin 1, and on its side the notch of a boxed header. */
function addPin1(ctx: Context, at: ReturnType<typeof fromMiddle>, { bus, keyed }: PlacedHeader): void {
  const { longMm, wideMm } = headerBodyMm(bus.pins, keyed);
  const tip = Math.max(longMm, socketBodyMm(bus.pins).longMm) / 2 + 0.5;
  addPolygon(ctx, [at(tip, PIN_MM / 2), at(tip + 2.2, PIN_MM / 2 - 1.5), at(tip + 2.2, PIN_MM / 2 + 1.5)]);
  if (!keyed) return;
  const side = wideMm / 2;
  const half = NOTCH_MM / 2;
  addPolygon(ctx, [at(-half, side - 1.3), at(half, side - 1.3), at(half, side), at(-half, side)]);
}

interface HeaderInks {
  readonly box: string;
  readonly pin: string;
  readonly arrow: string;
}

/** Headers as boxes with their pins on the 2.54 mm grid, the notch of a keyed one, and an arrow at pin 1. */
export function drawHeaders(
  ctx: Context,
  paper: Paper,
  headers: readonly PlacedHeader[],
  inks: HeaderInks,
): void {
  const { sheet } = paper;
  const { scale } = sheet;
  paint(ctx, { line: inks.box, width: thinLine(scale) }, headers, (header) =>
    addBox(ctx, headerBox(sheet, header)),
  );
  paint(ctx, { fill: inks.pin }, headers, (header) =>
    addPins(ctx, headerPoint(sheet, header), header, scale),
  );
  paint(ctx, { fill: inks.arrow }, headers, (header) => {
    if (header.pin1) addPin1(ctx, fromMiddle(headerPoint(sheet, header), header.pin1, scale), header);
  });
}
