import type { Note } from '../checks/check.ts';
import { checkTake } from '../checks/run.ts';
import { type Box, boardBox, layOutForPaper, moduleBox } from '../drawing/sheet.ts';
import type { Layout, Take } from '../layout/layout.ts';
import { deriveTake } from '../wiring/derive.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import { drawingOf } from './drawing.ts';
import { markup } from './markup.ts';
import { at, SVG_FONT } from './svg.ts';

/** An example of a check as the help shows it. */
export interface ExamplePicture {
  /** A document of its own. */
  readonly svg: string;
  /** What is seen, in words. */
  readonly seen: string;
  /** What the check itself says of it; none of a good one. */
  readonly notes: readonly Note[];
}

const DEEP: readonly string[] = ['too-deep', 'over-board'];

/** Narrower cuts would draw a module larger than life. */
const LEAST_WIDTH_MM = 120;
const AROUND_MM = 9;

/** What of the case matters: its modules, and boards that a ribbon is seated on. */
function cutOf(take: WholeTake, isSection: boolean): Pick<Box, 'left' | 'right'> {
  const look = { panels: !isSection, depthScale: isSection ? 1 : 0 };
  const sheet = layOutForPaper(take, 'rear', look);
  const used = take.places.boards.filter(
    ({ headers }) => isSection || headers.some((header) => take.wiring.seatedOn.has(header)),
  );
  const boxes = [
    ...take.places.modules.map((module) => moduleBox(sheet, module)),
    ...used.map((board) => boardBox(sheet, board)),
  ];
  if (boxes.length === 0) return { left: 0, right: sheet.width };
  const left = Math.min(...boxes.map((box) => box.left));
  const right = Math.max(...boxes.map((box) => box.right));
  const more = Math.max(0, LEAST_WIDTH_MM - (right - left)) / 2;
  return { left: left - more - AROUND_MM, right: right + more + AROUND_MM };
}

const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`;

function seenIn(take: WholeTake, isSection: boolean): string {
  const modules = [...take.places.modules].sort((a, b) => b.leftMm - a.leftMm);
  const names = modules.map(({ name, module }) => `${name} at ${module.atHp} HP`).join(', ');
  const ribbons = take.take.ribbons.map(
    ({ kind, seats, id }) => `${id} (${kind}), ${counted(seats.length, 'seat')}`,
  );
  const from = isSection ? 'Cut through the case, seen from above' : 'Seen from the rear, from left to right';
  return `${from}: ${names || 'no module'}. ${ribbons.length > 0 ? `Ribbons: ${ribbons.join('; ')}.` : 'No ribbon.'}`;
}

/** The drawing of a check's example, by the hand that draws the bench sheet; in mm of the case. */
export function examplePicture(check: string, layout: Layout): ExamplePicture {
  const take = deriveTake(layout.kit, layout.takes[0] as Take);
  const isSection = DEEP.includes(check);
  const drawing = drawingOf(take, isSection ? 'section' : 'rear');
  const { left, right } = cutOf(take, isSection);
  const width = right - left;
  const box = [left, drawing.topMm - 4, width, drawing.heightMm + 8].map(at).join(' ');
  const letters = Math.max(3, width / 36);
  const { text } =
    markup`<svg xmlns="http://www.w3.org/2000/svg" viewBox="${box}" width="${at(width)}mm" height="${at(drawing.heightMm + 8)}mm" font-family="${SVG_FONT}">${drawing.body(letters)}</svg>`;
  return {
    svg: text,
    seen: seenIn(take, isSection),
    notes: checkTake(take).filter((note) => note.check === check),
  };
}
