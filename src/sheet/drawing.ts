import { type Piece, piecesOf, stripCorners, stripeCorners } from '../drawing/band.ts';
import { beside } from '../drawing/beside.ts';
import { pointBetween } from '../drawing/connector-points.ts';
import { tickCorners } from '../drawing/connector-tick.ts';
import { overOf } from '../drawing/draw-order.ts';
import { freeSpans, hpText } from '../drawing/free-spans.ts';
import { headerHalfMm, pin1Shapes } from '../drawing/header-shapes.ts';
import type { Knot } from '../drawing/knot.ts';
import { type Run, runOf } from '../drawing/runs.ts';
import { CONNECTOR_MM, sectionLine, sliceOf } from '../drawing/section.ts';
import {
  type Box,
  boardBox,
  headerPoint,
  layOutForPaper,
  moduleBox,
  type Point,
  RAIL_END_MM,
  RAIL_MM,
  rowOf,
  type Sheet,
  type SheetRow,
  xOf,
  yOf,
  zOf,
} from '../drawing/sheet.ts';
import { CONDUCTOR_MM, pinOffsets } from '../geometry/connector.ts';
import type { PlacedBoard, PlacedHeader, PlacedModule } from '../geometry/place.ts';
import { HP_MM, panelHoles } from '../geometry/rack.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import { type Markup, type MarkupPart, markup } from './markup.ts';
import {
  at,
  dot,
  FAINT,
  INK,
  line,
  linesAcross,
  nameIn,
  oneLine,
  PALE,
  plate,
  polygon,
  rect,
  SOFT,
  STRIPE,
  SVG_FONT,
  strokes,
  text,
} from './svg.ts';

export const VIEWS = ['front', 'rear', 'section'] as const;

export type View = (typeof VIEWS)[number];

/** A view of some rows of a take; mm of the case, so that a scale is one figure. */
export interface Drawing {
  readonly view: View;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Left end of what is shown: below 0 where a module stands out beyond its row. */
  readonly leftMm: number;
  /** Top of the rows shown. */
  readonly topMm: number;
  /** What is drawn, for letters of a height in mm of the case; a cut-out has no room for the titles of rows. */
  body(lettersMm: number, isTitled?: boolean): Markup;
}

const PANELS = { panels: true, depthScale: 0 } as const;
const FROM_ABOVE = { panels: false, depthScale: 1 } as const;

/** White around a drawing, mm of the case. */
const AROUND_MM = 4;

/** Of the case's own width, shown of what stands out at either end. */
const MOST_OUT = 0.2;

/** How broad a drawing is: the rows, and modules that stand out beyond them. */
function breadthOf({ places }: WholeTake, sheet: Sheet): Pick<Drawing, 'leftMm' | 'widthMm'> {
  const out = sheet.width * MOST_OUT;
  let [left, right] = [0, sheet.width];
  for (const module of places.modules) {
    const box = moduleBox(sheet, module);
    left = Math.min(left, Math.max(-out, box.left));
    right = Math.max(right, Math.min(sheet.width + out, box.right));
  }
  return { leftMm: left, widthMm: right - left };
}

/** A drawing of all rows of a take, or of those from one up to another. */
export function drawingOf(take: WholeTake, view: View, from = 0, to = take.places.rows.length): Drawing {
  const sheet = layOutForPaper(
    take,
    view === 'front' ? 'front' : 'rear',
    view === 'section' ? FROM_ABOVE : PANELS,
  );
  const first = sheet.rows[from];
  const last = sheet.rows[to - 1];
  const topMm = first && from > 0 ? first.top - 15 : 0;
  const bottom =
    last && to < sheet.rows.length ? Math.max(last.sectionBottom, last.rulerY) + 6 : sheet.height;
  return {
    view,
    ...breadthOf(take, sheet),
    heightMm: bottom - topMm,
    topMm,
    body: (lettersMm, isTitled = true) => {
      const pen: Pen = {
        sheet,
        take,
        size: lettersMm,
        isTitled,
        prefix: from === 0 ? view : `${view}-${from + 1}`,
      };
      return view === 'front' ? frontBody(pen) : view === 'rear' ? rearBody(pen) : sectionBody(pen);
    },
  };
}

