import type { WholeTake } from '../wiring/whole-take.ts';
import { drawingOf, svgOf, type View } from './drawing.ts';
import { revisionOf } from './revision.ts';

/** Letters of a drawing that stands alone, mm of paper. */
const LETTERS_MM = 2.5;

/** Half of the case's own size: a row of 104 HP is as wide as a landscape sheet of A4. */
export const FILE_SCALE = 0.5;

/** A drawing of a whole take as an SVG file of its own, in which text is text. */
export function drawingFile(take: WholeTake, view: View): string {
  const label = `${take.take.name}, ${view}, revision ${revisionOf(take)}, scale 1 : ${1 / FILE_SCALE}`;
  return `<?xml version="1.0" encoding="UTF-8"?>\n${svgOf(drawingOf(take, view), FILE_SCALE, LETTERS_MM, label).text}\n`;
}
