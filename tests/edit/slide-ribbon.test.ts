import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../src/edit/apply.ts';
import { record, startHistory, undo } from '../../src/edit/history.ts';
import type { Layout, Ribbon, RibbonKind, Take } from '../../src/layout/layout.ts';
import { applied, littleLayout, module, refusalOf, ribbon, seats, takeOf } from '../support/little-layout.ts';
import { runs } from '../support/runs.ts';

const by = (headers: number, id = 'r') =>
  ({ type: 'slide-ribbon', take: 'take', ribbon: id, to: { headers } }) as const;

const onto = (connector: number, moduleId: string, id = 'r') =>
  ({
    type: 'slide-ribbon',
    take: 'take',
    ribbon: id,
    to: { connector, on: { module: moduleId, header: 'shore' } },
  }) as const;

const BENDING: RibbonKind = {
  id: 'bending',
  name: 'Bending',
  bus: 'shore',
  lay: 'flat',
  bends: true,
  connectors: [{ atMm: 0 }, { atMm: 40 }, { atMm: 80 }],
};

/** The layout with a kind of ribbon that bends. */
const withBending = (layout: Layout): Layout => ({
  ...layout,
  kit: { ...layout.kit, ribbons: [...layout.kit.ribbons, BENDING] },
});

const cobbles = (...places: readonly (readonly [id: string, atHp: number, row?: string])[]) =>
  places.map(([id, atHp, row]) => module(id, 'cobble', atHp, row ? { row } : {}));

const at = (layout: Layout, id = 'r'): (string | null)[] => {
  const drawn = takeOf(layout).ribbons.find((one) => one.id === id)?.seats ?? [];
  return [0, 1, 2].map((connector) => {
    const on = drawn.find((one) => one.connector === connector)?.on;
    if (!on) return null;
    if ('module' in on) return on.module;
    return 'ribbon' in on ? on.ribbon : on.board;
  });
};

/** Stripe up, so that connectors run rightward seen from the front. */
const flat = (on: readonly (string | null)[], more: Partial<Ribbon> = {}, kind = 'shore3'): Ribbon =>
  ribbon('r', kind, seats(...on), { stripe: 'up', ...more });

const five = cobbles(['a', 0], ['b', 5], ['c', 10], ['d', 15], ['e', 20]);

describe('slide-ribbon, stiff', () => {
  const layout = littleLayout({ modules: five, ribbons: [flat(['a', 'b', 'c'])] });

  it('takes all seats to the next headers, rightward seen from the front', () => {
    expect(at(applied(layout, by(1)))).toEqual(['b', 'c', 'd']);
    expect(at(applied(layout, by(2)))).toEqual(['c', 'd', 'e']);
  });

  it('is undone by a slide back and by undo, to the letter', () => {
    const slid = applied(layout, by(2));
    expect(applied(slid, by(-2))).toEqual(layout);
    expect(undo(record(startHistory(layout), 'slide r', slid)).present).toBe(layout);
  });

  it('lifts what has no header to land on, beyond the end and between headers', () => {
    expect(at(applied(layout, by(3)))).toEqual(['d', 'e', null]);
    const gap = littleLayout({
      modules: cobbles(['a', 0], ['b', 5], ['c', 10], ['d', 16]),
      ribbons: [flat(['a', 'b', 'c'])],
    });
    expect(at(applied(gap, by(1)))).toEqual(['b', 'c', null]);
  });

  it('stays where it is, as the very layout, where it has nowhere to go', () => {
    for (const edit of [by(0), by(-1), by(5), by(Number.MAX_SAFE_INTEGER), onto(0, 'a')])
      expect(applied(layout, edit)).toBe(layout);
    const spare = littleLayout({ modules: five, ribbons: [flat([])] });
    expect(applied(spare, by(1))).toBe(spare);
  });

  it('seats no connector that was free, even where it comes to lie over a header', () => {
    const some = littleLayout({ modules: five, ribbons: [flat(['a', null, 'c'])] });
    expect(at(applied(some, by(1)))).toEqual(['b', null, 'd']);
  });

  it('goes past headers that another ribbon holds', () => {
    const held = littleLayout({
      modules: five,
      ribbons: [flat(['a', 'b', null]), ribbon('other', 'lead', seats('c'))],
    });
    expect(at(applied(held, by(1)))).toEqual(['b', null, null]);
    expect(at(applied(held, by(2)))).toEqual(['d', 'e', null]);
  });

  it('goes where a connector is put, into another row too', () => {
    expect(at(applied(layout, onto(2, 'd')))).toEqual(['b', 'c', 'd']);
    const rows = littleLayout({
      modules: [...five, ...cobbles(['u', 30, 'low'], ['v', 35, 'low'], ['w', 41, 'low'])],
      ribbons: [flat(['a', 'b', 'c'])],
    });
    expect(at(applied(rows, onto(1, 'v')))).toEqual(['u', 'v', null]);
  });

  it('takes a seat that misses its header along as the ribbon lies', () => {
    const missing = littleLayout({
      modules: cobbles(['a', 0], ['b', 5], ['off', 12], ['d', 17], ['x', 22]),
      ribbons: [flat(['a', 'b', 'off'])],
    });
    expect(at(applied(missing, by(1)))).toEqual(['b', null, null]);
  });

  it('leaves joints with other ribbons as they are', () => {
    const joined = littleLayout({
      modules: five,
      ribbons: [
        ribbon('tail', 'extension', seats(['main', 2], 'd', 'e'), { stripe: 'up' }),
        ribbon('main', 'shore3', seats('a', 'b'), { stripe: 'up' }),
      ],
    });
    expect(at(applied(joined, by(-1, 'tail')), 'tail')).toEqual(['main', 'c', 'd']);
    expect(takeOf(applied(joined, by(1, 'main'))).ribbons[0]).toBe(takeOf(joined).ribbons[0]);
  });

  it('runs the other way with its stripe down, and slides as it is told all the same', () => {
    const down = littleLayout({ modules: five, ribbons: [flat(['c', 'b', 'a'], { stripe: 'down' })] });
    expect(at(applied(down, by(1)))).toEqual(['d', 'c', 'b']);
  });

  it('of a connector seated twice takes the first seat along', () => {
    const [first] = seats('a');
    const [second] = seats('d');
    if (!first || !second) throw new Error('no seats');
    const twice = littleLayout({ modules: five, ribbons: [ribbon('r', 'shore3', [first, second])] });
    expect(takeOf(applied(twice, by(1))).ribbons[0]?.seats).toEqual(seats('b'));
  });

  it('is refused for a loose ribbon', () => {
    const loose = littleLayout({ modules: five, ribbons: [ribbon('r', 'lead', seats('a'))] });
    expect(refusalOf(loose, by(1))).toBe('r hangs loose and does not slide');
  });
});

