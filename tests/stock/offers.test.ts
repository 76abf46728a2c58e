import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../src/edit/apply.ts';
import type { Edit } from '../../src/edit/edit.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Bus, Kit, Layout, ModuleKind } from '../../src/layout/layout.ts';
import { emptyLayout } from '../../src/layout/starter.ts';
import {
  allOf,
  changeStock,
  emptyStock,
  kitFromStock,
  type MyStock,
  type StockDeed,
} from '../../src/stock/my-stock.ts';
import { keepInStock, type Offer, offersFor, openOffers, takeFromStock } from '../../src/stock/offers.ts';
import { arbitraryLayout } from '../support/arbitrary-layout.ts';
import { whyNotOpened } from '../support/opened.ts';
import { runs } from '../support/runs.ts';

const demo = demoLayout();

function done(stock: MyStock, deed: StockDeed): MyStock {
  const after = changeStock(stock, deed);
  if (!after.ok) throw new Error(after.error);
  return after.value;
}

function edited(layout: Layout, edit: Edit | undefined): Layout {
  const after = edit ? applyEdit(layout, edit) : undefined;
  if (!after?.ok) throw new Error(after?.error.message ?? 'nothing to do');
  return after.value;
}

const full = (kit: Kit): MyStock => done(emptyStock(), { do: 'keep', from: kit, kinds: allOf(kit) });

const withCobble = (kit: Kit, change: Partial<ModuleKind>): Kit => ({
  ...kit,
  modules: kit.modules.map((kind) => (kind.id === 'cobble' ? { ...kind, ...change } : kind)),
});

const withBus = (kit: Kit, id: string, change: Partial<Bus>): Kit => ({
  ...kit,
  buses: kit.buses.map((bus) => (bus.id === id ? { ...bus, ...change } : bus)),
});

const changed = (offers: readonly Offer[]): readonly Offer[] =>
  offers.filter(({ standing }) => standing !== 'same');

const told = (stock: MyStock, kit: Kit): string[] =>
  changed(offersFor(stock, kit)).map(({ sort, name, standing, differences }) =>
    [`${sort} ${name}: ${standing}`, ...differences].join('; '),
  );

const standings = (stock: MyStock, kit: Kit): string[] =>
  offersFor(stock, kit).map(({ standing }) => standing);

