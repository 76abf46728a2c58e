import { describe, expect, it } from 'vitest';
import { STILL } from '../../../app/canvas/cast.ts';
import { drawAim } from '../../../app/canvas/draw/aim.ts';
import { drawLabels } from '../../../app/canvas/draw/labels.ts';
import { paintMarks, paintMoving, paintStill } from '../../../app/canvas/layers.ts';
import type { Aim, Scene } from '../../../app/canvas/model.ts';
import { THEMES } from '../../../app/canvas/theme.ts';
import { aimAt } from '../../../app/tools/aim-at.ts';
import { bandPieces, stripeCorners } from '../../../src/drawing/band.ts';
import { runOf } from '../../../src/drawing/runs.ts';
import { layOutSheet } from '../../../src/drawing/sheet.ts';
import { type LaidRibbon, type Ribbon, type Side, seatPlaces, type Take } from '../../../src/index.ts';
import { fakeContext } from './fake-context.ts';
import { deriveRack, mixedTake } from './rack.ts';

const VIEW = { left: -1e6, top: -1e6, right: 1e6, bottom: 1e6 };

const paperOf = (take: Take, side: Side = 'rear') => ({
  sheet: layOutSheet(deriveRack(take), side, 1.7),
  theme: THEMES.light,
  view: VIEW,
});

/** The mixed rack with a ribbon that has one free connector. */
function rack(more: Partial<Ribbon> = {}) {
  const mixed = mixedTake();
  const take: Take = {
    ...mixed,
    ribbons: mixed.ribbons.map((one) =>
      one.id === 's1' ? { ...one, seats: one.seats.slice(0, 2), ...more } : one,
    ),
  };
  const derived = deriveRack(take);
  const ribbon = derived.wiring.ribbonById.get('s1');
  if (!ribbon) throw new Error('no ribbon');
  const aim: Aim = { ribbon: 's1', connector: 2, places: seatPlaces(derived, ribbon, 2) };
  return { take, derived, ribbon, aim };
}

const coloursOf = (draw: (ctx: ReturnType<typeof fakeContext>['ctx']) => void): string[] => {
  const { ctx, strokes } = fakeContext();
  draw(ctx);
  return strokes.map(({ colour }) => colour);
};

describe('the connector chosen', () => {
  it('bears a ring, and what it could sit on dashes, at four painting calls however many there are', () => {
    const { take, derived, aim } = rack();
    expect(aim.places.length).toBeGreaterThan(1);
    const colours = coloursOf((ctx) => drawAim(ctx, paperOf(take), derived, aim));
    expect(colours).toEqual(
      ['sheet', 'brass', 'sheet', 'brass'].map((name) => THEMES.light[name as 'brass']),
    );
  });

  it('in hand is drawn where the hand is, on a thread', () => {
    const { take, derived, aim } = rack();
    const held = { ...aim, places: [], heldAt: { x: 40, y: 40 } };
    expect(coloursOf((ctx) => drawAim(ctx, paperOf(take), derived, held))).toContain(THEMES.light.connector);
  });

  it('shows nothing from the front, or of a ribbon that is gone', () => {
    const { take, derived, aim } = rack();
    expect(coloursOf((ctx) => drawAim(ctx, paperOf(take, 'front'), derived, aim))).toEqual([]);
    expect(coloursOf((ctx) => drawAim(ctx, paperOf(take), derived, { ...aim, ribbon: 'gone' }))).toEqual([]);
  });

  it('is drawn on the marks at rest, and on the moving layer during a gesture', () => {
    const { take, derived, aim } = rack();
    const scene: Scene = { derived, notes: [], side: 'rear', selection: new Set(), focus: null, aim };
    const end = { ribbon: derived.wiring.ribbonById.get(aim.ribbon) as LaidRibbon, connector: aim.connector };
    const overlay = aimAt(end, aim.places);
    const moving = { derived, notes: [], pressing: [], modules: new Set<string>(), overlay };
    const rest = coloursOf((ctx) => paintMarks(ctx, paperOf(take), scene, null, STILL, []));
    expect(rest).toContain(THEMES.light.brass);
    expect(coloursOf((ctx) => paintMarks(ctx, paperOf(take), scene, moving, STILL, []))).toEqual([]);
    expect(coloursOf((ctx) => paintMoving(ctx, paperOf(take), moving, STILL))).toContain(THEMES.light.brass);
  });
});

describe('a ribbon', () => {
  const labelStrokes = (more: Partial<Ribbon>): number => {
    const { take, derived, ribbon } = rack(more);
    const paper = paperOf(take);
    const run = runOf(paper.sheet, derived, ribbon);
    const { ctx, strokes } = fakeContext();
    drawLabels(ctx, paper, derived.kit.kit, run ? [run] : []);
    return strokes.length;
  };

  it('that is locked bears a lock on its plate, at no cost for others', () => {
    expect(labelStrokes({ locked: true }) - labelStrokes({})).toBe(2);
  });

  const stops = (twisted: boolean) => [
    { x: 0, y: 50, pin1: 'down' as const },
    { x: 100, y: 50, pin1: twisted ? ('up' as const) : ('down' as const) },
  ];

  it('brings its stripe over to the other edge in a half-twist', () => {
    const pieces = bandPieces(stops(true), 10, [1], 1);
    expect(pieces.filter(({ crossed }) => crossed)).toHaveLength(1);
    const at = pieces.filter(({ crossed }) => crossed).flatMap((piece) => stripeCorners(piece, 3));
    expect(at.map(({ y }) => y)).toEqual([57, 40, 43, 60]);
    const [first, last] = [pieces[0], pieces.at(-1)].map((piece) => piece && stripeCorners(piece, 3)[0]?.y);
    expect(first).toBe(57);
    expect(last).toBe(40);
  });

  it('with its stripe up shows it at the upper edge', () => {
    const up = stops(false).map((stop) => ({ ...stop, pin1: 'up' as const }));
    for (const piece of bandPieces(up, 10, [], 1))
      expect(stripeCorners(piece, 3).map(({ y }) => y)).toEqual([40, 40, 43, 43]);
  });

  it('twisted without end is drawn in bounded time, with the edge that it comes out on', () => {
    for (const [count, down] of [
      [1_000_000_000, true],
      [999_999_999, false],
    ] as const) {
      const { take, derived } = rack({ twists: [count] });
      const scene: Scene = { derived, notes: [], side: 'rear', selection: new Set(), focus: null };
      expect(coloursOf((ctx) => paintStill(ctx, paperOf(take), scene)).length).toBeGreaterThan(10);
      const crossings = bandPieces(stops(!down), 10, [count], 1).filter(({ crossed }) => crossed).length;
      expect(crossings % 2 === 0).toBe(down);
      expect(crossings).toBeLessThan(10);
    }
  });
});
