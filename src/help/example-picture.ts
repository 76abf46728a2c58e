import type { Note } from '../checks/check.ts';
import { checkTake } from '../checks/run.ts';
import { type Box, boardBox, layOutForPaper, moduleBox } from '../drawing/sheet.ts';
import type { Layout, Take } from '../layout/layout.ts';
import { drawingOf } from '../sheet/drawing.ts';
import { markup } from '../sheet/markup.ts';
import { at, SVG_FONT } from '../sheet/svg.ts';
import { deriveTake } from '../wiring/derive.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import type { Inset } from './inset.ts';
import { insetFor } from './insets.ts';

/** An example of a check as the help shows it. */
export interface ExamplePicture {
  /** A document of its own. */
  readonly svg: string;
  /** What is seen, in words. */
  readonly seen: string;
  /** What the check itself says of it; none of a good one. */
  readonly notes: readonly Note[];
  /** What the drawing cannot show: figures, facts, pins. */
  readonly inset?: Inset;
}

const DEEP: readonly string[] = ['too-deep', 'over-board', 'no-clearance'];

/** Narrower cuts would draw a module larger than life. */
const LEAST_WIDTH_MM = 120;
const AROUND_MM = 9;
const EDGE_MM = 4;

/** The frame in which the help shows a drawing, lower with an inset, and how high letters are there. */
const FRAME_PX = { wide: 390, high: 300, withInset: 240 };
const LETTERS_PX = 11;

/** What of the case matters: its modules, and boards that a ribbon is seated on. */
function cutOf(take: WholeTake, isSection: boolean, hasBoards: boolean): Pick<Box, 'left' | 'right'> {
  const look = { panels: !isSection, depthScale: isSection ? 1 : 0 };
  const sheet = layOutForPaper(take, 'rear', look);
  const used = take.places.boards.filter(
    ({ headers }) => hasBoards || headers.some((header) => take.wiring.seatedOn.has(header)),
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
  const { left, right } = cutOf(take, isSection, check === 'over-board');
  const width = right - left;
  const highMm = drawing.heightMm + 2 * EDGE_MM;
  const box = [left, drawing.topMm - EDGE_MM, width, highMm].map(at).join(' ');
  const inset = insetFor(check, take);
  const frameHigh = inset ? FRAME_PX.withInset : FRAME_PX.high;
  const letters = LETTERS_PX / Math.min(FRAME_PX.wide / width, frameHigh / highMm);
  const { text } =
    markup`<svg xmlns="http://www.w3.org/2000/svg" viewBox="${box}" width="${at(width)}mm" height="${at(highMm)}mm" font-family="${SVG_FONT}">${drawing.body(letters, false)}</svg>`;
  return {
    svg: text,
    ...(inset && { inset }),
    seen: seenIn(take, isSection),
    notes: checkTake(take).filter((note) => note.check === check),
  };
}