/** A drawing as an SVG of a size of its own, at a scale: paper mm per mm of the case. */
export function svgOf(drawing: Drawing, scale: number, lettersMm: number, label: string): Markup {
  const { widthMm, heightMm, leftMm, topMm } = drawing;
  const box = [leftMm - AROUND_MM, topMm - AROUND_MM, widthMm + 2 * AROUND_MM, heightMm + 2 * AROUND_MM];
  const [width, height] = [box[2] as number, box[3] as number].map((mm) => at(mm * scale));
  return markup`<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="${label}" width="${width}mm" height="${height}mm" viewBox="${box.map(at).join(' ')}" font-family="${SVG_FONT}">${drawing.body(lettersMm / scale)}</svg>`;
}

/** The scale at which a drawing just fits into a room, its margin included. */
export const fitScale = (
  { widthMm, heightMm }: Drawing,
  room: { widthMm: number; heightMm: number },
): number => Math.min(room.widthMm / (widthMm + 2 * AROUND_MM), room.heightMm / (heightMm + 2 * AROUND_MM));

/** What every part of a drawing needs: where things lie, and how high letters are, mm of the case. */
interface Pen {
  readonly sheet: Sheet;
  readonly take: WholeTake;
  readonly size: number;
  readonly isTitled: boolean;
  /** Ids of layers are told apart where a document holds several drawings. */
  readonly prefix: string;
}

const layer = ({ prefix }: Pen, name: string, ...parts: readonly MarkupPart[]): Markup =>
  markup`<g id="${prefix}-${name}"><title>${name}</title>${parts}</g>`;

const rowName = ({ placed }: SheetRow): string => placed.row.name || `Row ${placed.index + 1}`;

/** Beyond this a tick at each HP would be a grey bar. */
const MOST_FINE_HP = 400;

const RULER_STEPS = [1, 2, 5, 10, 20, 50] as const;

/** Ticks at every HP and figures where they have room, from the front's left end. */
function ruler({ size }: Pen, row: SheetRow, y: number): MarkupPart {
  const { widthHp } = row.placed.row;
  const step = RULER_STEPS.find((hp) => hp * HP_MM >= size * 2.6) ?? 100;
  let ticks = '';
  const fine = widthHp > MOST_FINE_HP ? 10 : 1;
  for (let hp = 0; hp <= widthHp; hp += fine) {
    const long = hp % 10 === 0 ? 3.4 : hp % 5 === 0 ? 2.6 : 1.6;
    ticks += `M${at(xOf(row, hp * HP_MM))} ${at(y)}v${long}`;
  }
  const figures: Markup[] = [];
  for (let hp = 0; hp <= widthHp; hp += step)
    figures.push(
      text(String(hp), xOf(row, hp * HP_MM), y + 4 + size * 0.8, { size, anchor: 'middle', ink: SOFT }),
    );
  return [strokes(ticks, { line: INK, width: 0.25 }), figures];
}

/** The end of the row that is the front's left: on paper too it must be known which way round the case lies. */
function corner({ size, sheet }: Pen, row: SheetRow): MarkupPart {
  const into = Math.sign(row.stepX);
  const x = row.originX - into * RAIL_END_MM;
  const top = sheet.rows.some(({ depthScale }) => depthScale > 0) ? row.sectionTop : row.top;
  const mark = [
    { x, y: top },
    { x: x + into * 7, y: top },
    { x, y: top + 7 },
  ];
  return [
    polygon(mark, { fill: INK }),
    text('this end = front left', x, row.titleY, {
      size,
      clear: true,
      anchor: into > 0 ? 'start' : 'end',
      bold: true,
    }),
  ];
}

function spansOf({ take }: Pen, { placed }: SheetRow) {
  return freeSpans(
    placed.row.widthHp,
    take.places.modules.filter(({ row }) => row.index === placed.index),
  );
}

