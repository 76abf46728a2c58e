import { type Drawing, drawingOf, fitScale, svgOf, type View } from '../drawing.ts';
import { markup } from '../markup.ts';
import { bodyMm } from '../page-size.ts';
import { SMALL_MM } from '../paginate.ts';
import type { SheetFacts, SheetPage } from '../sheet-page.ts';

/** Below the drawing, for its scale, mm. */
const CAPTION_MM = 7;

/** Rows are put on one page as long as that does not make them smaller than this, of what the width allows. */
const LEAST_SHARE = 0.6;

interface Words {
  readonly title: string;
  /** Below the drawing, beside its scale. */
  readonly says: string;
}

/** Rows in groups, each of which fits a page well. */
function groupsOf({ take, options }: SheetFacts, view: View): Drawing[] {
  const { widthMm, heightMm } = bodyMm(options.paper, true);
  const room = { widthMm, heightMm: heightMm - CAPTION_MM };
  const rows = take.places.rows.length;
  const fits = (drawing: Drawing): boolean =>
    fitScale(drawing, room) >= LEAST_SHARE * fitScale({ ...drawing, heightMm: 0 }, room);
  const drawings: Drawing[] = [];
  for (let from = 0; from < rows; ) {
    let to = rows;
    while (to > from + 1 && !fits(drawingOf(take, view, from, to))) to--;
    drawings.push(drawingOf(take, view, from, to));
    from = to;
  }
  return drawings;
}

/** Pages of one view: as large as the paper allows, and at what scale. */
export function drawingPages(facts: SheetFacts, view: View, { title, says }: Words): SheetPage[] {
  const { widthMm, heightMm } = bodyMm(facts.options.paper, true);
  return groupsOf(facts, view).map((drawing) => {
    const scale = fitScale(drawing, { widthMm, heightMm: heightMm - CAPTION_MM });
    const body = markup`<figure class="drawing">${svgOf(drawing, scale, SMALL_MM, title)}<figcaption>Scale 1 : ${(1 / scale).toFixed(2)} · ${says}</figcaption></figure>`;
    return { id: view, title, side: view === 'front' ? 'front' : 'rear', lies: true, body };
  });
}
