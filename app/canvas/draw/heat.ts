import type { Knot, PlacedModule, Run, SpanCurrent } from '../../../src/index.ts';
import { type Box, meets, moduleBox, type Point, pointBetween, type Sheet } from '../../../src/index.ts';
import type { Theme } from '../theme.ts';
import { LEAST_SCALE } from './labels.ts';
import { circuitBox } from './modules.ts';
import {
  addBox,
  addLine,
  boxAround,
  CENTRED,
  type Context,
  type Heat,
  LEAST_TEXT,
  type Paper,
  paint,
  write,
  writeUpward,
} from './paper.ts';
import { widthOf } from './text-width.ts';

/** What a module shows: how much of what is allowed it has lost, and the figure; or that nothing arrives. */
export interface HeatFigure {
  /** The first that fits across the module is written; if none does, the last, upward. */
  readonly texts: readonly [string, ...string[]];
  /** Of what is allowed; absent where the line does not arrive though the module needs it. */
  readonly share?: number;
}

/**
 * Steps of the scale end at these shares of what is allowed, each twice the one before: most modules lose little, and
 * are told apart by it. The last step has no end.
 */
export const HEAT_STEPS = [1 / 32, 1 / 16, 1 / 8, 1 / 4, 1 / 2, 1] as const;

/** Which step a share of what is allowed belongs to; a limit counts as exceeded beyond a millionth. */
export const heatStep = (share: number): number =>
  HEAT_STEPS.filter((end) => share > end * (1 + 1e-6)).length;

/** A colour between two such as #31424b. */
function mix(from: string, to: string, share: number): string {
  const parts = [1, 3, 5].map((at) => {
    const [a, b] = [from, to].map((colour) => Number.parseInt(colour.slice(at, at + 2), 16)) as [
      number,
      number,
    ];
    return Math.round(a + (b - a) * share)
      .toString(16)
      .padStart(2, '0');
  });
  return `#${parts.join('')}`;
}

/** The scale as it lies on circuit boards, or on panels; the step beyond what is allowed bears a frame besides. */
export function heatColours(
  { board, panel, warm, warmPanel }: Theme,
  side: Sheet['side'],
): readonly string[] {
  const [cold, hot] = side === 'rear' ? [board, warm] : [panel, warmPanel];
  const last = HEAT_STEPS.length;
  return Array.from({ length: last + 1 }, (_, step) => mix(cold, hot, step / last));
}

const tintBox = (sheet: Sheet, module: PlacedModule): Box =>
  sheet.side === 'rear' ? circuitBox(sheet, module) : moduleBox(sheet, module);

const HATCH_PX = 7;

/** Slanting lines over a box. */
function addHatch(ctx: Context, { left, top, right, bottom }: Box): void {
  const height = bottom - top;
  for (let x = left + HATCH_PX - height; x < right; x += HATCH_PX) {
    const from = Math.max(x, left);
    const to = Math.min(x + height, right);
    addLine(ctx, [
      { x: from, y: bottom - (from - x) },
      { x: to, y: bottom - (to - x) },
    ]);
  }
}

/** The letters and the ground of all plates. */
const PLATE_PX = LEAST_TEXT;
const PLATE_HEIGHT = PLATE_PX + 4;

const plateWidth = (ctx: Context, text: string): number => widthOf(ctx, text, PLATE_PX, 650) + 7;

interface Plate {
  readonly text: string;
  readonly box: Box;
  /** Written upward, where there is no room across. */
  readonly upward?: boolean;
}

function drawPlates(ctx: Context, { theme }: Paper, plates: readonly Plate[]): void {
  paint(ctx, { fill: theme.sheet, line: theme.ink, width: 0.8 }, plates, ({ box }) => addBox(ctx, box));
  for (const { text, box, upward } of plates) {
    const [x, y] = [(box.left + box.right) / 2, (box.top + box.bottom) / 2];
    const lettering = { px: PLATE_PX, colour: theme.ink, weight: 650, ...CENTRED };
    if (upward) writeUpward(ctx, text, x, y, lettering);
    else write(ctx, text, x, y + 0.5, lettering);
  }
}

/** Room that the front keeps for the colour of a kind and its width in figures. */
const frontFoot = (scale: number): number => 10 * scale + 14;

/** At the foot of a module, where no header lies. */
function plateOn(ctx: Context, sheet: Sheet, module: PlacedModule, { texts }: HeatFigure): Plate {
  const { left, right, bottom } = moduleBox(sheet, module);
  const foot = bottom - (sheet.side === 'front' ? frontFoot(sheet.scale) : 2);
  const x = (left + right) / 2;
  const fits = texts.find((each) => plateWidth(ctx, each) <= right - left);
  const text = fits ?? (texts.at(-1) as string);
  const width = plateWidth(ctx, text);
  if (fits) {
    return { text, box: boxAround({ x, y: foot - PLATE_HEIGHT / 2 }, width / 2, PLATE_HEIGHT / 2) };
  }
  return { text, box: boxAround({ x, y: foot - width / 2 }, PLATE_HEIGHT / 2, width / 2), upward: true };
}

