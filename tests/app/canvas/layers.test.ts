import { describe, expect, it } from 'vitest';
import { castOf } from '../../../app/canvas/cast.ts';
import { drawMarks, marksOf } from '../../../app/canvas/draw/marks.ts';
import { drawModulesRear } from '../../../app/canvas/draw/modules.ts';
import type { Paper } from '../../../app/canvas/draw/paper.ts';
import { paintMarks, paintMoving, paintStill } from '../../../app/canvas/layers.ts';
import { type Moving, type Scene, type Side, selectionKey } from '../../../app/canvas/model.ts';
import { THEMES } from '../../../app/canvas/theme.ts';
import { layOutSheet } from '../../../src/drawing/sheet.ts';
import { checkTake, pressingNotes, type Take } from '../../../src/index.ts';
import { fakeContext, pxOf, type Stroke } from './fake-context.ts';
import { deriveRack, mixedTake, rackTake, withMoved } from './rack.ts';

function sceneOf(take: Take, side: Side = 'rear', more: Partial<Scene> = {}): Scene {
  const derived = deriveRack(take);
  return { derived, notes: checkTake(derived), side, selection: new Set(), focus: null, ...more };
}

function movingOf(take: Take, id: string): Moving {
  const derived = deriveRack(take);
  return { derived, notes: checkTake(derived), pressing: pressingNotes(derived), modules: new Set([id]) };
}

const WHOLE = { left: -1e6, top: -1e6, right: 1e6, bottom: 1e6 };

const paperOf = ({ derived, side }: Scene, scale = 1.7, view = WHOLE): Paper => ({
  sheet: layOutSheet(derived, side, scale),
  theme: THEMES.light,
  view,
});

function painted(paint: (ctx: ReturnType<typeof fakeContext>['ctx']) => void): Stroke[] {
  const { ctx, strokes } = fakeContext();
  paint(ctx);
  return strokes;
}

const paintDrag = (take: Take): { still: Stroke[]; moving: Stroke[]; unmarked: Stroke[] } => {
  const scene = sceneOf(take);
  const moving = movingOf(withMoved(take, 'm7', 0.5), 'm7');
  const cast = castOf(scene, moving);
  return {
    unmarked: painted((ctx) => paintMoving(ctx, paperOf(scene), { ...moving, pressing: [] }, cast)),
    still: painted((ctx) => paintStill(ctx, paperOf(scene), scene, cast)),
    moving: painted((ctx) => paintMoving(ctx, paperOf(scene), moving, cast)),
  };
};

describe('a drag', () => {
  it('costs the same painting calls among 50 modules and among 1,000', () => {
    const { moving: small, unmarked } = paintDrag(rackTake(50));
    const large = paintDrag(rackTake(1000)).moving;
    expect(small.length).toBeGreaterThan(10);
    expect(large.length).toBe(small.length);
    // What moves, and apart from it the marks that go along.
    expect(unmarked.length).toBeLessThanOrEqual(48);
    expect(small.length - unmarked.length).toBeLessThanOrEqual(10);
  });

  it('leaves out of the still layer what it moves, and its ribbons', () => {
    const take = rackTake(50);
    const { still, moving } = paintDrag(take);
    const names = (strokes: Stroke[]) => strokes.flatMap(({ text }) => text ?? []);
    expect(names(still)).not.toContain('g1h0');
    expect(names(still)).toContain('g0h0');
    expect(names(moving)).toEqual(expect.arrayContaining(['g1h0', 'g1h1', 'g1h2', 'g1h3']));
    expect(names(moving)).not.toContain('g0h0');
  });

  it('keeps its cast while it only moves on, so that the still layer is painted at its start and end', () => {
    const take = rackTake(50);
    const scene = sceneOf(take);
    const keys = [0.5, 1, 1.5].map((hp) => castOf(scene, movingOf(withMoved(take, 'm7', hp), 'm7')).key);
    expect(new Set(keys).size).toBe(1);
    expect(castOf(scene, null).key).not.toBe(keys[0]);
  });

  it('carries a ribbon that the gesture lays, though no module moves', () => {
    const take = rackTake(10);
    const [first, ...others] = take.ribbons;
    const before = sceneOf({ ...take, ribbons: others });
    const derived = deriveRack({ ...take, ribbons: [first as (typeof others)[number], ...others] });
    const cast = castOf(before, { derived, notes: [], pressing: [], modules: new Set() });
    expect(derived.wiring.ribbons.filter(cast.carries).map(({ id }) => id)).toEqual([first?.id]);
  });
});

