import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  busesOfTemplate,
  evenPlaces,
  isPowerBus,
  MODULE_TEMPLATES,
  type ModuleTemplate,
  type TemplateChoice,
  templateHeaders,
  templateOf,
} from '../../src/geometry/module-templates.ts';
import { panelHeightMm } from '../../src/geometry/rack.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Header, Kit, ModuleKind } from '../../src/layout/layout.ts';
import { emptyKit } from '../../src/layout/starter.ts';
import { runs } from '../support/runs.ts';

const template = (id: ModuleTemplate['id']): ModuleTemplate => {
  const found = MODULE_TEMPLATES.find((one) => one.id === id);
  if (!found) throw new Error(`no template ${id}`);
  return found;
};

const { kit: shoreline } = demoLayout();
const reef = { id: 'reef', name: 'Reef', pinout: ['GND', '+12', 'mix', 'GND'] };
const sand = { id: 'sand', name: 'Sand', pinout: ['GND', 'sum'] };
const own: Kit = { ...emptyKit(), buses: [...emptyKit().buses, reef, sand] };

const places = (headers: readonly Header[]) => headers.map(({ id, xMm, yMm }) => [id, xMm, yMm]);

const made = (kit: Kit, id: ModuleTemplate['id'], choice: TemplateChoice) =>
  templateHeaders(kit, template(id), choice);

