import { describe, expect, it } from 'vitest';
import { castOf } from '../../../app/canvas/cast.ts';
import { heatColours, heatOf, heatStep } from '../../../app/canvas/draw/heat.ts';
import type { Paper } from '../../../app/canvas/draw/paper.ts';
import { paintStill } from '../../../app/canvas/layers.ts';
import type { Scene, Side } from '../../../app/canvas/model.ts';
import { THEMES } from '../../../app/canvas/theme.ts';
import { heatMap } from '../../../app/power/heat-map.ts';
import { layOutSheet } from '../../../src/drawing/sheet.ts';
import { deriveTake, type Layout, type WholeTake } from '../../../src/index.ts';
import { demoLayout } from '../../../src/layout/demo.ts';
import { fakeContext, pxOf, type Stroke } from './fake-context.ts';
import { deriveRack, mixedTake, withMoved } from './rack.ts';

const WHOLE = { left: -1e6, top: -1e6, right: 1e6, bottom: 1e6 };

const derive = ({ kit, takes }: Layout, at = 0): WholeTake => {
  const take = takes[at] ?? expect.fail('no take');
  return deriveTake(kit, take);
};

function painted(derived: WholeTake, line: string | null, side: Side = 'rear', scale = 1.7): Stroke[] {
  const heat = line === null ? undefined : heatMap(derived, line);
  const scene: Scene = { derived, notes: [], side, selection: new Set(), focus: null, heat };
  const paper: Paper = {
    sheet: layOutSheet(derived, side, scale),
    theme: THEMES.light,
    view: WHOLE,
    ...(heat && { heat }),
  };
  const { ctx, strokes } = fakeContext();
  paintStill(ctx, paper, scene);
  return strokes;
}

const textsOf = (strokes: readonly Stroke[]): string[] => strokes.flatMap(({ text }) => text ?? []);

/** Texts that come with the heat map. */
function added(derived: WholeTake, line: string, side: Side = 'rear', scale = 1.7): string[] {
  const before = textsOf(painted(derived, null, side, scale));
  return textsOf(painted(derived, line, side, scale)).filter((text) => {
    const at = before.indexOf(text);
    if (at >= 0) before.splice(at, 1);
    return at < 0;
  });
}

