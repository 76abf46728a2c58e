import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkTake } from '../../src/checks/run.ts';
import { openClip, openDocument } from '../../src/document.ts';
import { applyEdit } from '../../src/edit/apply.ts';
import { clipOf } from '../../src/edit/clip-of.ts';
import { type Clip, clipText } from '../../src/layout/clip.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Kit, Layout, Module, Ribbon, Take } from '../../src/layout/layout.ts';
import { emptyLayout } from '../../src/layout/starter.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { arbitraryLayout } from '../support/arbitrary-layout.ts';
import { deepFreeze } from '../support/deep-freeze.ts';
import {
  applied,
  littleLayout,
  module,
  refusalOf,
  ribbon,
  row,
  seats,
  takeOf,
} from '../support/little-layout.ts';
import { runs } from '../support/runs.ts';

const clipFrom = (layout: Layout, ...ids: readonly string[]): Clip => {
  const take = takeOf(layout);
  return deepFreeze(
    clipOf(
      layout.kit,
      take,
      take.modules.filter(({ id }) => ids.includes(id)),
    ),
  );
};

const onto = (layout: Layout, clip: Clip, near?: { row: string; atHp: number }): Take =>
  takeOf(applied(layout, { type: 'paste', take: takeOf(layout).id, clip, ...(near && { near }) }));

const placesOf = ({ modules }: Take) => modules.map(({ id, row: rowId, atHp }) => [id, rowId, atHp]);

const GROUP = littleLayout({
  modules: [
    module('a', 'cobble', 10, { label: 'Cobble 2', pinned: true }),
    module('b', 'jetty', 15),
    module('x', 'gull', 30),
  ],
  ribbons: [
    ribbon('s', 'shore3', seats('a', 'b'), { label: 'S1', stripe: 'up', locked: true, twists: [1, 0] }),
    ribbon('out', 'shore3', seats('a', 'x')),
  ],
});

describe('clipOf', () => {
  it('takes the modules, the ribbons wholly among them, the rows and what of the kit they are made of', () => {
    const clip = clipFrom(GROUP, 'a', 'b');
    expect(clip.modules).toEqual(takeOf(GROUP).modules.slice(0, 2));
    expect(clip.ribbons.map(({ id }) => id)).toEqual(['s']);
    expect(clip.rows.map(({ id }) => id)).toEqual(['top']);
    expect(clip.kit.modules.map(({ id }) => id)).toEqual(['cobble', 'jetty']);
    expect(clip.kit.ribbons.map(({ id }) => id)).toEqual(['shore3']);
    expect(clip.kit.buses.map(({ id }) => id)).toEqual(['shore', 'tide']);
    expect(clip.kit.voltages.map(({ id }) => id)).toEqual(['+12']);
    expect(clipFrom(GROUP, 'x').kit).toEqual({
      voltages: [],
      buses: [],
      modules: [GROUP.kit.modules[3]],
      ribbons: [],
    });
  });
});