describe('headers by template', () => {
  it('stand where the invented kit has them: voice and collector of 5 HP', () => {
    const [, jetty, cobble] = shoreline.modules as [ModuleKind, ModuleKind, ModuleKind];
    const choice = { widthHp: 5, pin1: 'down' } as const;
    expect(made(shoreline, 'voice', { ...choice, bus: 'shore', powerBus: 'power-10' })).toEqual(
      cobble.headers,
    );
    expect(made(shoreline, 'collector', { ...choice, bus: 'shore', nextBus: 'tide' })).toEqual(jetty.headers);
  });

  it('puts the header of a 15 HP voice where the middle one of three 5 HP voices has it', () => {
    const [wide] = made(own, 'voice', { widthHp: 15, bus: 'reef' });
    const [narrow] = made(own, 'voice', { widthHp: 5, bus: 'reef' });
    expect(wide?.xMm).toBeCloseTo(5 * 5.08 + (narrow?.xMm ?? 0), 9);
    expect(wide?.yMm).toBe(narrow?.yMm);
  });

  it('gives one bus one height: that of most kinds of the kit, or a free one', () => {
    const at = (id: string, yMm: number): ModuleKind => ({
      id,
      name: id,
      widthHp: 5,
      draws: {},
      headers: [{ id: 'reef', bus: 'reef', role: 'member', xMm: 9, yMm }],
    });
    const kit: Kit = { ...own, modules: [at('a', 50), at('b', 52), at('c', 52)] };
    expect(places(made(kit, 'main', { widthHp: 8, bus: 'reef' }))).toEqual([['reef', 20.32, 52]]);
    const [first] = made(own, 'main', { widthHp: 8, bus: 'reef' });
    const collector = made(own, 'collector', { widthHp: 8, bus: 'reef', nextBus: 'sand' });
    expect(collector[0]?.yMm).toBe(first?.yMm);
    expect(collector[1]?.yMm).not.toBe(first?.yMm);
  });

  it('says nothing that was not chosen: pin 1 stays unknown, the header bare, power left out', () => {
    expect(made(own, 'voice', { widthHp: 5, bus: 'reef' })).toEqual([
      { id: 'reef', bus: 'reef', role: 'member', xMm: 12.7, yMm: 38 },
    ]);
    expect(made(own, 'blank', { widthHp: 5, bus: 'reef', powerBus: 'power-10' })).toEqual([]);
  });

  it('gives an expander two headers that are joined inside, side by side or one above the other', () => {
    const wide = made(own, 'expander', { widthHp: 6, bus: 'reef' });
    expect(wide.map(({ passes }) => passes)).toEqual([true, true]);
    expect(wide[0]?.yMm).toBe(wide[1]?.yMm);
    const narrow = made(own, 'expander', { widthHp: 2, bus: 'reef' });
    expect(narrow[0]?.xMm).toBe(narrow[1]?.xMm);
    expect(narrow[0]?.yMm).not.toBe(narrow[1]?.yMm);
  });

  const anyChoice = fc.record({
    which: fc.constantFrom(...MODULE_TEMPLATES),
    kit: fc.constantFrom(own, shoreline),
    halves: fc.integer({ min: 1, max: 80 }),
    heightU: fc.constantFrom(1, 3, 6),
    picks: fc.array(fc.nat(), { minLength: 3, maxLength: 3 }),
    pin1: fc.constantFrom('up' as const, 'down' as const, undefined),
    keyed: fc.boolean(),
  });

  /** Any choice, the power bus among the power buses, as a form has it. */
  const choiceOf = ({
    which,
    kit,
    halves,
    heightU,
    picks,
    pin1,
    keyed,
  }: typeof anyChoice extends fc.Arbitrary<infer T> ? T : never) => {
    const buses = Object.fromEntries(
      busesOfTemplate(which).map((on, i) => {
        const fit = kit.buses.filter((bus) => isPowerBus(kit, bus) === (on === 'powerBus'));
        return [on, fit[(picks[i] as number) % fit.length]?.id];
      }),
    );
    const choice: TemplateChoice = { widthHp: halves / 2, heightU, ...(pin1 && { pin1 }), keyed, ...buses };
    return choice;
  };

  it('lie on the panel, under ids of their own, and are told again from the kind', () => {
    const property = fc.property(anyChoice, (any) => {
      const choice = choiceOf(any);
      const headers = templateHeaders(any.kit, any.which, choice);
      expect(new Set(headers.map(({ id }) => id)).size).toBe(headers.length);
      for (const { xMm, yMm } of headers) {
        expect(xMm).toBeGreaterThan(0);
        expect(xMm).toBeLessThan(choice.widthHp * 5.08);
        expect(yMm).toBeGreaterThan(0);
        expect(yMm).toBeLessThan(panelHeightMm(any.heightU));
      }
      const { widthHp, heightU = 3 } = choice;
      const kind: ModuleKind = { id: 'k', name: 'K', widthHp, heightU, draws: {}, headers };
      const told = templateOf(any.kit, kind);
      if (!told) throw new Error('no template makes it');
      expect(templateHeaders(any.kit, told.template, told.choice)).toEqual(headers);
    });
    fc.assert(property, runs(300));
  });

  it('are told by the template that is used as a whole', () => {
    const choice = { widthHp: 10, bus: 'reef', powerBus: 'power-16' };
    for (const id of ['plain', 'voice', 'main', 'expander', 'blank'] as const) {
      const kind: ModuleKind = { id, name: id, widthHp: 10, draws: {}, headers: made(own, id, choice) };
      expect(templateOf(own, kind)?.template.id).toBe(id);
    }
  });

  it('are not claimed of a kind whose headers lie elsewhere', () => {
    const boulder = shoreline.modules.find(({ id }) => id === 'boulder') as ModuleKind;
    expect(templateOf(shoreline, boulder)).toBeUndefined();
  });
});

describe('a power bus', () => {
  it('is told by its lines or its id, and a link that brings power is none', () => {
    expect(shoreline.buses.map((bus) => isPowerBus(shoreline, bus))).toEqual([false, false, true, true]);
    expect(isPowerBus(own, { id: 'mine', name: 'Mine', pinout: ['+12', 'GND', '', '-12'] })).toBe(true);
    expect(isPowerBus(own, { id: 'mine', name: 'Mine', pinout: ['GND', 'GND'] })).toBe(false);
  });
});

describe('places at one distance', () => {
  it('are the decimals of the table: 5 HP is 25.4 mm (1 HP = 5.08 mm, IEC 60297-3-101)', () => {
    expect(evenPlaces(7, 25.4)).toEqual([0, 25.4, 50.8, 76.2, 101.6, 127, 152.4]);
    expect(evenPlaces(4, 0.1)).toEqual([0, 0.1, 0.2, 0.3]);
  });
});