describe('the still layer', () => {
  it('paints nothing of rows out of sight', () => {
    const scene = sceneOf(rackTake(200));
    const all = painted((ctx) => paintStill(ctx, paperOf(scene), scene));
    const upper = { left: 0, top: 0, right: 1440, bottom: 300 };
    const some = painted((ctx) => paintStill(ctx, paperOf(scene, 1.7, upper), scene));
    expect(some.length).toBeLessThan(all.length / 3);
  });

  it.each([0.7, 1, 1.7, 5])('writes nothing smaller than 11 px at %s px per mm', (scale) => {
    for (const side of ['front', 'rear'] as const) {
      const scene = sceneOf(mixedTake(), side);
      const texts = painted((ctx) => paintStill(ctx, paperOf(scene, scale), scene)).filter(
        ({ text }) => text,
      );
      expect(texts.length).toBeGreaterThan(0);
      for (const { font, text } of texts) expect(pxOf(font), text).toBeGreaterThanOrEqual(11);
    }
  });

  it('is red on the rear only, where stripes are', () => {
    const red = (side: Side) => {
      const scene = sceneOf(mixedTake(), side);
      return painted((ctx) => paintStill(ctx, paperOf(scene), scene)).filter(
        ({ colour }) => colour === THEMES.light.stripe,
      ).length;
    };
    expect(red('front')).toBe(0);
    expect(red('rear')).toBeGreaterThan(0);
  });

  it('dimensions how far a connector misses', () => {
    const scene = sceneOf(mixedTake());
    const texts = painted((ctx) => paintStill(ctx, paperOf(scene), scene)).map(({ text }) => text);
    expect(texts).toContain('2.54');
  });

  it('names each side and runs the ruler from the front left', () => {
    const texts = (side: Side) => {
      const scene = sceneOf(mixedTake(), side);
      return painted((ctx) => paintStill(ctx, paperOf(scene), scene)).map(({ text }) => text ?? '');
    };
    expect(texts('front').join()).toContain('seen from the front');
    expect(texts('rear').join()).toContain('seen from the rear');
    expect(texts('rear')).toEqual(expect.arrayContaining(['0', '50', '100', 'front left']));
  });
});

describe('modules drawn together', () => {
  it('cost one call for all their pins, and a name each', () => {
    const scene = sceneOf(rackTake(50));
    const paper = paperOf(scene);
    const { modules } = scene.derived.places;
    const count = (n: number) =>
      painted((ctx) => drawModulesRear(ctx, paper, modules.slice(0, n), [])).length;
    expect(count(40) - count(20)).toBeLessThanOrEqual(2 * 20);
    expect(count(0)).toBe(0);
  });
});

describe('marks', () => {
  const scene = sceneOf(mixedTake());
  const { sheet } = paperOf(scene);
  const note = scene.notes.find(({ level, spots }) => level === 'damage' && spots?.length);
  if (!note) throw new Error('the stray connector should be a damage');

  it('stand for damage and faults, and for a reminder only in focus', () => {
    expect(marksOf(sheet, scene.derived, [note], null)).toHaveLength(1);
    const reminder = { ...note, key: 'reminder', level: 'reminder' as const };
    expect(marksOf(sheet, scene.derived, [reminder], null)).toHaveLength(0);
    expect(marksOf(sheet, scene.derived, [reminder], 'reminder')).toHaveLength(1);
  });

  it('are not made for what was put away', () => {
    expect(marksOf(sheet, scene.derived, [{ ...note, level: 'fault', accepted: true }], null)).toHaveLength(
      0,
    );
  });

  it('are one, with a figure and the worst shape, where several lie together', () => {
    const fault = { ...note, key: 'fault', level: 'fault' as const };
    expect(marksOf(sheet, scene.derived, [note, fault, fault], null)).toMatchObject([
      { level: 'damage', count: 3 },
    ]);
    const strokes = painted((ctx) =>
      drawMarks(ctx, paperOf(scene), marksOf(sheet, scene.derived, [note, fault], null)),
    );
    expect(strokes.map(({ text }) => text)).toContain('2');
  });

  it('leave the note in focus alone, with a veil over all but its subjects', () => {
    const focused = { ...scene, focus: note.key };
    const marks = marksOf(sheet, scene.derived, scene.notes, note.key);
    expect(marks).toHaveLength(note.spots?.length ?? 0);
    const strokes = painted((ctx) =>
      paintMarks(ctx, paperOf(scene), focused, null, castOf(focused, null), marks),
    );
    expect(strokes[0]).toMatchObject({ call: 'fillRect', colour: THEMES.light.veil });
  });

  it('lift a selected ribbon above the others', () => {
    const selected = { ...scene, selection: new Set([selectionKey('ribbon', 'l1')]) };
    const strokes = painted((ctx) =>
      paintMarks(ctx, paperOf(scene), selected, null, castOf(selected, null), []),
    );
    expect(strokes.map(({ text }) => text)).toContain('l1');
    expect(strokes.map(({ colour }) => colour)).toContain(THEMES.light.brass);
  });
});

describe('a gesture that changes the case itself', () => {
  const take = rackTake(20);
  const scene = sceneOf(take);
  const wider = (widthHp: number): Take => ({
    ...take,
    rows: take.rows.map((row, i) => (i === 0 ? { ...row, widthHp } : row)),
  });
  const movingTo = (to: Take): Moving => ({ ...movingOf(to, ''), modules: new Set() });

  it('has the whole case drawn as it would be, anew for each width', () => {
    const cast = castOf(scene, movingTo(wider(130)));
    expect(cast.instead?.take.rows[0]?.widthHp).toBe(130);
    expect(castOf(scene, movingTo(wider(131))).key).not.toBe(cast.key);
    expect(castOf(scene, movingTo(take)).instead).toBeUndefined();
    const drawn = (shown: typeof cast | undefined): Stroke[] =>
      painted((ctx) =>
        paintStill(ctx, paperOf({ ...scene, derived: shown?.instead ?? scene.derived }), scene, shown),
      );
    expect(drawn(cast)).not.toEqual(drawn(undefined));
    expect(drawn(castOf(scene, movingTo(take)))).toEqual(drawn(undefined));
  });

  it('leaves the front’s left end where it is', () => {
    const { derived } = movingTo(wider(150));
    for (const side of ['front', 'rear'] as const) {
      const still = layOutSheet(scene.derived, side, 1.7);
      const grown = layOutSheet(derived, side, 1.7, scene.derived);
      expect(grown.rows[0]?.originX).toBe(still.rows[0]?.originX);
    }
  });
});
