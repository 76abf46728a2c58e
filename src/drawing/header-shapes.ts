import { headerBodyMm, NOTCH_MM, PIN_MM, socketBodyMm } from '../geometry/connector.ts';
import type { PlacedHeader } from '../geometry/place.ts';
import type { PinEnd } from '../layout/layout.ts';
import type { Point } from './sheet.ts';

/** Half of a header's outline on the rear, mm; the larger of box and plug, along and across the screen. */
export function headerHalfMm({ bus, keyed, axis }: PlacedHeader): { readonly x: number; readonly y: number } {
  const { longMm, wideMm } = headerBodyMm(bus.pins, keyed);
  return axis === 'vertical' ? { x: wideMm / 2, y: longMm / 2 } : { x: longMm / 2, y: wideMm / 2 };
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

/** An arrow at pin 1, and on its side the notch of a boxed header; as seen from the rear. */
export function pin1Shapes(
  { bus, keyed }: PlacedHeader,
  middle: Point,
  end: PinEnd,
  scale: number,
): Point[][] {
  const at = fromMiddle(middle, end, scale);
  const { longMm, wideMm } = headerBodyMm(bus.pins, keyed);
  const tip = Math.max(longMm, socketBodyMm(bus.pins).longMm) / 2 + 0.5;
  const arrow = [at(tip, PIN_MM / 2), at(tip + 2.2, PIN_MM / 2 - 1.5), at(tip + 2.2, PIN_MM / 2 + 1.5)];
  if (!keyed) return [arrow];
  const side = wideMm / 2;
  const half = NOTCH_MM / 2;
  return [arrow, [at(-half, side - 1.3), at(half, side - 1.3), at(half, side), at(-half, side)]];
}
