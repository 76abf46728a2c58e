import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Layout } from '../../src/layout/layout.ts';
import { openDocument } from '../../src/layout/open.ts';
import { writeLayout } from '../../src/layout/write.ts';
import { pack, unpack } from '../../src/share/codec.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { applied, littleLayout, module, ribbon, seats, takeOf } from '../support/little-layout.ts';
import { runs } from '../support/runs.ts';

const order = (to: 'front' | 'back', ...ribbons: string[]) =>
  ({ type: 'order-ribbons', take: 'take', ribbons, to }) as const;

const layout = littleLayout({
  modules: [module('a', 'cobble', 0), module('b', 'cobble', 5)],
  ribbons: [
    ribbon('r', 'shore3', seats('a', 'b')),
    ribbon('s', 'shore3', seats('a')),
    ribbon('t', 'shore3', [], { over: 2 }),
  ],
});

const overs = (of: Layout) => takeOf(of).ribbons.map(({ over }) => over);
const ids = (of: Layout) => takeOf(of).ribbons.map(({ id }) => id);

/** Those that lie over others come after them. */
const drawn = (of: Layout): string[] =>
  [...takeOf(of).ribbons].sort((a, b) => (a.over ?? 0) - (b.over ?? 0)).map(({ id }) => id);

describe('order-ribbons', () => {
  it('brings to the front and sends to the back', () => {
    const front = applied(layout, order('front', 'r'));
    expect(overs(front)).toEqual([2, undefined, 1]);
    const back = applied(front, order('back', 't'));
    expect(overs(back)).toEqual([1, undefined, -1]);
    expect(drawn(back)).toEqual(['t', 's', 'r']);
  });

  it('keeps the order of those that go together', () => {
    expect(drawn(applied(layout, order('back', 't', 's')))).toEqual(['s', 't', 'r']);
  });

  it('gives back the very layout where they lie so already', () => {
    expect(applied(layout, order('front', 't'))).toBe(layout);
    expect(applied(layout, order('back', 'r', 's'))).toBe(layout);
    expect(applied(layout, order('front', 'r', 's', 't'))).toBe(layout);
  });

  it('does not change which of two connectors in one place conducts', () => {
    const conducting = (of: Layout) =>
      deriveTake(of.kit, takeOf(of)).wiring.joints.map(({ ribbon: { id }, conducts }) => [id, conducts]);
    const before = conducting(layout);
    expect(before).toContainEqual(['s', false]);
    expect(conducting(applied(layout, order('front', 's')))).toEqual(before);
    expect(conducting(applied(layout, order('back', 'r')))).toEqual(before);
  });

  it('keeps its numbers small, and leaves the list as it is, however often the order changes', () => {
    const change = fc.record({
      to: fc.constantFrom('front' as const, 'back' as const),
      who: fc.subarray(['r', 's', 't'], { minLength: 1 }),
    });
    fc.assert(
      fc.property(fc.array(change, { maxLength: 12 }), (changes) => {
        let now = layout;
        for (const { to, who } of changes) {
          now = applied(now, order(to, ...who));
          const inOrder = drawn(now);
          const place = to === 'front' ? inOrder.slice(-who.length) : inOrder.slice(0, who.length);
          if (who.length < 3) expect([...place].sort()).toEqual([...who].sort());
          expect(Math.max(...overs(now).map((over) => Math.abs(over ?? 0)))).toBeLessThanOrEqual(3);
          expect(ids(now)).toEqual(ids(layout));
        }
      }),
      runs(60),
    );
  });

  it('goes through files and links', () => {
    const changed = applied(layout, order('back', 's'));
    const opened = openDocument(JSON.parse(writeLayout(changed)));
    if (!opened.ok) throw new Error('does not open');
    expect(overs(opened.value)).toEqual([undefined, -1, 1]);
    const packed = pack(changed);
    const unpacked = packed.ok ? unpack(packed.value) : packed;
    if (!unpacked.ok) throw new Error(unpacked.error);
    expect(overs(unpacked.value as Layout)).toEqual([undefined, -1, 1]);
  });

  it('is a whole number', () => {
    const odd = JSON.parse(writeLayout(layout));
    odd.takes[0].ribbons[0].over = 1.5;
    expect(openDocument(odd)).toMatchObject({ ok: false });
  });
});