function title(pen: Pen, row: SheetRow, seen: string): MarkupPart {
  if (!pen.isTitled) return '';
  const free = spansOf(pen, row).reduce((sum, { fromHp, toHp }) => sum + toHp - fromHp, 0);
  const words = `${rowName(row)} · ${seen} · ${hpText(free)} free`;
  // The mark of the front's left end stands at the other end of this line in the rear view, and above it from the front.
  const room = row.right - row.left - pen.size * 15;
  const right = pen.sheet.side === 'front';
  const x = right ? row.right + RAIL_END_MM : row.left - RAIL_END_MM;
  const shown = oneLine(words, room, pen.size);
  return text(shown, x, row.titleY, {
    size: pen.size * 1.1,
    bold: true,
    clear: true,
    anchor: right ? 'end' : 'start',
  });
}

function rails(pen: Pen): MarkupPart {
  return pen.sheet.rows.map((row) => {
    const { left, right, top, bottom } = row;
    const [from, to] = [left - RAIL_END_MM, right + RAIL_END_MM];
    return [
      rect({ left: from, right: to, top, bottom: top + RAIL_MM }, { fill: PALE, line: INK, width: 0.25 }),
      rect({ left: from, right: to, top: bottom - RAIL_MM, bottom }, { fill: PALE, line: INK, width: 0.25 }),
      ruler(pen, row, bottom),
    ];
  });
}

const titles = (pen: Pen): MarkupPart =>
  pen.sheet.rows.map((row) => [
    corner(pen, row),
    title(pen, row, pen.sheet.side === 'rear' ? 'seen from the rear' : 'seen from the front'),
  ]);

/** Where dimensions of free stretches run, mm above the panels' bottom edge. */
const FREE_MM = 16;

function freeRoom(pen: Pen): MarkupPart {
  const { size } = pen;
  return pen.sheet.rows.map((row) =>
    spansOf(pen, row).map(({ fromHp, toHp }) => {
      const ends = [xOf(row, fromHp * HP_MM), xOf(row, toHp * HP_MM)];
      const [left, right] = [Math.min(...ends) + 0.6, Math.max(...ends) - 0.6];
      const y = yOf(row, FREE_MM);
      const bar = `M${at(left)} ${at(y)}H${at(right)}M${at(left)} ${at(y - 2)}v4M${at(right)} ${at(y - 2)}v4`;
      const words = hpText(toHp - fromHp);
      const isRoomy = right - left > size * words.length * 0.7;
      return [
        strokes(bar, { line: SOFT, width: 0.3 }),
        isRoomy
          ? text(words, (left + right) / 2, y - size * 0.5, {
              size,
              anchor: 'middle',
              ink: SOFT,
              clear: true,
            })
          : text(words, (left + right) / 2 + size * 0.35, y - 3, {
              size,
              upward: true,
              ink: SOFT,
              clear: true,
            }),
      ];
    }),
  );
}

function panel(pen: Pen, module: PlacedModule): MarkupPart {
  const row = rowOf(pen.sheet, module);
  const { widthHp } = module.facts.kind;
  return [
    rect(moduleBox(pen.sheet, module), { fill: '#fff', line: INK, width: 0.45 }),
    panelHoles(widthHp, module.facts.heightU).map(({ xMm, yMm }) =>
      dot(xOf(row, module.leftMm + xMm), yOf(row, yMm), 1.3, { fill: '#fff', line: SOFT, width: 0.3 }),
    ),
  ];
}