describe('paste', () => {
  it('puts a group at its own place where that is free, with its names, and free to move', () => {
    const pasted = onto(littleLayout(), clipFrom(GROUP, 'a', 'b'));
    expect(pasted.modules).toEqual([
      module('a', 'cobble', 10, { label: 'Cobble 2' }),
      module('b', 'jetty', 15),
    ]);
    expect(pasted.ribbons).toEqual([
      ribbon('s', 'shore3', seats('a', 'b'), { label: 'S1', stripe: 'up', twists: [1, 0] }),
    ]);
  });

  it('numbers ids, names and marks on, and finds room beside where it was', () => {
    const once = applied(GROUP, { type: 'paste', take: 'take', clip: clipFrom(GROUP, 'a', 'b') });
    expect(placesOf(takeOf(once)).slice(3)).toEqual([
      ['cobble-1', 'top', 20],
      ['jetty-1', 'top', 25],
    ]);
    expect(takeOf(once).modules.at(-2)?.label).toBe('Cobble 1');
    expect(takeOf(once).ribbons.at(-1)).toEqual(
      ribbon('shore3-1', 'shore3', seats('cobble-1', 'jetty-1'), {
        label: 'S2',
        stripe: 'up',
        twists: [1, 0],
      }),
    );
    const twice = applied(once, { type: 'paste', take: 'take', clip: clipFrom(GROUP, 'a', 'b') });
    expect(placesOf(takeOf(twice)).slice(5)).toEqual([
      ['cobble-2', 'top', 35],
      ['jetty-2', 'top', 40],
    ]);
    expect(takeOf(twice).ribbons.at(-1)?.label).toBe('S3');
  });

  it('goes as near as can be to a place, with its middle', () => {
    const clip = clipFrom(GROUP, 'a', 'b');
    expect(placesOf(onto(littleLayout(), clip, { row: 'low', atHp: 41 }))).toEqual([
      ['a', 'low', 36],
      ['b', 'low', 41],
    ]);
    expect(placesOf(onto(littleLayout(), clip, { row: 'low', atHp: 999 }))).toEqual([
      ['a', 'low', 50],
      ['b', 'low', 55],
    ]);
    const taken = littleLayout({ modules: [module('z', 'boulder', 30, { row: 'low' })] });
    expect(placesOf(onto(taken, clip, { row: 'low', atHp: 38 })).slice(1)).toEqual([
      ['a', 'low', 45],
      ['b', 'low', 50],
    ]);
  });

  it('keeps a group of two rows together, and folds it where there is one row only', () => {
    const from = littleLayout({
      modules: [module('a', 'cobble', 3), module('b', 'cobble', 1, { row: 'low' })],
      ribbons: [ribbon('s', 'shore3', seats('a', 'b'))],
    });
    const clip = clipFrom(from, 'a', 'b');
    const three = littleLayout({ rows: [row('one'), row('two'), row('three')] });
    expect(placesOf(onto(three, clip, { row: 'three', atHp: 30 }))).toEqual([
      ['a', 'two', 29],
      ['b', 'three', 27],
    ]);
    const one = onto(littleLayout({ rows: [row('top', 40)] }), clip);
    expect(placesOf(one)).toEqual([
      ['a', 'top', 3],
      ['b', 'top', 8],
    ]);
    expect(one.ribbons).toHaveLength(1);
  });

  it('stands past the last module where there is no room', () => {
    const full = littleLayout({ rows: [row('top', 12)], modules: [module('z', 'cobble', 2)] });
    expect(placesOf(onto(full, clipFrom(GROUP, 'a', 'b'))).slice(1)).toEqual([
      ['a', 'top', 7],
      ['b', 'top', 12],
    ]);
  });

  it('is refused where there is no row, and where the file could not be opened again', () => {
    const clip = clipFrom(GROUP, 'a');
    const paste = { type: 'paste', take: 'take', clip } as const;
    expect(refusalOf(littleLayout({ rows: [], supplies: [] }), paste)).toBe('There is no row to paste into');
    const many = Array.from({ length: 20_000 }, (_, i) => module(`m${i}`, 'gull', 100 + i));
    expect(refusalOf(littleLayout({ modules: many }), paste)).toBe(
      'The take would hold more than 20000 modules',
    );
  });

  it('changes nothing with nothing', () => {
    const layout = littleLayout();
    expect(applied(layout, { type: 'paste', take: 'take', clip: clipFrom(layout) })).toBe(layout);
  });
});