describe('my stock beside a layout', () => {
  it('has nothing to say of what it was filled from', () => {
    expect(full(demo.kit).layout.kit).toEqual({ ...demo.kit });
    expect(told(full(demo.kit), demo.kit)).toEqual([]);
    expect(new Set(standings(emptyStock(), demo.kit))).toEqual(new Set(['here']));
    expect(new Set(standings(full(demo.kit), emptyLayout(demo.kit).kit))).toEqual(new Set(['same']));
  });

  it('tells what the layout has otherwise, and takes it in or gives its own back', () => {
    const stock = full(demo.kit);
    const kit = withCobble(demo.kit, { depthMm: 35, draws: { '+12': 35, '-12': null } });
    expect(told(stock, kit)).toEqual([
      'module Cobble: other; depth: 35 mm here, 32 mm in my stock; current at −12 V: unknown here, 25 mA in my stock',
    ]);
    const offers = changed(offersFor(stock, kit));
    const taken = edited({ ...demo, kit }, takeFromStock(stock, kit, offers));
    expect(taken.kit).toEqual(demo.kit);
    expect(taken.takes).toBe(demo.takes);

    const after = done(stock, keepInStock(stock, kit, offers));
    expect(told(after, kit)).toEqual([]);
    // A layout that still has what my stock had before is the older one.
    expect(told(after, demo.kit)).toEqual([
      'module Cobble: newer; depth: 32 mm here, 35 mm in my stock; current at −12 V: 25 mA here, unknown in my stock',
    ]);
    const newer = edited(demo, takeFromStock(after, demo.kit, changed(offersFor(after, demo.kit))));
    expect(told(after, newer.kit)).toEqual([]);
  });

  it('is no longer newer when it goes back to what it was', () => {
    const stock = full(demo.kit);
    const kit = withCobble(demo.kit, { depthMm: 35 });
    const there = done(stock, keepInStock(stock, kit, changed(offersFor(stock, kit))));
    const back = done(there, keepInStock(there, demo.kit, changed(offersFor(there, demo.kit))));
    expect(told(back, demo.kit)).toEqual([]);
    expect(told(back, kit).join()).toContain('module Cobble: newer');
  });

  it('shares counts: one that is changed is offered to the layout and nothing else is', () => {
    const stock = full(withCobble(demo.kit, { owned: 9, price: 80 }));
    expect(told(stock, demo.kit)).toEqual([
      'module Cobble: counts; owned: 6 here, 9 in my stock; price: not said here, 80 in my stock',
    ]);
    const taken = edited(demo, takeFromStock(stock, demo.kit, openOffers(stock, offersFor(stock, demo.kit))));
    expect(taken.kit.modules.find(({ id }) => id === 'cobble')).toMatchObject({ owned: 9, price: 80 });
  });

  it('may keep both, under an id and a name that tell them apart', () => {
    const stock = full(demo.kit);
    const kit = withCobble(demo.kit, { widthHp: 6 });
    const after = done(stock, keepInStock(stock, kit, changed(offersFor(stock, kit)), 'beside'));
    expect(after.layout.kit.modules.map(({ id, name }) => `${id} ${name}`)).toContain('cobble-1 Cobble 2');
    // Each layout finds its own.
    expect(told(after, kit)).toEqual(['module Cobble: stock']);
    expect(told(after, demo.kit)).toEqual(['module Cobble 2: stock']);
  });

  it('offers a bus that differs by its pins, and not every kind that is on it', () => {
    const stock = full(demo.kit);
    const pinout = demo.kit.buses[0]?.pinout.map((line) => (line === 'strike' ? 'trigger' : line)) ?? [];
    const kit = withBus(demo.kit, 'shore', { pinout });
    expect(told(stock, kit)).toEqual(['bus Shore: other; pin 10: trigger here, strike in my stock']);
    const taken = edited({ ...demo, kit }, takeFromStock(stock, kit, changed(offersFor(stock, kit))));
    expect(taken.kit).toEqual(demo.kit);
  });

  it('takes a kind into a layout that has another bus of that name along with its own bus', () => {
    const stock = full(demo.kit);
    const kit: Kit = {
      ...withBus(demo.kit, 'shore', { pinout: ['GND', 'GND', 'up', 'down'] }),
      modules: [],
      ribbons: [],
    };
    const [boulder] = offersFor(stock, kit).filter(({ name }) => name === 'Boulder');
    const taken = edited(
      { ...emptyLayout(demo.kit), kit },
      takeFromStock(stock, kit, boulder ? [boulder] : []),
    );
    expect(taken.kit.modules[0]?.headers[0]?.bus).toBe('shore-1');
    expect(taken.kit.buses.find(({ id }) => id === 'shore-1')?.pinout).toHaveLength(10);
  });

  it('hides what was left until either side changes', () => {
    const stock = full(demo.kit);
    const kit = withCobble(demo.kit, { depthMm: 35 });
    const [offer] = openOffers(stock, offersFor(stock, kit));
    const left = done(stock, { do: 'leave', key: offer?.key ?? '' });
    expect(openOffers(left, offersFor(left, kit))).toEqual([]);
    expect(openOffers(left, offersFor(left, withCobble(demo.kit, { depthMm: 36 })))).toHaveLength(1);
    const again = done(left, { do: 'look again' });
    expect(openOffers(again, offersFor(again, kit))).toHaveLength(1);
  });

  it('refuses to replace what has changed since it was looked at', () => {
    const stock = full(demo.kit);
    const kit = withCobble(demo.kit, { depthMm: 35 });
    const deed = keepInStock(stock, kit, changed(offersFor(stock, kit)));
    const meanwhile = full(withCobble(demo.kit, { depthMm: 40 }));
    expect(changeStock(meanwhile, deed)).toEqual({
      ok: false,
      error: 'It has changed in your stock meanwhile: look again',
    });
  });

  it('overwrites nothing when a file comes back', () => {
    const stock = full(demo.kit);
    expect(done(stock, { do: 'keep', from: demo.kit, kinds: allOf(demo.kit) })).toBe(stock);
    const other = withCobble(demo.kit, { widthHp: 6 });
    const after = done(stock, { do: 'keep', from: other, kinds: allOf(other) });
    expect(after.layout.kit.modules.slice(0, -1)).toEqual(demo.kit.modules);
    expect(after.layout.kit.modules.at(-1)).toMatchObject({ id: 'cobble-1', name: 'Cobble 2', widthHp: 6 });
    expect(done(after, { do: 'keep', from: other, kinds: allOf(other) }), 'brought back twice').toBe(after);
    const silent = done(stock, { do: 'keep', from: other, kinds: allOf(other), onlyNew: true });
    expect(silent).toBe(stock);
  });

  it('gives up a kind, and a bus only when nothing is on it', () => {
    const stock = full(demo.kit);
    const less = done(stock, { do: 'remove', sort: 'module', id: 'gull' });
    expect(less.layout.kit.modules.map(({ id }) => id)).not.toContain('gull');
    expect(changeStock(stock, { do: 'remove', sort: 'bus', id: 'shore' })).toEqual({
      ok: false,
      error: 'Kinds in your stock use this bus',
    });
  });

  it('starts a case that has all of it, and the power headers that a board needs', () => {
    expect(whyNotOpened(emptyLayout(kitFromStock(emptyStock())))).toBeUndefined();
    const kit = kitFromStock(full(demo.kit));
    expect(kit).toEqual(demo.kit);
    expect(whyNotOpened(emptyLayout(kit))).toBeUndefined();
  });
});

describe('any stock beside any layout', () => {
  it('opens again after all is kept and all is taken, and then has nothing to say', () => {
    fc.assert(
      fc.property(arbitraryLayout, arbitraryLayout, (one, other) => {
        const stock = full(one.kit);
        expect(whyNotOpened(stock.layout)).toBeUndefined();
        const decided = offersFor(stock, other.kit).filter(
          ({ kept, standing }) => kept && standing !== 'same',
        );
        const edit = takeFromStock(stock, other.kit, decided);
        const after = edit ? applyEdit(other, edit) : undefined;
        if (after?.ok) expect(whyNotOpened(after.value)).toBeUndefined();
        const kept = changeStock(stock, { do: 'keep', from: other.kit, kinds: allOf(other.kit) });
        if (!kept.ok) throw new Error(kept.error);
        expect(whyNotOpened(kept.value.layout)).toBeUndefined();
        // All that there was is there as it was.
        expect(kept.value.layout.kit.modules.slice(0, one.kit.modules.length)).toEqual(
          stock.layout.kit.modules,
        );
      }),
      runs(60),
    );
  });
});
