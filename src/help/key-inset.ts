import { connectorName, targetName } from '../checks/words.ts';
import type { MarkupPart } from '../sheet/markup.ts';
import { FAINT, INK, line, PALE, polygon, rect, SOFT, STRIPE, text } from '../sheet/svg.ts';
import { isHeaderJoint } from '../wiring/harness.ts';
import { connectorOf } from '../wiring/laid-ribbon.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import { type InsetBody, LETTERS, WIDE } from './inset.ts';

const MIDDLE = WIDE / 2;
const STEP = 24;
const BOX = { top: 40, bottom: 94 };
const PLUG = { top: 124, bottom: 158 };
const BAND_END = 196;
/** Half of the notch, and of the nose that goes into it. */
const NOTCH = 15;

function boxDrawn(pins: number): MarkupPart {
  const half = (pins / 2) * (STEP / 2) + 16;
  const [left, right] = [MIDDLE - half, MIDDLE + half];
  const wall = [
    { x: MIDDLE - NOTCH, y: BOX.bottom },
    { x: left, y: BOX.bottom },
    { x: left, y: BOX.top },
    { x: right, y: BOX.top },
    { x: right, y: BOX.bottom },
    { x: MIDDLE + NOTCH, y: BOX.bottom },
  ];
  const first = MIDDLE - ((pins / 2 - 1) * STEP) / 2;
  return [
    line(wall, { line: INK, width: 3 }),
    Array.from({ length: pins }, (_, pin) => {
      const [x, y] = [first + Math.floor(pin / 2) * STEP, (BOX.top + BOX.bottom) / 2 + (pin % 2 ? -10 : 10)];
      return rect({ left: x - 4, right: x + 4, top: y - 4, bottom: y + 4 }, { fill: SOFT });
    }),
    polygon(
      [
        { x: left - 5, y: BOX.bottom - 17 },
        { x: left - 18, y: BOX.bottom - 24 },
        { x: left - 18, y: BOX.bottom - 10 },
      ],
      { fill: INK },
    ),
    text('pin 1', left - 24, BOX.bottom - 12, { size: LETTERS, anchor: 'end', bold: true }),
    text('notch', MIDDLE + NOTCH + 8, BOX.bottom + 16, { size: 11, ink: SOFT }),
  ];
}

/** A connector as its nose lets it in: the end at which its stripe then lies is what counts. */
function plugDrawn(pins: number, isAtPin1: boolean): MarkupPart {
  const half = (pins / 2) * (STEP / 2) + 8;
  const [left, right] = [MIDDLE - half, MIDDLE + half];
  const conductors = Array.from({ length: pins - 1 }, (_, i) => left + ((i + 1) * (right - left)) / pins);
  const stripe = isAtPin1 ? left + 4 : right - 4;
  return [
    rect({ left, right, top: PLUG.bottom, bottom: BAND_END }, { fill: PALE, line: SOFT, width: 1 }),
    conductors.map((x) =>
      line(
        [
          { x, y: PLUG.bottom },
          { x, y: BAND_END },
        ],
        { line: FAINT, width: 0.8 },
      ),
    ),
    rect({ left: stripe - 4, right: stripe + 4, top: PLUG.bottom, bottom: BAND_END }, { fill: STRIPE }),
    [0, 1, 2].map((i) =>
      line(
        [
          { x: stripe - 4, y: PLUG.bottom + 6 + i * 12 },
          { x: stripe + 4, y: PLUG.bottom + 6 + i * 12 },
        ],
        { line: '#fff', width: 3 },
      ),
    ),
    rect({ left, right, ...PLUG }, { fill: '#222' }),
    rect(
      { left: MIDDLE - NOTCH + 3, right: MIDDLE + NOTCH - 3, top: PLUG.top - 9, bottom: PLUG.top },
      { fill: '#222' },
    ),
    text('stripe', isAtPin1 ? left - 8 : right + 8, BAND_END - 14, {
      size: LETTERS,
      bold: true,
      anchor: isAtPin1 ? 'end' : 'start',
    }),
  ];
}

/** Every boxed header with the connector in it, the way round in which the nose meets the notch. */
export const keyBodies = ({ wiring }: WholeTake): InsetBody[] =>
  wiring.joints
    .filter(isHeaderJoint)
    .filter((joint) => joint.on.header.keyed)
    .map((joint) => {
      const { ribbon, connector, on } = joint;
      const isAtPin1 = connectorOf(ribbon, connector).key !== 'against-stripe';
      const { pins } = on.header.bus;
      const verdict = isAtPin1
        ? 'Nose in the notch, the stripe lies at pin 1'
        : 'Nose in the notch, the stripe lies at the far end';
      const title = `${connectorName(joint)}, on ${targetName(on)}`;
      return {
        high: 226,
        seen: `${title}. ${verdict}.`,
        body: [
          text(title, MIDDLE, 18, { size: LETTERS, bold: true, anchor: 'middle' }),
          boxDrawn(pins),
          plugDrawn(pins, isAtPin1),
          text(verdict, MIDDLE, 218, { size: LETTERS * 0.92, bold: !isAtPin1, anchor: 'middle' }),
        ],
      };
    });