describe('into a layout with another kit', () => {
  const [cobble, ...others] = GROUP.kit.modules;
  if (!cobble) throw new Error('no kind');
  const clip = clipFrom(GROUP, 'a', 'b');
  const withKit = (kit: Partial<Kit>): Layout => ({ ...littleLayout(), kit: { ...GROUP.kit, ...kit } });
  const pastedInto = (layout: Layout): Layout => {
    const done = applied(deepFreeze(layout), { type: 'paste', take: 'take', clip });
    expect(openDocument(done)).toEqual({ ok: true, value: done });
    return done;
  };
  const ids = (list: readonly { readonly id: string }[]) => list.map(({ id }) => id);

  it('brings what the kit lacks, and nothing that it has', () => {
    const bare = withKit({ buses: [], modules: [], ribbons: [], voltages: [] });
    const { kit } = pastedInto({ ...bare, takes: [{ ...takeOf(bare), supplies: [] }] });
    expect(kit).toEqual(clip.kit);
    const full = littleLayout();
    expect(pastedInto(full).kit).toBe(full.kit);
  });

  it('tells kinds apart that have one id, and knows its own again', () => {
    const wider = { ...cobble, widthHp: 6 };
    const once = pastedInto(withKit({ modules: [wider, ...others] }));
    expect(ids(once.kit.modules)).toEqual([...ids(GROUP.kit.modules), 'cobble-1']);
    expect(once.kit.modules.at(-1)).toEqual({ ...cobble, id: 'cobble-1' });
    expect(takeOf(once).modules.map(({ kind }) => kind)).toEqual(['cobble-1', 'jetty']);
    expect(pastedInto(once).kit).toBe(once.kit);
  });

  it('leaves a kind alone of which only more are owned, or the price or the notes are others', () => {
    const mine = { ...cobble, owned: 3, price: 80, notes: 'mine', color: '#123' };
    const layout = withKit({ modules: [mine, ...others] });
    expect(pastedInto(layout).kit).toBe(layout.kit);
  });

  it('brings a bus of the same id that carries other lines under another one, with its kinds', () => {
    const [shore, tide] = GROUP.kit.buses;
    if (!shore || !tide) throw new Error('no bus');
    const swapped = { ...shore, pinout: [...shore.pinout].reverse() };
    const { kit, takes } = pastedInto(withKit({ buses: [swapped, tide] }));
    expect(ids(kit.buses)).toEqual(['shore', 'tide', 'shore-1']);
    expect(kit.modules.find(({ id }) => id === takes[0]?.modules[0]?.kind)?.headers[0]?.bus).toBe('shore-1');
    expect(kit.ribbons.find(({ id }) => id === takes[0]?.ribbons[0]?.kind)?.bus).toBe('shore-1');
  });

  it('never makes a voltage of a signal, nor a signal of a voltage', () => {
    const higher = pastedInto(withKit({ voltages: [{ id: '+12', volts: 15 }] })).kit;
    expect(higher.voltages).toEqual([
      { id: '+12', volts: 15 },
      { id: '+12 #1', volts: 12 },
    ]);
    expect(higher.buses.at(-1)?.pinout).toEqual(['GND', 'GND', '+12 #1', 'mix']);
    expect(higher.modules.at(-2)?.draws).toEqual({ '+12 #1': 40 });

    const live = pastedInto(
      withKit({
        voltages: [...GROUP.kit.voltages, { id: 'mix', volts: 5 }],
        buses: [],
        modules: [],
        ribbons: [],
      }),
    ).kit;
    expect(live.buses[0]?.pinout).toEqual(['GND', 'GND', '+12', 'mix #1']);

    const signal = { id: 'other', name: 'Other', pinout: ['+12', 'GND'] };
    const plain = withKit({ voltages: [], buses: [signal], modules: [], ribbons: [] });
    const { kit } = pastedInto({ ...plain, takes: [{ ...takeOf(plain), supplies: [] }] });
    expect(ids(kit.voltages)).toEqual(['+12 #1']);
    expect(kit.buses[0]).toBe(signal);
  });

  it('lets the layout keep how much of a voltage may be lost on the way', () => {
    const layout = withKit({ voltages: [{ id: '+12', volts: 12, dropMv: 100 }] });
    expect(pastedInto(layout).kit).toBe(layout.kit);
  });

  it('takes a group of the demo into an empty case and back, as text', () => {
    const demo = demoLayout();
    const group = openClip(clipText(clipFrom(demo, 'jetty-a', 'cobble-1', 'cobble-2', 'boulder-1')));
    if (!group.ok) throw new Error('not a clip');
    const empty = emptyLayout();
    const paste = { type: 'paste', take: takeOf(empty).id, clip: group.value } as const;
    const done = applied(empty, paste);
    expect(openDocument(done).ok).toBe(true);
    expect(takeOf(done).ribbons.map(({ label }) => label)).toEqual(['S1']);
    expect(applied(demo, { ...paste, take: 'one-long-jetty' }).kit).toBe(demo.kit);
  });
});

