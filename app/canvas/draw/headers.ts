import {
  type Box,
  headerHalfMm,
  headerPoint,
  PIN_MM,
  type PlacedHeader,
  type Point,
  pin1Shapes,
  type Sheet,
  socketBodyMm,
} from '../../../src/index.ts';
import { addBox, addPolygon, boxAround, type Context, type Paper, paint, thinLine } from './paper.ts';

/** Half of what a header and a connector on it cover upward and downward, mm. */
export const headerReachMm = (header: PlacedHeader): number =>
  header.axis === 'vertical'
    ? Math.max(headerHalfMm(header).y, socketBodyMm(header.bus.pins).longMm / 2) + 2.2
    : 5;

export function headerBox(sheet: Sheet, header: PlacedHeader): Box {
  const half = headerHalfMm(header);
  return boxAround(headerPoint(sheet, header), half.x * sheet.scale, half.y * sheet.scale);
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
    if (!header.pin1) return;
    for (const shape of pin1Shapes(header, headerPoint(sheet, header), header.pin1, scale))
      addPolygon(ctx, shape);
  });
}
