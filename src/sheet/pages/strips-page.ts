import { figure, list, mm } from '../../checks/words.ts';
import type { Point } from '../../drawing/sheet.ts';
import { CONDUCTOR_MM, ribbonWidthMm, socketBodyMm } from '../../geometry/connector.ts';
import { groupBy } from '../../layout/group-by.ts';
import { type Cut, type CutConnector, type Piece, piecesOf } from '../cut-list.ts';
import { type Markup, type MarkupPart, markup } from '../markup.ts';
import { bodyMm } from '../page-size.ts';
import { type Block, paragraph, stack } from '../paginate.ts';
import type { PageMaker, SheetPage } from '../sheet-page.ts';
import { at, FAINT, INK, line, PALE, polygon, rect, SOFT, STRIPE, strokes, text } from '../svg.ts';
import { OVERLAP_MM, type Tile, tilesOf } from '../tiles.ts';

/** Letters on a strip, and beneath it the ruler, mm. */
const LETTERS_MM = 2.6;
const RULER_MM = 9;
/** Above the ribbon: how each connector opens; below: which it is. */
const ABOVE_MM = 5;
const BELOW_MM = 5;
/** Free at the ends of a tile, so that a cut edge lies on the paper, mm. */
const EDGE_MM = 6;
const SPACE_MM = 5;

/** A printer that makes this of 100 mm is made up for by drawing so many times larger. */
const correctionOf = (barMm: number | undefined): number => 100 / (barMm ?? 100);

const bodyLong = ({ connectors }: Cut): number =>
  Math.max(...connectors.map(({ ways }) => socketBodyMm(ways).longMm));

/** Seen from the rear, stripe down: the first conductor at the bottom. */
interface Place {
  /** Of the ribbon's edges, down from the top of the drawing. */
  readonly top: number;
  readonly bottom: number;
}

const OPENS = { panel: 'opens away', rear: 'opens to you' } as const;

function connectorDrawing(each: CutConnector, x: number, { bottom }: Place): MarkupPart {
  const { longMm, wideMm } = socketBodyMm(each.ways);
  // Contact 1 lies on the first conductor, at the stripe.
  const middle = bottom - ribbonWidthMm(each.ways) / 2;
  const [left, right] = [x - wideMm / 2, x + wideMm / 2];
  const box = { left, right, top: middle - longMm / 2, bottom: middle + longMm / 2 };
  const foot = box.bottom;
  const key = each.key === 'with-stripe' ? right : left;
  const keyBox = { left: key - 0.6, right: key + 0.6, top: middle - 2.05, bottom: middle + 2.05 };
  return [
    rect(box, { fill: each.face === 'rear' ? '#fff' : PALE, line: INK, width: 0.35 }),
    each.type === 'plug' &&
      rect(
        { left: left + 1, right: right - 1, top: box.top + 1, bottom: foot - 1 },
        { line: INK, width: 0.2 },
      ),
    each.key !== 'none' && rect(keyBox, { fill: INK }),
    line(
      [
        { x, y: box.top - 1.5 },
        { x, y: bottom + BELOW_MM },
      ],
      { line: INK, width: 0.15, dash: '1.5 .7' },
    ),
    polygon(
      [
        { x: x - 1, y: foot - 0.4 },
        { x: x + 1, y: foot - 0.4 },
        { x, y: foot - 2.2 },
      ],
      { fill: INK },
    ),
    text(`${each.number}`, x, middle + 1.1, { size: 3.2, bold: true, anchor: 'middle', clear: true }),
  ];
}

/** What stands over a connector: how it opens, its key, its contacts where they are fewer. */
const captionOf = ({ face, key, ways, type, isFolded }: CutConnector, conductors: number): string =>
  [
    OPENS[face],
    type === 'plug' && 'plug',
    ways !== conductors && `${ways} contacts`,
    key !== 'none' && (key === 'with-stripe' ? 'key at stripe' : 'key away from stripe'),
    isFolded && 'ribbon folded back at the dashes',
  ]
    .filter((part) => part !== false)
    .join(', ');