describe('the heat map', () => {
  const demo = derive(demoLayout());

  it('writes what each module loses, and what each stretch of ribbon carries and which way', () => {
    const texts = added(demo, '+12');
    // Losses of the two groups' worst, mV.
    expect(texts).toContain('21');
    // From Boulder 1 on: 50 mA for Jetty A and 35 for each Cobble, thinning out; a lead has no way to tell.
    expect(texts).toEqual(expect.arrayContaining(['120 ▸', '85 ▸', '50 ▸', '180', '110']));
    // Eight leads, and on the links four, four and two stretches; seventeen modules.
    expect(texts.filter((text) => /^(◂ )?\d+( ▸)?$/.test(text) || text.includes('.'))).toHaveLength(
      demo.places.modules.length + 8 + texts.filter((text) => /[▸◂]/.test(text)).length,
    );
  });

  it('turns the arrowheads with the current: the return flows the other way', () => {
    const ways = (line: string) => added(demo, line).filter((text) => /[▸◂]/.test(text));
    expect(ways('+12').filter((text) => text.includes('▸')).length).toBe(
      ways('-12').filter((text) => text.includes('◂')).length,
    );
  });

  it('hatches what is not reached and says so; what does not use the line has no figure', () => {
    const second = derive(demoLayout(), 1);
    const missing = added(second, '+12').filter((text) => text === 'not reached' || text === 'none');
    // In full on the Boulder, shorter on four narrow modules.
    expect(missing.sort()).toEqual(['none', 'none', 'none', 'none', 'not reached']);
    expect(added(demo, '+5').filter((text) => text === 'not reached')).toEqual([]);
    expect(heatMap(demo, '+48')).toBeUndefined();
  });

  it('shows modules from the front, without ribbons', () => {
    const texts = added(demo, '+12', 'front');
    expect(texts).toHaveLength(demo.places.modules.length);
    expect(texts.some((text) => /[▸◂]/.test(text))).toBe(false);
  });

  it.each([0.5, 0.8, 1.7, 4])('writes nothing smaller than 11 px at %s px per mm', (scale) => {
    for (const side of ['rear', 'front'] as const)
      for (const { font, text } of painted(demo, '+12', side, scale))
        if (text) expect(pxOf(font), text).toBeGreaterThanOrEqual(11);
  });

  it('leaves currents out where ribbons have no room for figures', () => {
    expect(added(demo, '+12', 'rear', 0.6).some((text) => /[▸◂]/.test(text))).toBe(false);
  });

  it('tells what each conductor carries where that is more than half of what a contact may', () => {
    const [ribbon] = demo.wiring.ribbons;
    if (!ribbon) throw new Error('no ribbon');
    const carrying = (ma: number): string[] => {
      const spans = new Map([[ribbon.id, [{ ribbon, from: 0, to: 1, ma, conductors: 2 }]]]);
      const heat = heatOf({ figures: new Map(), spans, contactMa: 1000 });
      const { ctx, strokes } = fakeContext();
      const scene: Scene = {
        derived: demo,
        notes: [],
        side: 'rear',
        selection: new Set(),
        focus: null,
        heat,
      };
      paintStill(
        ctx,
        { sheet: layOutSheet(demo, 'rear', 1.7), theme: THEMES.light, view: WHOLE, heat },
        scene,
      );
      return textsOf(strokes);
    };
    expect(carrying(1000).some((text) => text.includes('×'))).toBe(false);
    expect(carrying(1200).some((text) => text.includes('1200 = 2 × 600'))).toBe(true);
  });

  it('has a step for each doubling, and the last beyond what is allowed', () => {
    expect([0, 1 / 32, 1 / 31, 0.12, 0.5, 1, 1 + 1e-9, 1.01].map(heatStep)).toEqual([0, 0, 1, 2, 4, 5, 5, 6]);
    const beyond = derive({
      ...demoLayout(),
      kit: {
        ...demoLayout().kit,
        voltages: demoLayout().kit.voltages.map((voltage) => ({ ...voltage, dropMv: 20 })),
      },
    });
    const frames = painted(beyond, '+12').filter(
      ({ call, colour }) => call === 'stroke' && colour === THEMES.light.pin,
    );
    const none = painted(beyond, null).filter(
      ({ call, colour }) => call === 'stroke' && colour === THEMES.light.pin,
    );
    expect(frames.length).toBeGreaterThan(none.length);
    const fills = new Set(painted(beyond, '+12').map(({ colour }) => colour));
    expect(fills).toContain(heatColours(THEMES.light, 'rear').at(-1));
  });

  it('says at least where a draw is unknown', () => {
    const { kit, ...rest } = demoLayout();
    const modules = kit.modules.map((kind) =>
      kind.id === 'kelp' ? { ...kind, draws: { '+12': null } } : kind,
    );
    const texts = added(derive({ ...rest, kit: { ...kit, modules } }), '+12');
    expect(texts.filter((text) => text.startsWith('≥ '))).toHaveLength(1);
  });

  it('uses no red', () => {
    const reds = (line: string | null) =>
      painted(demo, line).filter(({ colour }) => colour === THEMES.light.stripe).length;
    expect(reds('+12')).toBe(reds(null));
  });

  it('has the still layer drawn anew when anything begins to move, since its figures go then', () => {
    const take = mixedTake();
    const derived = deriveRack(take);
    const heat = heatMap(derived, '+12');
    const scene: Scene = { derived, notes: [], side: 'rear', selection: new Set(), focus: null, heat };
    const nothing = { derived: deriveRack({ ...take }), notes: [], pressing: [], modules: new Set<string>() };
    const moved = {
      derived: deriveRack(withMoved(take, 'a', 1)),
      notes: [],
      pressing: [],
      modules: new Set(['a']),
    };
    const resting = castOf(scene, null).key;
    for (const moving of [nothing, moved]) expect(castOf(scene, moving).key).not.toBe(resting);
    const cold = { ...scene, heat: undefined };
    expect(castOf(cold, nothing).key).toBe(castOf(cold, null).key);
  });
});
