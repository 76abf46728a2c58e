import { describe, expect, it } from 'vitest';
import { castOf } from '../../../app/canvas/cast.ts';
import { marksOf } from '../../../app/canvas/draw/marks.ts';
import type { Paper } from '../../../app/canvas/draw/paper.ts';
import { hitPile, hitTest } from '../../../app/canvas/hit-test.ts';
import { type LayerKey, layerOf } from '../../../app/canvas/layer-keys.ts';
import { paintMarks, paintMoving, paintStill } from '../../../app/canvas/layers.ts';
import type { Moving, Scene, Side } from '../../../app/canvas/model.ts';
import { THEMES } from '../../../app/canvas/theme.ts';
import { layersOf } from '../../../app/store/layer-list.ts';
import { runOf } from '../../../src/drawing/runs.ts';
import { boardBox, layOutSheet } from '../../../src/drawing/sheet.ts';
import { checkTake, deriveTake } from '../../../src/index.ts';
import { demoLayout } from '../../../src/layout/demo.ts';
import { fakeContext, type Stroke } from './fake-context.ts';
import { deriveRack, mixedTake, rackTake, withMoved } from './rack.ts';

const derived = deriveRack(mixedTake());
const notes = checkTake(derived);
const VIEW = { left: -1e6, top: -1e6, right: 1e6, bottom: 1e6 };

function sceneWith(hidden: readonly LayerKey[], more: Partial<Scene> = {}): Scene {
  return {
    derived,
    notes,
    side: 'rear',
    selection: new Set(),
    focus: null,
    hidden: new Set(hidden),
    ...more,
  };
}

const paperOf = (scene: Scene): Paper => ({
  sheet: layOutSheet(scene.derived, scene.side, 1.7),
  theme: THEMES.light,
  view: VIEW,
  hidden: scene.hidden,
});

function painted(paint: (ctx: ReturnType<typeof fakeContext>['ctx']) => void): Stroke[] {
  const { ctx, strokes } = fakeContext();
  paint(ctx);
  return strokes;
}

const stillOf = (scene: Scene): Stroke[] => painted((ctx) => paintStill(ctx, paperOf(scene), scene));

const textsOf = (strokes: readonly Stroke[]): string[] => strokes.flatMap(({ text }) => text ?? []);

const redOf = (strokes: readonly Stroke[]): number =>
  strokes.filter(({ colour }) => colour === THEMES.light.stripe).length;

describe('layers', () => {
  it('sort the demo into the links of each bus, its leads and the rest', () => {
    const { kit, takes } = demoLayout();
    const [take] = takes;
    if (!take) throw new Error('no take');
    expect(layersOf(deriveTake(kit, take)).map(({ name, count }) => [name, count])).toEqual([
      ['Links: Shore', 3],
      ['Links: Tide', 3],
      ['Leads', 8],
      ['Boards', undefined],
      ['Names', undefined],
      ['Section from above', undefined],
    ]);
  });

  it('make a lead of what hangs loose and carries power, or sits on a board', () => {
    const layers = derived.wiring.ribbons.map((ribbon) => [ribbon.id, layerOf(ribbon)]);
    expect(layers).toEqual([
      ['s1', 'bus:shore'],
      ['l1', 'leads'],
    ]);
  });
});

