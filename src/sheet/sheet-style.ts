import { FOOT_MM, HEAD_MM, MARGIN_MM, pageMm } from './page-size.ts';
import { LEADING, LETTERS_MM, SMALL_MM } from './paginate.ts';
import type { Paper } from './sheet-page.ts';

/** A page is this much lower than its paper: rounding must not push its last line onto another sheet, mm. */
const PLAY_MM = 0.4;

/** How the bench sheet looks on paper and on screen. Sizes are mm, so that what was counted is what is printed. */
export function sheetStyle(paper: Paper): string {
  const tall = pageMm(paper);
  const wide = pageMm(paper, true);
  return `
@page tall { size: ${tall.widthMm}mm ${tall.heightMm}mm; margin: 0; }
@page wide { size: ${wide.widthMm}mm ${wide.heightMm}mm; margin: 0; }
* { box-sizing: border-box; margin: 0; padding: 0; }
html { background: #cfd3d6; color: #111; }
body { font: ${LETTERS_MM}mm/${LEADING} "Helvetica Neue", Helvetica, Arial, "Liberation Sans", "DejaVu Sans", sans-serif; -webkit-text-size-adjust: none; text-size-adjust: none; }
.page { position: relative; display: grid; grid-template-rows: ${HEAD_MM}mm minmax(0, 1fr) ${FOOT_MM}mm; margin: 6mm auto; padding: ${MARGIN_MM}mm; background: #fff; overflow: hidden; box-shadow: 0 .5mm 2mm rgb(0 0 0 / 30%); }
.tall { page: tall; width: ${tall.widthMm}mm; height: ${tall.heightMm - PLAY_MM}mm; }
.wide { page: wide; width: ${wide.widthMm}mm; height: ${wide.heightMm - PLAY_MM}mm; }
.page > header { display: grid; grid-template-columns: minmax(0, 1fr) auto; align-content: start; column-gap: 4mm; border-bottom: .5mm solid #111; height: ${HEAD_MM - 3}mm; }
.page > header > * { white-space: nowrap; overflow: hidden; }
.page > header h1 { font-size: 4.6mm; line-height: 5.4mm; }
.page > header p { font-size: ${SMALL_MM}mm; line-height: 3.6mm; text-overflow: ellipsis; }
.page > header .code { font-size: 3.4mm; line-height: 5.4mm; text-align: right; }
.page > header .side { text-align: right; font-weight: 700; }
.page > footer { align-self: end; border-top: .2mm solid #111; padding-top: .8mm; font-size: ${SMALL_MM}mm; line-height: 3.1mm; }
.body { position: relative; min-height: 0; }
h2 { padding-top: 3mm; font-size: 4mm; line-height: 5.4mm; white-space: nowrap; overflow: hidden; }
h3 { font-size: 3.4mm; line-height: 5mm; }
table { border-collapse: separate; border-spacing: 0; table-layout: fixed; }
th, td { padding: .7mm 1.2mm 0; border-bottom: .2mm solid #777; text-align: left; vertical-align: top; font-weight: 400; white-space: nowrap; overflow: hidden; }
th { border-bottom: .4mm solid #111; font-size: ${SMALL_MM}mm; font-weight: 700; vertical-align: bottom; }
td.right, th.right { text-align: right; }
td.bold { font-weight: 700; }
td.box { border: .2mm solid #111; border-top-width: 0; }
td.box + td.box { border-left-width: 0; }
thead + tbody tr:first-child td.box { border-top-width: .2mm; }
ul { padding-left: 5mm; }
svg { display: block; overflow: hidden; }
.drawing { display: grid; justify-content: center; align-content: start; height: 100%; }
.drawing figcaption { height: 6mm; padding-top: 1mm; font-size: ${SMALL_MM}mm; text-align: center; white-space: nowrap; }
.labels { display: grid; grid-template-columns: 1fr 1fr; }
.label { display: grid; grid-template-columns: 1fr 1fr; outline: .2mm dashed #555; }
.label > div { padding: 1.4mm 2.4mm 0; overflow: hidden; white-space: nowrap; }
.label > div + div { border-left: .2mm dotted #777; }
.label b, .label span { display: block; }
.gig h2 { padding: 0; height: auto; overflow: visible; border-bottom: .6mm solid #111; }
.gig p { white-space: nowrap; }
@media screen and (max-width: 312mm) { main { zoom: .74; } }
@media screen and (max-width: 230mm) { main { zoom: .56; } }
@media screen and (max-width: 174mm) { main { zoom: .42; } }
@media screen and (max-width: 130mm) { main { zoom: .3; } }
@media print {
  html { background: none; }
  .page { margin: 0; box-shadow: none; break-after: page; break-inside: avoid; }
  .page:last-child { break-after: auto; }
  * { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
}
`;
}