/** Millimetres from the first centre. */
function ruler(fromMm: number, toMm: number, y: number): MarkupPart {
  let d = '';
  const figures: Markup[] = [];
  for (let x = Math.ceil(fromMm); x <= toMm; x++) {
    const high = x % 10 === 0 ? 4 : x % 5 === 0 ? 2.8 : 1.8;
    d += `M${x} ${at(y)}V${at(y + high)}`;
    if (x % 10 === 0) figures.push(text(figure(x), x, y + 6.8, { size: LETTERS_MM, anchor: 'middle' }));
  }
  return [
    line(
      [
        { x: fromMm, y },
        { x: toMm, y },
      ],
      { line: INK, width: 0.2 },
    ),
    strokes(d, { line: INK, width: 0.15 }),
    figures,
  ];
}

const cross = ({ x, y }: Point, name: string): MarkupPart => [
  strokes(`M${at(x - 3)} ${at(y)}h6M${at(x)} ${at(y - 3)}v6`, { line: INK, width: 0.2 }),
  text(`${name}–${name}`, x + 1, y - 1, { size: LETTERS_MM, bold: true }),
];

/** Where a tile lies over or under the next: crosses in the middle of what both show. */
const joinMarks = (x: number | undefined, name: string | undefined, place: Place): MarkupPart =>
  x !== undefined &&
  name !== undefined && [
    line(
      [
        { x, y: 0 },
        { x, y: place.bottom + BELOW_MM + RULER_MM },
      ],
      { line: SOFT, width: 0.15, dash: '2 1' },
    ),
    cross({ x, y: place.top - ABOVE_MM / 2 - 1 }, name),
    cross({ x, y: place.bottom + BELOW_MM - 1 }, name),
  ];

/** A tile of the strip of one kind, with 1 unit for 1 mm. */
function tileDrawing(cut: Cut, { fromMm, toMm, joins }: Tile, scale: number): Block {
  const wide = ribbonWidthMm(cut.conductors);
  const over = Math.max(0, (bodyLong(cut) - wide) / 2);
  const place: Place = { top: 6 + ABOVE_MM + over, bottom: 6 + ABOVE_MM + over + wide };
  const height = place.bottom + BELOW_MM + over + RULER_MM;
  const [startMm, endMm] = [-cut.endMm, cut.cutMm - cut.endMm];
  const [left, right] = [fromMm + startMm, toMm + startMm];
  const ribbon = { left: Math.max(startMm, left), right: Math.min(endMm, right), ...place };
  const stripe = { ...ribbon, top: place.bottom - CONDUCTOR_MM };
  const hatch = Array.from({ length: Math.max(0, Math.floor((stripe.right - stripe.left) / 2)) }, (_, i) => {
    const x = stripe.left + 2 * i;
    return `M${at(x)} ${at(place.bottom)}L${at(x + 1.27)} ${at(stripe.top)}`;
  }).join('');
  const folds = cut.connectors.filter(({ isFolded }) => isFolded).flatMap(({ atMm }) => [atMm]);
  const seen = cut.connectors.filter(({ atMm }) => atMm > left - 4 && atMm < right + 4);
  const [x, width] = [left - EDGE_MM, right - left + 2 * EDGE_MM];
  const heightMm = height * scale;
  const square = line(
    [
      { x: startMm, y: place.top - 2 },
      { x: startMm, y: place.bottom + 2 },
    ],
    { line: INK, width: 0.5 },
  );
  const drawing = markup`<svg class="strip" role="img" aria-label="True-scale strip" width="${at(width * scale)}mm" height="${at(heightMm)}mm" viewBox="${at(x)} 0 ${at(width)} ${at(height)}">
${rect(ribbon, { fill: '#fff', line: INK, width: 0.3 })}${rect(stripe, { fill: '#fff', line: STRIPE, width: 0.2 })}${strokes(hatch, { line: STRIPE, width: 0.35 })}
${left <= startMm && square}${folds.map((fold) => [
  fold === 0 &&
    line(
      [
        { x: -3.5, y: place.top },
        { x: -3.5, y: place.bottom },
      ],
      { line: SOFT, width: 0.3, dash: '1 1' },
    ),
  fold > 0 &&
    line(
      [
        { x: fold + 3.5, y: place.top },
        { x: fold + 3.5, y: place.bottom },
      ],
      { line: SOFT, width: 0.3, dash: '1 1' },
    ),
])}
${
  right >= cut.spanMm &&
  line(
    [
      { x: endMm, y: place.top },
      { x: endMm, y: place.bottom },
    ],
    { line: FAINT, width: 0.3, dash: '2 1' },
  )
}
${seen.map((each) => connectorDrawing(each, each.atMm, place))}
${ruler(Math.max(left, Math.ceil(startMm)), Math.min(right, endMm), place.bottom + BELOW_MM + over)}
${joinMarks(joins.before === undefined ? undefined : left + OVERLAP_MM / 2, joins.before, place)}${joinMarks(joins.after === undefined ? undefined : right - OVERLAP_MM / 2, joins.after, place)}
</svg>`;
  return {
    heightMm: heightMm + SPACE_MM,
    body: markup`<div style="height:${at(heightMm + SPACE_MM)}mm">${drawing}</div>`,
  };
}

