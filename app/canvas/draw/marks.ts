import {
  type Box,
  type DerivedTake,
  type Level,
  type Note,
  type Point,
  type Sheet,
  spotsOf,
  xOf,
  yOf,
} from '../../../src/index.ts';
import type { Theme } from '../theme.ts';
import { addDot, addPolygon, CENTRED, type Context, type Paper, paint, write } from './paper.ts';

/** A sign on the drawing: the worst of the notes that stand there, and how many they are. */
export interface Mark extends Point {
  readonly level: Level;
  readonly count: number;
}

/** Marks nearer than this to one another are one, px. */
const APART = 24;

const RADIUS = 10.5;

/** The front shows no headers to point at, but names on the upper half of the panels. */
const BELOW_NAMES_MM = 44;

/** How far a mark stands above its spot, so as not to hide it, px. */
const above = (scale: number): number => 9 * scale + 12;

/** A note in focus stands alone; else reminders and what was put away bear no mark. */
const isShown = ({ level, accepted, key }: Note, focus: string | null): boolean =>
  focus === null ? level !== 'reminder' && !accepted : key === focus;

function pointsOf(sheet: Sheet, take: DerivedTake, note: Note): Point[] {
  const lift = above(sheet.scale);
  return spotsOf(note, take).flatMap(({ row: id, xMm, yMm }) => {
    const row = sheet.rowById.get(id);
    if (!row) return [];
    const y = row.side === 'front' ? Math.min(yMm, BELOW_NAMES_MM) : yMm;
    return [{ x: xOf(row, xMm), y: Math.max(yOf(row, y) - lift, row.top + RADIUS) }];
  });
}

/** Marks of notes, worst first; those that would lie on one another are merged. */
export function marksOf(
  sheet: Sheet,
  take: DerivedTake,
  notes: readonly Note[],
  focus: string | null,
): Mark[] {
  const marks: { x: number; y: number; level: Level; count: number }[] = [];
  const cells = new Map<string, (typeof marks)[number]>();
  const cellAt = (x: number, y: number): string => `${Math.round(x / APART)} ${Math.round(y / APART)}`;
  const near = ({ x, y }: Point) => {
    for (const dx of [0, -APART, APART]) {
      for (const dy of [0, -APART, APART]) {
        const mark = cells.get(cellAt(x + dx, y + dy));
        if (mark && Math.hypot(mark.x - x, mark.y - y) < APART) return mark;
      }
    }
    return undefined;
  };
  for (const note of notes) {
    if (!isShown(note, focus)) continue;
    for (const point of pointsOf(sheet, take, note)) {
      const known = near(point);
      if (known) {
        known.count++;
        continue;
      }
      const mark = { ...point, level: note.level, count: 1 };
      marks.push(mark);
      cells.set(cellAt(point.x, point.y), mark);
    }
  }
  return marks;
}

/** All that marks paint; null where there are none. */
export function marksBox(marks: readonly Mark[]): Box | null {
  if (marks.length === 0) return null;
  const around = RADIUS + 5;
  const xs = marks.map(({ x }) => x);
  const ys = marks.map(({ y }) => y);
  return {
    left: Math.min(...xs) - around,
    top: Math.min(...ys) - around,
    right: Math.max(...xs) + around,
    bottom: Math.max(...ys) + around,
  };
}

function addOctagon(ctx: Context, { x, y }: Point): void {
  const radius = RADIUS + 0.5;
  const corner = radius * (Math.SQRT2 - 1);
  addPolygon(
    ctx,
    [
      [-corner, -radius],
      [corner, -radius],
      [radius, -corner],
      [radius, corner],
      [corner, radius],
      [-corner, radius],
      [-radius, corner],
      [-radius, -corner],
    ].map(([dx, dy]) => ({ x: x + (dx as number), y: y + (dy as number) })),
  );
}

function addDiamond(ctx: Context, { x, y }: Point): void {
  const radius = RADIUS + 3;
  addPolygon(ctx, [
    { x, y: y - radius },
    { x: x + radius, y },
    { x, y: y + radius },
    { x: x - radius, y },
  ]);
}

const addRing = (ctx: Context, { x, y }: Point): void => addDot(ctx, x, y, RADIUS - 1);

interface Sign {
  readonly fill: string;
  readonly line: string;
  readonly ink: string;
  /** Written where one mark stands alone. */
  readonly alone: string;
  readonly add: (ctx: Context, at: Point) => void;
}

const SIGNS: { readonly [L in Level]: (theme: Theme) => Sign } = {
  damage: ({ mark, markInk }) => ({ fill: mark, line: markInk, ink: markInk, alone: '!', add: addOctagon }),
  fault: ({ fault, markInk }) => ({ fill: fault, line: markInk, ink: markInk, alone: '', add: addDiamond }),
  reminder: ({ sheet, inkSoft, ink }) => ({ fill: sheet, line: inkSoft, ink, alone: '', add: addRing }),
};

/** Solid octagon: damage. Diamond: fault. Ring: reminder. With a figure where several lie together. */
export function drawMarks(ctx: Context, { theme }: Paper, marks: readonly Mark[]): void {
  for (const level of ['reminder', 'fault', 'damage'] as const) {
    const some = marks.filter((mark) => mark.level === level);
    if (some.length === 0) continue;
    const { fill, line, ink, alone, add } = SIGNS[level](theme);
    paint(ctx, { fill, line, width: 2 }, some, (mark) => add(ctx, mark));
    for (const { x, y, count } of some) {
      const text = count > 1 ? String(count) : alone;
      if (text) write(ctx, text, x, y, { px: 12, colour: ink, weight: 750, ...CENTRED });
    }
  }
}