function frontBody(pen: Pen): Markup {
  const { take, sheet, size } = pen;
  const { modules } = take.places;
  return markup`${layer(pen, 'rows', rails(pen))}${layer(
    pen,
    'modules',
    modules.map((module) => {
      const box = moduleBox(sheet, module);
      const middle = (box.left + box.right) / 2;
      const width = `${at(module.facts.kind.widthHp)}`;
      return [
        panel(pen, module),
        nameIn(module.name, { ...box, top: box.top + 8, bottom: box.bottom - 8 - 2.6 * size }, size),
        text(width, middle, box.bottom - 7.4 - size * 1.1, { size, anchor: 'middle', ink: SOFT }),
        text('HP', middle, box.bottom - 7.4, { size, anchor: 'middle', ink: SOFT }),
      ];
    }),
  )}${layer(pen, 'free', freeRoom(pen))}${layer(pen, 'names', titles(pen))}`;
}

function headerDrawn({ sheet }: Pen, header: PlacedHeader): MarkupPart {
  const middle = headerPoint(sheet, header);
  const half = headerHalfMm(header);
  const box = {
    left: middle.x - half.x,
    right: middle.x + half.x,
    top: middle.y - half.y,
    bottom: middle.y + half.y,
  };
  const pins = pinOffsets(header.bus.pins).map(({ alongMm, acrossMm }) => {
    const [dx, dy] = header.axis === 'vertical' ? [acrossMm, alongMm] : [alongMm, acrossMm];
    return `M${at(middle.x + dx - 0.4)} ${at(middle.y + dy - 0.4)}h.8v.8h-.8z`;
  });
  return [
    rect(box, { fill: '#fff', line: SOFT, width: 0.3 }),
    strokes(pins.join(''), { fill: SOFT }),
    header.pin1 &&
      pin1Shapes(header, middle, header.pin1, sheet.scale).map((shape) => polygon(shape, { fill: INK })),
  ];
}

function boardDrawn(pen: Pen, board: PlacedBoard): MarkupPart {
  const box = boardBox(pen.sheet, board);
  return rect(box, { line: INK, width: 0.5, dash: '4 2' });
}

function boardName({ sheet, take, size }: Pen, board: PlacedBoard): MarkupPart {
  const { left, top, right } = boardBox(sheet, board);
  const used = board.headers.filter((header) => take.wiring.seatedOn.has(header)).length;
  const words = oneLine(
    `${board.name} · ${used} of ${board.headers.length} used`,
    Math.max(right - left, 60),
    size,
  );
  return text(words, left + 1, top + size * 1.05, { size, bold: true, clear: true });
}

/** Least width of a stripe, mm of the case for each mm of letters: it must be seen on paper. */
const STRIPE_SHARE = 0.34;

/** A stripe: dark and light in turn along its edge, so that it is told from every other line without colour. */
function stripe(points: readonly Point[], width: number): MarkupPart {
  return [
    line(points, { line: STRIPE, width }),
    line(points, { line: '#fff', width: width * 0.55, dash: `${at(width * 0.7)} ${at(width * 1.1)}` }),
  ];
}

function bandPiece(piece: Piece, width: number): MarkupPart {
  const [a, b, c, d] = stripeCorners(piece, width) as [Point, Point, Point, Point];
  const conductors: string[] = [];
  if (!piece.crossed && piece.y0 === piece.y1) {
    for (let y = -piece.half + CONDUCTOR_MM; y < piece.half - 0.1; y += CONDUCTOR_MM)
      conductors.push(`M${at(piece.x0)} ${at(piece.y0 + y)}H${at(piece.x1)}`);
  }
  return [
    polygon(stripCorners(piece, -piece.half, piece.half), { fill: PALE, line: INK, width: 0.3 }),
    strokes(conductors.join(''), { line: FAINT, width: 0.12 }),
    stripe([pointBetween(a, d, 0.5), pointBetween(b, c, 0.5)], width),
  ];
}

function connector(knot: Knot): MarkupPart {
  const { x, y, halfWidth, halfHeight, state, pin1 } = knot;
  const box = { left: x - halfWidth, right: x + halfWidth, top: y - halfHeight, bottom: y + halfHeight };
  const body =
    state === 'seated'
      ? rect(box, { fill: '#222', line: '#fff', width: 0.3 })
      : state === 'missing'
        ? rect(box, { fill: '#fff', line: INK, width: 1 })
        : rect(box, { fill: '#fff', line: INK, width: 0.5, dash: '1.6 1.2' });
  const tick =
    pin1 && state !== 'free' && polygon(tickCorners(knot, pin1), { fill: state === 'seated' ? '#fff' : INK });
  return [body, tick];
}