/** A bar that must measure 100 mm on paper. */
function checkBar(barMm: number | undefined): Block {
  const scale = correctionOf(barMm);
  const drawing = markup`<svg class="check-bar" role="img" aria-label="Check bar, 100 mm" width="${at(104 * scale)}mm" height="10mm" viewBox="-2 0 104 ${at(10 / scale)}">${strokes('M0 1V6M100 1V6M0 3.5H100M10 2.5v2M20 2.5v2M30 2.5v2M40 2.5v2M50 2v3M60 2.5v2M70 2.5v2M80 2.5v2M90 2.5v2', { line: INK, width: 0.3 })}${text('100 mm', 50, 8.5, { size: LETTERS_MM, anchor: 'middle' })}</svg>`;
  return { heightMm: 11, body: markup`<div style="height:11mm">${drawing}</div>` };
}

const barWords = (barMm: number | undefined): string =>
  barMm === undefined || barMm === 100
    ? 'Print at 100 %, not fitted to the page. Measure the bar with a steel rule: 100 mm, or write here ______ mm and have the sheet made again with that figure as the correction.'
    : `Corrected for a printer that made ${figure(barMm)} mm of 100 mm. The bar must now measure 100 mm; if it does not, have the sheet made without a correction and measure again.`;

/** Each kind of ribbon that is used, as a strip to lay the ribbon on. */
export const stripsPage: PageMaker = ({ take, options }) => {
  const byCut = groupBy(piecesOf(take), ({ cut }) => cut);
  if (byCut.size === 0) return [];
  const { paper, barMm } = options;
  const room = bodyMm(paper, true);
  const scale = correctionOf(barMm);
  const mostMm = room.widthMm / scale - 2 * EDGE_MM;
  const strips = [...byCut].flatMap(([cut, pieces]) =>
    stripBlocks(cut, pieces, { mostMm, scale, widthMm: room.widthMm }),
  );
  const head = [paragraph(barWords(barMm), room.widthMm), checkBar(barMm)];
  const headMm = head.reduce((sum, { heightMm }) => sum + heightMm, 0);
  return stack(strips, room.heightMm - headMm).map(
    (body): SheetPage => ({
      id: 'strips',
      title: 'True-scale strips',
      side: 'rear',
      lies: true,
      body: markup`${head.map((block) => block.body)}${body}`,
    }),
  );
};

function stripBlocks(
  cut: Cut,
  pieces: readonly Piece[],
  { mostMm, scale, widthMm }: { readonly mostMm: number; readonly scale: number; readonly widthMm: number },
): Block[] {
  const tiles = tilesOf(cut.cutMm, mostMm);
  const names = list(
    pieces.map(({ ribbon }) => ribbon.name),
    12,
  );
  const captions = [...groupBy(cut.connectors, (each) => captionOf(each, cut.conductors))].map(
    ([caption, some]) =>
      `${list(
        some.map(({ number }) => `${number}`),
        30,
      )}: ${caption}`,
  );
  return tiles.map((tile, i): Block => {
    const which = tiles.length > 1 ? `, strip ${i + 1} of ${tiles.length}` : '';
    const words = `${cut.facts.kind.name}${which}. For ${names}. Cut ${mm(cut.cutMm)}, first centre ${mm(cut.endMm)} from the square end, last at ${mm(cut.spanMm)}. Seen from the rear, stripe hatched at the bottom. ${captions.join('; ')}.`;
    const said = paragraph(words, widthMm);
    const drawn = tileDrawing(cut, tile, scale);
    return { heightMm: said.heightMm + drawn.heightMm, body: markup`${said.body}${drawn.body}` };
  });
}
