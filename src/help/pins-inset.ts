import { estimate } from '../checks/load-words.ts';
import { figure, lineName, list } from '../checks/words.ts';
import { voltsAt } from '../electrical/readings.ts';
import type { PlacedHeader, PlacedModule } from '../geometry/place.ts';
import type { MarkupPart } from '../sheet/markup.ts';
import { FAINT, INK, line, PALE, rect, SOFT, text } from '../sheet/svg.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import { type InsetBody, LETTERS, MARGIN, WIDE } from './inset.ts';

/** What becomes of a voltage that a module draws. */
interface Drawn {
  readonly line: string;
  readonly isThere: boolean;
  readonly words: string;
}

const PIN_PX = 15;
const ROWS_TOP = 48;
const ROW_PX = 48;

const shortName = (line: string): string => lineName(line).replace(' V', '');

const cross = (x: number, y: number): MarkupPart =>
  [-1, 1].map((way) =>
    line(
      [
        { x: x - 6, y: y - 6 * way },
        { x: x + 6, y: y + 6 * way },
      ],
      { line: INK, width: 2 },
    ),
  );

/** Pins of a header in their two rows, pin 1 at the left, each with what it carries. */
function headerDrawn({ bus }: PlacedHeader, drawn: readonly Drawn[]): MarkupPart {
  const { pinout } = bus.bus;
  const step = Math.min(46, (WIDE - 2 * MARGIN) / Math.ceil(pinout.length / 2));
  const left = (WIDE - step * Math.ceil(pinout.length / 2)) / 2;
  const right = WIDE - left;
  return [
    rect(
      { left, right, top: ROWS_TOP - 22, bottom: ROWS_TOP + ROW_PX + 22 },
      { fill: '#fff', line: SOFT, width: 1 },
    ),
    pinout.map((carried, pin) => {
      const x = left + step * (Math.floor(pin / 2) + 0.5);
      const y = ROWS_TOP + ROW_PX * (pin % 2);
      const of = drawn.find((one) => one.line === carried);
      const half = PIN_PX / 2;
      const box = { left: x - half, right: x + half, top: y - half - 4, bottom: y + half - 4 };
      return [
        rect(
          box,
          of?.isThere ? { fill: INK } : { fill: of ? '#fff' : PALE, line: of ? INK : FAINT, width: 1.2 },
        ),
        of && !of.isThere && cross(x, y - 4),
        text(shortName(carried), x, y + 16, {
          size: 10,
          anchor: 'middle',
          ink: of ? INK : SOFT,
          bold: of !== undefined,
        }),
      ];
    }),
    text('1', left - 4, ROWS_TOP, { size: 11, anchor: 'end', bold: true }),
  ];
}

function bodyOf(module: PlacedModule, drawn: readonly Drawn[]): InsetBody {
  const [header] = module.headers;
  const top = header ? ROWS_TOP + ROW_PX + 44 : 40;
  return {
    high: top + drawn.length * 19,
    seen: `${module.name}: ${drawn.map(({ words }) => words).join('; ')}.`,
    body: [
      text(header ? `Header ${header.name} of ${module.name}` : `${module.name} has no header`, MARGIN, 16, {
        size: LETTERS,
        bold: true,
      }),
      header && headerDrawn(header, drawn),
      drawn.map(({ words, isThere }, i) =>
        text(words, MARGIN, top + 4 + i * 19, { size: LETTERS * 0.92, bold: !isThere }),
      ),
    ],
  };
}

const milliamperes = (ma: number | null): string =>
  ma === null ? 'an unknown current' : `${estimate(ma)} mA`;

/** Which pins carry what a module draws. */
export const carriedBodies = ({ places }: WholeTake): InsetBody[] =>
  places.modules.map((module) =>
    bodyOf(
      module,
      module.facts.draws.map(([line, ma]) => {
        const pins = module.headers.flatMap(({ bus }) =>
          (bus.supplyPins.get(line) ?? []).map((pin) => String(pin + 1)),
        );
        const isThere = !module.facts.foreign.includes(line);
        const where = isThere
          ? `on ${pins.length === 1 ? 'pin' : 'pins'} ${list(pins)}`
          : 'no pin carries it';
        return { line, isThere, words: `Draws ${milliamperes(ma)} on ${lineName(line)}: ${where}` };
      }),
    ),
  );

/** Which of the voltages that a module draws arrive at its pins. */
export const arrivingBodies = (take: WholeTake): InsetBody[] =>
  take.places.modules.map((module) =>
    bodyOf(
      module,
      module.facts.draws.map(([line, ma]) => {
        const [volts] = voltsAt(take, [], [{ line, module: module.id }]);
        const isThere = volts !== undefined;
        const arrives = isThere ? `${figure(volts)} V arrives` : 'nothing arrives';
        return { line, isThere, words: `Draws ${milliamperes(ma)} on ${lineName(line)}: ${arrives}` };
      }),
    ),
  );