/** Where a ribbon's name stands: between two of its connectors, or before its left end. */
function platePoint({ knots, line: way, ribbon, half }: Run, width: number): Point {
  if (!ribbon.facts.flat) return way[way.length >> 1] as Point;
  const across = [...knots].sort((a, b) => a.x - b.x);
  for (let i = 1; i < across.length; i++) {
    const [a, b] = [across[i - 1] as Knot, across[i] as Knot];
    if (b.x - b.halfWidth - a.x - a.halfWidth >= width + 1) return pointBetween(a, b, 0.5);
  }
  const first = across[0] as Knot;
  return { x: first.x - first.halfWidth - 1.5 - width / 2, y: first.y - half * 0 };
}

function runDrawn({ size }: Pen, run: Run): MarkupPart {
  const { ribbon, half, line: way, knots } = run;
  const wide = Math.max(CONDUCTOR_MM, size * STRIPE_SHARE);
  if (ribbon.facts.flat)
    return [piecesOf(run, 1).map((piece) => bandPiece(piece, wide)), knots.map(connector)];
  const width = Math.max(2 * half, wide * 2.2);
  return [
    line(way, { line: '#fff', width: width + 1.6 }),
    line(way, { line: INK, width: width + 0.6 }),
    line(way, { line: '#fff', width }),
    stripe(beside(way, (width - wide) / 2), wide),
    knots.map(connector),
  ];
}

const runsOf = ({ sheet, take }: Pen): Run[] =>
  take.wiring.ribbons
    .flatMap((ribbon) => runOf(sheet, take, ribbon) ?? [])
    .sort((a, b) => overOf(a.ribbon) - overOf(b.ribbon));

function rearBody(pen: Pen): Markup {
  const { take, sheet, size } = pen;
  const { modules, boards } = take.places;
  const runs = runsOf(pen);
  const [links, leads] = [runs.filter(({ feeds }) => !feeds), runs.filter(({ feeds }) => feeds)];
  const names = (those: readonly Run[]): MarkupPart =>
    those.map((run) =>
      plate(run.ribbon.name, platePoint(run, size * (run.ribbon.name.length * 0.8 + 1)), size),
    );
  return markup`${layer(pen, 'rows', rails(pen))}${layer(
    pen,
    'modules',
    modules.map((module) => panel(pen, module)),
    modules.flatMap(({ headers }) => headers.map((header) => headerDrawn(pen, header))),
  )}${layer(
    pen,
    'boards',
    boards.map((board) => boardDrawn(pen, board)),
    boards.flatMap(({ headers }) => headers.map((header) => headerDrawn(pen, header))),
  )}${layer(
    pen,
    'links',
    links.map((run) => runDrawn(pen, run)),
  )}${layer(
    pen,
    'leads',
    leads.map((run) => runDrawn(pen, run)),
  )}${layer(
    pen,
    'names',
    titles(pen),
    modules.map((module) => nameIn(module.name, nameBox(moduleBox(sheet, module)), size)),
    boards.map((board) => boardName(pen, board)),
    names(links),
    names(leads),
  )}`;
}

const nameBox = (box: Box): Box => ({
  ...box,
  top: box.top + RAIL_MM + 1.5,
  bottom: box.bottom - RAIL_MM - 2,
});

const slice = (row: SheetRow, left: number, right: number, fromMm: number, toMm: number): Box => {
  const ends = [zOf(row, fromMm), zOf(row, toMm)];
  return { left, right, top: Math.min(...ends), bottom: Math.max(...ends) };
};

