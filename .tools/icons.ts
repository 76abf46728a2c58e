import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright';
import { THEMES } from '../app/canvas/theme.ts';
import { findBrowser, launchArguments } from '../e2e/find-browser.ts';

// Draws the program's icons in the drawing's own colours (npm run icons): a rail, three panels, and a ribbon over them.

const FOLDER = fileURLToPath(new URL('../public/icons/', import.meta.url));
const { bench, ink, panel, panelEdge, rail, ribbon, ribbonEdge, stripe, connector, pin } = THEMES.light;

const box = (x: number, y: number, width: number, height: number, fill: string, more = ''): string =>
  `<rect x="${x}" y="${y}" width="${width}" height="${height}" fill="${fill}" ${more}/>`;

const screw = (x: number, y: number): string =>
  `<circle cx="${x}" cy="${y}" r="4" fill="${ink}" opacity=".5"/>`;

/** A header's pins, two by three. */
const pins = (x: number): string =>
  [0, 1, 2]
    .flatMap((row) => [0, 1].map((side) => box(x + 6 + side * 10, 111 + row * 13, 5, 5, pin)))
    .join('');

const panels = [56, 104, 152]
  .map(
    (x) =>
      box(x, 66, 46, 124, panel, `stroke="${panelEdge}" stroke-width="2"`) +
      screw(x + 23, 76) +
      screw(x + 23, 180),
  )
  .join('');

const band = [
  box(40, 106, 176, 44, ribbon, `stroke="${ribbonEdge}" stroke-width="3"`),
  box(41.5, 141, 173, 7.5, stripe),
  ...[66, 114, 162].map((x) => box(x, 100, 26, 56, connector, 'rx="2"') + pins(x)),
].join('');

const rails = box(40, 58, 176, 12, rail) + box(40, 186, 176, 12, rail);

const drawing = panels + rails + band;

const icon = (ground: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 256 256"><title>Ribbonwright</title>${ground}${drawing}</svg>\n`;

/** Large enough to read at 16 px; a system may cut the other one to any shape, so it has its ground all round. */
const ANY = icon(box(8, 8, 240, 240, bench, `rx="44" stroke="${ink}" stroke-width="6"`)).replace(
  drawing,
  `<g transform="translate(128 128) scale(1.12) translate(-128 -128)">${drawing}</g>`,
);
const MASKABLE = icon(box(0, 0, 256, 256, bench)).replace(
  drawing,
  `<g transform="translate(128 128) scale(.86) translate(-128 -128)">${drawing}</g>`,
);

mkdirSync(FOLDER, { recursive: true });
writeFileSync(`${FOLDER}icon.svg`, ANY);
const browser = await chromium.launch({ executablePath: findBrowser(), args: launchArguments() });
for (const [name, svg, size] of [
  ['icon-192', ANY, 192],
  ['icon-512', ANY, 512],
  ['maskable-512', MASKABLE, 512],
] as const) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  await page.setContent(`<style>*{margin:0}svg{display:block;width:100vw;height:100vh}</style>${svg}`);
  await page.screenshot({ path: `${FOLDER}${name}.png`, omitBackground: true });
  await page.close();
}
await browser.close();