/** Sums of floats differ in the last digits from place to place. */
const rounded = (_: string, value: unknown): unknown =>
  typeof value === 'number' ? Math.round(value * 1e6) / 1e6 + 0 : value;

/** The findings of a take by what they say, their subjects named as in the original. */
function findingsOf(kit: Kit, take: Take, originalOf: (id: string) => string): string[] {
  return checkTake(deriveTake(kit, take))
    .map(({ check, level, subjects, measure }) => {
      const named = subjects.map(({ type, id }) => `${type} ${type === 'row' ? id : originalOf(id)}`);
      return JSON.stringify([check, level, [...named].sort(), measure], rounded);
    })
    .sort();
}

const alone = (take: Take, modules: readonly Module[], ribbons: readonly Ribbon[]): Take => ({
  ...take,
  supplies: [],
  modules,
  ribbons,
});

/** Part of a layout, and which of the modules of its first take belong to the group. */
const anyGroup = fc.tuple(arbitraryLayout, fc.array(fc.boolean(), { minLength: 9, maxLength: 9 }));

describe('any group', () => {
  it('has the findings in another place that it had in its own', () => {
    let told = 0;
    const property = fc.property(anyGroup, fc.boolean(), ([layout, chosen], hasOtherKit) => {
      const take = takeOf(layout);
      const modules = take.modules.filter((_, i) => chosen[i]);
      if (modules.length === 0) return;
      const clip = clipOf(layout.kit, take, modules);
      const before = findingsOf(layout.kit, alone(take, modules, clip.ribbons), (id) => id);

      // A second copy beside the first, so that every id is fresh; then the first one is taken away.
      const wide = take.rows.map((each) => ({ ...each, widthHp: 9000 }));
      const home = alone({ ...take, rows: wide }, modules, clip.ribbons);
      const kit = hasOtherKit
        ? { ...layout.kit, modules: layout.kit.modules.map((kind) => ({ ...kind, widthHp: 40 })) }
        : layout.kit;
      const opened = openClip(clipText(clip));
      if (!opened.ok) throw new Error('not a clip');
      const others = hasOtherKit ? alone(home, [], []) : home;
      const pasted = applyEdit(
        { ...layout, kit, takes: [others] },
        { type: 'paste', take: take.id, clip: opened.value },
      );
      if (!pasted.ok) throw new Error(pasted.error.message);
      const copies = takeOf(pasted.value).modules.slice(others.modules.length);
      const laid = takeOf(pasted.value).ribbons.slice(others.ribbons.length);
      const originals = new Map([
        ...copies.map(({ id }, i) => [id, modules[i]?.id ?? ''] as const),
        ...laid.map(({ id }, i) => [id, clip.ribbons[i]?.id ?? ''] as const),
      ]);
      const after = findingsOf(pasted.value.kit, alone(take, copies, laid), (id) => originals.get(id) ?? id);
      const placed = (list: readonly string[]) => list.filter((each) => !/^\["(off-row|no-host)"/.test(each));
      expect(placed(after)).toEqual(placed(before));
      told += after.length;
    });
    fc.assert(property, runs(150));
    expect(told).toBeGreaterThan(100);
  });

  it('makes of any layout one that opens', () => {
    const property = fc.property(anyGroup, arbitraryLayout, ([layout, chosen], target) => {
      const take = takeOf(layout);
      const clip = clipOf(
        layout.kit,
        take,
        take.modules.filter((_, i) => chosen[i]),
      );
      const edit = { type: 'paste', take: takeOf(target).id, clip: deepFreeze(clip) } as const;
      const pasted = applyEdit(deepFreeze(target), edit);
      if (!pasted.ok) throw new Error(pasted.error.message);
      expect(openDocument(pasted.value)).toEqual({ ok: true, value: pasted.value });
      const added = takeOf(pasted.value).modules.length - takeOf(target).modules.length;
      expect(added).toBe(clip.modules.length);
    });
    fc.assert(property, runs(150));
  });
});