function sectionGround(pen: Pen, row: SheetRow): MarkupPart {
  const { left, right, sectionTop, sectionBottom, placed } = row;
  const [from, to] = [left - RAIL_END_MM, right + RAIL_END_MM];
  let ticks = '';
  for (let mm = 0; mm <= placed.row.depthMm; mm += 10)
    ticks += `M${at(from)} ${at(zOf(row, mm))}h${mm % 50 === 0 ? 3 : 1.8}`;
  return [
    line(
      [
        { x: from, y: sectionTop },
        { x: to, y: sectionTop },
      ],
      { line: INK, width: 0.9 },
    ),
    line(
      [
        { x: from, y: sectionBottom },
        { x: to, y: sectionBottom },
      ],
      { line: INK, width: 0.5 },
    ),
    line(
      [
        { x: from, y: sectionTop },
        { x: from, y: sectionBottom },
      ],
      { line: INK, width: 0.25 },
    ),
    strokes(ticks, { line: INK, width: 0.25 }),
    corner(pen, row),
    title(pen, row, `from above, floor below · ${at(placed.row.depthMm)} mm deep`),
    ruler(pen, row, sectionBottom),
  ];
}

function moduleSlice({ take, sheet, size }: Pen, module: PlacedModule): MarkupPart {
  const row = rowOf(sheet, module);
  const { fullMm, bareMm, known } = sliceOf(module, take);
  const { left, right } = moduleBox(sheet, module);
  const body = slice(row, left, right, 0, bareMm);
  const depth = known ? `${at(fullMm)} mm` : 'depth ?';
  const step = size * 1.15;
  const upward = row.sectionBottom - body.top - 1;
  const across = linesAcross(module.name, right - left, size);
  const isRoomy =
    across && right - left > size * 4.2 && (across.length + 1.1) * step <= body.bottom - body.top;
  return [
    rect(slice(row, left, right, 0, fullMm), { line: SOFT, width: 0.3, dash: '1.4 1' }),
    rect(body, {
      fill: known ? '#f4f5f6' : '#fff',
      line: INK,
      width: 0.4,
      ...(known ? {} : { dash: '3 1.5' }),
    }),
    nameIn(module.name, { ...body, top: body.top + 0.6 }, size, upward),
    isRoomy &&
      text(depth, (left + right) / 2, body.bottom - size * 0.4, { size, anchor: 'middle', ink: SOFT }),
  ];
}

function ribbonSlice({ take, sheet }: Pen, run: Run): MarkupPart {
  if (!run.ribbon.facts.flat) return '';
  const points = sectionLine(sheet, run, take.limits.connectorBodyMm);
  return [
    points.length > 1 && [
      line(points, { line: INK, width: 1.7 }),
      line(points, { line: '#fff', width: 0.9 }),
    ],
    run.knots.map(({ x, halfWidth, header, stray }) => {
      if (header?.zMm === undefined || stray?.otherRow) return '';
      const row = rowOf(sheet, header);
      return rect(slice(row, x - halfWidth, x + halfWidth, header.zMm - CONNECTOR_MM, header.zMm), {
        fill: '#222',
      });
    }),
  ];
}

function sectionBody(pen: Pen): Markup {
  const { take, sheet, size } = pen;
  const { modules, boards } = take.places;
  return markup`${layer(
    pen,
    'case',
    sheet.rows.map((row) => sectionGround(pen, row)),
  )}${layer(
    pen,
    'boards',
    boards.map((board) => {
      const row = rowOf(sheet, board);
      const { depthMm } = row.placed.row;
      const { left, right } = boardBox(sheet, board);
      const box = slice(row, left, right, depthMm - Math.max(board.board.riseMm ?? 0, 1.6), depthMm);
      return [
        rect(box, { fill: PALE, line: INK, width: 0.3 }),
        text(oneLine(board.name, right - left, size), (left + right) / 2, box.top - size * 0.25, {
          size,
          anchor: 'middle',
          clear: true,
        }),
      ];
    }),
  )}${layer(
    pen,
    'modules',
    modules.map((module) => moduleSlice(pen, module)),
  )}${layer(
    pen,
    'links',
    runsOf(pen).map((run) => ribbonSlice(pen, run)),
  )}`;
}