describe('a hidden layer', () => {
  it('of ribbons is a line of dashes, without stripe, connectors, label or slice', () => {
    const all = stillOf(sceneWith([]));
    const some = stillOf(sceneWith(['bus:shore']));
    const none = stillOf(sceneWith(['bus:shore', 'leads']));
    expect(textsOf(all)).toContain('s1');
    expect(textsOf(some)).not.toContain('s1');
    expect(redOf(some)).toBeLessThan(redOf(all));
    expect(redOf(none)).toBe(0);
  });

  it('of names, of boards or the section is not there', () => {
    const texts = textsOf(stillOf(sceneWith([])));
    expect(texts).toEqual(expect.arrayContaining(['s1', 'Board']));
    const unnamed = textsOf(stillOf(sceneWith(['names'])));
    for (const name of ['s1', 'Board', 'Cobble']) expect(unnamed).not.toContain(name);
    expect(textsOf(stillOf(sceneWith(['boards'])))).not.toContain('Board');
    const depths = (strokes: readonly string[]) => strokes.filter((text) => text.startsWith('from above'));
    expect(depths(texts)).toHaveLength(2);
    expect(depths(textsOf(stillOf(sceneWith(['section']))))).toEqual([]);
  });

  it('is not hit, what lies below it is', () => {
    const sheet = layOutSheet(derived, 'rear', 2);
    const ribbon = derived.wiring.ribbonById.get('s1');
    const [knot] = (ribbon && runOf(sheet, derived, ribbon)?.knots) ?? [];
    if (!knot) throw new Error('no connector');
    const under = (...hidden: LayerKey[]) =>
      hitPile(sheet, derived, knot.x, knot.y, 3, new Set(hidden)).map(({ type }) => type);
    expect(under()).toEqual(['ribbon', 'header']);
    expect(under('bus:shore')).toEqual(['header']);
    const [board] = derived.places.boards;
    const { left, top } = boardBox(sheet, board as NonNullable<typeof board>);
    const corner = (...hidden: LayerKey[]) =>
      hitTest(sheet, derived, left + 4, top + 4, 3, new Set(hidden))?.type;
    expect(corner()).toBe('board');
    expect(corner('boards')).toBe('row');
  });

  it('leaves the marks of its notes, and is shown for the note in focus', () => {
    const hidden = sceneWith(['bus:shore', 'leads', 'names', 'boards']);
    const note = notes.find(
      ({ subjects, level }) => level !== 'reminder' && subjects.some(({ id }) => id === 's1'),
    );
    if (!note) throw new Error('no note about the ribbon');
    const { sheet } = paperOf(hidden);
    expect(marksOf(sheet, derived, notes, null).length).toBeGreaterThan(0);
    const paintWith = (scene: Scene) =>
      painted((ctx) => paintMarks(ctx, paperOf(scene), scene, null, castOf(scene, null), []));
    expect(paintWith(hidden)).toEqual([]);
    const focused = paintWith({ ...hidden, focus: note.key });
    expect(redOf(focused)).toBeGreaterThan(0);
    expect(textsOf(focused)).toContain('s1');
    expect(redOf(paintWith({ ...sceneWith([]), focus: note.key }))).toBe(0);
  });

  it('costs a drag no more painting than it saves', () => {
    const rack = rackTake(50);
    const still = {
      derived: deriveRack(rack),
      notes: [],
      side: 'rear' as Side,
      selection: new Set<string>(),
      focus: null,
    };
    const moved = deriveRack(withMoved(rack, 'm7', 0.5));
    const moving: Moving = { derived: moved, notes: [], pressing: [], modules: new Set(['m7']) };
    const calls = (hidden: readonly LayerKey[]) => {
      const scene: Scene = { ...still, hidden: new Set(hidden) };
      return painted((ctx) => paintMoving(ctx, paperOf(scene), moving, castOf(scene, moving))).length;
    };
    expect(calls(['bus:shore'])).toBeLessThan(calls([]));
    expect(calls(['section'])).toBeLessThan(calls([]));
  });
});

describe('a lifted ribbon', () => {
  const paintWith = (more: Partial<Scene>) => {
    const scene = sceneWith([], more);
    return painted((ctx) => paintMarks(ctx, paperOf(scene), scene, null, castOf(scene, null), []));
  };

  it('is drawn above a thin veil', () => {
    const strokes = paintWith({ lifted: 'l1' });
    expect(strokes[0]).toMatchObject({ call: 'fillRect', colour: THEMES.light.veil });
    expect(textsOf(strokes)).toContain('l1');
    expect(textsOf(strokes)).not.toContain('s1');
  });

  it('is none at the front, under a note in focus, or where there is no such ribbon', () => {
    expect(paintWith({ lifted: 'l1', side: 'front' })).toEqual([]);
    const [note] = notes;
    expect(textsOf(paintWith({ lifted: 'l1', focus: note?.key ?? '' }))).not.toContain('l1');
  });

  it('is drawn once where it is selected alone', () => {
    const strokes = paintWith({ selection: new Set(['ribbon:l1']) });
    expect(strokes[0]).toMatchObject({ call: 'fillRect', colour: THEMES.light.veil });
    expect(textsOf(strokes).filter((text) => text === 'l1')).toHaveLength(1);
  });
});