describe('slide-ribbon, bending', () => {
  const uneven = cobbles(['a', 0], ['b', 5], ['c', 12], ['d', 18], ['e', 30]);
  const layout = withBending(
    littleLayout({ modules: uneven, ribbons: [flat(['a', 'b', 'c'], {}, 'bending')] }),
  );

  it('goes from header to header, however far they lie apart', () => {
    expect(at(applied(layout, by(1)))).toEqual(['b', 'c', 'd']);
    expect(at(applied(layout, by(2)))).toEqual(['c', 'd', 'e']);
    expect(at(applied(layout, by(3)))).toEqual(['d', 'e', null]);
  });

  it('goes back as it came', () => {
    expect(applied(applied(layout, by(2)), by(-2))).toEqual(layout);
  });
});

describe('there and back', () => {
  /** Modules edge to edge or a few HP apart, a ribbon on three of them, others held by leads. */
  const anyRow = fc.record({
    gaps: fc.array(fc.constantFrom(0, 0, 0, 1, 2.5), { minLength: 4, maxLength: 9 }),
    start: fc.nat({ max: 5 }),
    held: fc.array(fc.nat({ max: 8 }), { maxLength: 2 }),
    kind: fc.constantFrom('shore3', 'bending'),
    up: fc.boolean(),
    steps: fc.integer({ min: -4, max: 4 }),
  });

  it('is as before where everything lands', () => {
    let landed = 0;
    const property = fc.property(anyRow, ({ gaps, start, held, kind, up, steps }) => {
      let hp = 0;
      const modules = gaps.map((gap, i) => {
        hp += 5 + gap;
        return module(`m${i}`, 'cobble', hp);
      });
      const ids = modules.slice(start, start + 3).map(({ id }) => id);
      const others = held.flatMap((i) => {
        const id = modules[i]?.id;
        return id && !ids.includes(id) ? [ribbon(`l${i}`, 'lead', seats(id))] : [];
      });
      const on = up ? ids : ids.toReversed();
      const layout = withBending(
        littleLayout({
          modules,
          ribbons: [flat(on, up ? {} : { stripe: 'down' }, kind), ...others.slice(0, 1)],
        }),
      );
      const there = applyEdit(layout, by(steps));
      if (!there.ok) throw new Error(there.error.message);
      const taken = (take: Take): number => take.ribbons[0]?.seats.length ?? 0;
      expect(taken(takeOf(there.value))).toBeLessThanOrEqual(taken(takeOf(layout)));
      if (there.value === layout || taken(takeOf(there.value)) < taken(takeOf(layout))) return;
      if (hasStray(layout, kind)) return;
      landed++;
      expect(applied(there.value, by(-steps))).toEqual(layout);
    });
    fc.assert(property, runs(400));
    expect(landed).toBeGreaterThan(40);
  });
});

/** A stiff ribbon that misses a header does not lie on all of its seats, and slides as it lies. */
function hasStray(layout: Layout, kind: string): boolean {
  if (kind !== 'shore3') return false;
  const take = takeOf(layout);
  const places = (take.ribbons[0]?.seats ?? []).map(({ on }) =>
    'module' in on ? (take.modules.find(({ id }) => id === on.module)?.atHp ?? 0) : 0,
  );
  return places.slice(1).some((place, i) => Math.abs(place - (places[i] as number)) !== 5);
}
