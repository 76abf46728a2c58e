/** How tables, lists and strips of these pages look; row heights in `table.ts` reckon with it. */
export const PAGES_STYLE = `
.lot { margin: 0 0 5mm; font-size: 9pt; line-height: 4.2mm; overflow-wrap: anywhere; }
.lot h3 { margin: 0 0 2mm; font-size: 11pt; line-height: 6mm; font-weight: 600; }
.lot p { margin: 0 0 2mm; }
.lot table { border-collapse: collapse; table-layout: fixed; }
.lot th, .lot td { padding: 0.9mm 1mm; border: 0.2mm solid #999; text-align: left; vertical-align: top; }
.lot th { background: #eee; font-weight: 600; }
.lot .end { text-align: right; font-variant-numeric: tabular-nums; }
.lot .middle { text-align: center; }
.tick { display: inline-block; box-sizing: border-box; width: 3.6mm; height: 3.6mm; border: 0.3mm solid #000; vertical-align: -0.4mm; }
.lot ul { margin: 0; padding: 0; list-style: none; }
.lot li { display: flex; gap: 2mm; padding: 1mm 0; }
.lot ul.plain li::before { content: '·'; }
.lot .tick { flex: none; }
.caution { border: 0.5mm solid #000; padding: 2mm 3mm; }
.strip { display: block; margin: 0 0 4mm; overflow: hidden; }
.strip text { font-family: inherit; fill: #000; }
`;