/** Where along a lead its figure may stand, counted from the end at a module. */
const ALONG = [0.16, 0.3, 0.44, 0.58, 0.72] as const;

const onModule = ({ header }: Knot): boolean => header?.owner.type === 'module';

/** Places for the figure of a stretch of a run, the best first. */
function placesOn(run: Run, a: number, b: number): Point[] {
  const [from, to] = [run.knots[a] as Knot, run.knots[b] as Knot];
  if (run.ribbon.facts.flat) {
    const { x, y } = pointBetween(from, to, 0.5);
    const beside = run.half + PLATE_HEIGHT / 2 + 2;
    return [y, y - beside, y + beside, y - beside - PLATE_HEIGHT].map((at) => ({ x, y: at }));
  }
  const each = run.line.length / (run.knots.length - 1);
  const line = run.line.slice(a * each, b * each);
  const ends = onModule(to) ? line.toReversed() : line;
  return ALONG.map((share) => ends[Math.round(share * (ends.length - 1))] as Point);
}

/** "350", on a band with the way it flows, and what each conductor carries where that is much. */
function currentText(
  { ma, conductors }: SpanCurrent,
  flowsRight: boolean | undefined,
  contactMa: number,
): string {
  const all = Math.round(Math.abs(ma));
  const each = Math.abs(ma) / conductors;
  const shared = each > contactMa / 2 && conductors > 1 ? ` = ${conductors} × ${Math.round(each)}` : '';
  if (all === 0 || flowsRight === undefined) return `${all}${shared}`;
  return flowsRight ? `${all}${shared} ▸` : `◂ ${all}${shared}`;
}

/** The figures of one ribbon, clear of what has a place already. */
function* platesAlong(
  ctx: Context,
  run: Run,
  spans: readonly SpanCurrent[],
  contactMa: number,
  taken: Box[],
): Generator<Plate> {
  const orderOf = (connector: number): number => run.knots.findIndex((knot) => knot.connector === connector);
  for (const span of spans) {
    const [from, to] = [orderOf(span.from), orderOf(span.to)];
    const along = (run.knots[to] as Knot).x - (run.knots[from] as Knot).x;
    const flowsRight = run.ribbon.facts.flat ? along * span.ma > 0 : undefined;
    const text = currentText(span, flowsRight, contactMa);
    const width = plateWidth(ctx, text);
    const places = placesOn(run, Math.min(from, to), Math.max(from, to));
    const boxes = places.map((at) => boxAround(at, width / 2, PLATE_HEIGHT / 2));
    const free = boxes.find((box) => !taken.some((other) => meets(box, other)));
    const box = free ?? (boxes.at(-1) as Box);
    taken.push(box);
    yield { text, box };
  }
}

/** What the heat map is made of. */
export interface HeatFacts {
  /** By module; those that do not use the line and are not reached by it are left out. */
  readonly figures: ReadonlyMap<string, HeatFigure>;
  /** By ribbon, along it. */
  readonly spans: ReadonlyMap<string, readonly SpanCurrent[]>;
  /** What a contact carries, mA. */
  readonly contactMa: number;
}

/** The heat map of one line. */
export function heatOf({ figures, spans, contactMa }: HeatFacts): Heat {
  const shownOf = (modules: readonly PlacedModule[]) =>
    modules.flatMap((module) => {
      const figure = figures.get(module.id);
      return figure ? [{ module, figure }] : [];
    });
  return {
    tint(ctx, { sheet, theme }, modules) {
      const shown = shownOf(modules);
      heatColours(theme, sheet.side).forEach((fill, step) => {
        const look = step === HEAT_STEPS.length ? { fill, line: theme.pin, width: 2.5 } : { fill };
        const some = shown.filter(({ figure: { share } }) => share !== undefined && heatStep(share) === step);
        paint(ctx, look, some, ({ module }) => addBox(ctx, tintBox(sheet, module), 1));
      });
      const missing = shown.filter(({ figure }) => figure.share === undefined);
      const line = sheet.side === 'rear' ? theme.boardEdge : theme.inkFaint;
      paint(ctx, { line, width: 1 }, missing, ({ module }) => addHatch(ctx, tintBox(sheet, module)));
    },
    currents(ctx, paper, runs, labels) {
      const { sheet, view } = paper;
      if (sheet.scale < LEAST_SCALE) return;
      const taken = [...labels];
      const plates = runs.flatMap((run) => [
        ...platesAlong(ctx, run, spans.get(run.ribbon.id) ?? [], contactMa, taken),
      ]);
      drawPlates(
        ctx,
        paper,
        plates.filter(({ box }) => meets(view, box)),
      );
    },
    figures(ctx, paper, modules) {
      drawPlates(
        ctx,
        paper,
        shownOf(modules).map(({ module, figure }) => plateOn(ctx, paper.sheet, module, figure)),
      );
    },
  };
}
