import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ModuleMove, MoveModules } from '../../src/edit/move-modules.ts';
import type { Module } from '../../src/layout/layout.ts';
import { applied, littleLayout, module, row, takeOf, widthHpOf } from '../support/little-layout.ts';
import { runs } from '../support/runs.ts';

const ROW_HP = 60;

type Drop = Omit<ModuleMove, 'row'>;

const dropped = (drops: readonly Drop[], rowId = 'top'): MoveModules => ({
  type: 'move-modules',
  take: 'take',
  moves: drops.map((drop) => ({ ...drop, row: rowId })),
  push: true,
});

/** Pushes within one row; the places afterwards, by module id. */
function push(modules: readonly Module[], moves: readonly Drop[]): Record<string, number> {
  const layout = littleLayout({ modules, rows: [row('top', ROW_HP)] });
  const after = applied(layout, dropped(moves));
  return Object.fromEntries(takeOf(after).modules.map(({ id, atHp }) => [id, atHp]));
}

const cobbles = (...places: readonly number[]): Module[] =>
  places.map((atHp, i) => module('abcdefgh'[i] as string, 'cobble', atHp));

describe('a push', () => {
  it('moves a neighbour to the side on which it lies, and the next ones as far as they are reached', () => {
    expect(push(cobbles(40, 20, 26, 33), [{ module: 'a', atHp: 17 }])).toEqual({
      a: 17,
      b: 22,
      c: 27,
      d: 33,
    });
    expect(push(cobbles(40, 20, 14, 5), [{ module: 'a', atHp: 23 }])).toEqual({ a: 23, b: 18, c: 13, d: 5 });
  });

  it('lets one right under the middle go to where the moved module came from', () => {
    expect(push(cobbles(0, 5, 10), [{ module: 'a', atHp: 5 }])).toEqual({ a: 5, b: 0, c: 10 });
    expect(push(cobbles(10, 5, 0), [{ module: 'a', atHp: 5 }])).toEqual({ a: 5, b: 10, c: 0 });
  });

  it('leaves alone what it does not reach, overlaps of others included', () => {
    expect(push(cobbles(0, 20, 22, 40), [{ module: 'a', atHp: 10 }])).toEqual({ a: 10, b: 20, c: 22, d: 40 });
  });

  it('keeps whole HP whole, and all else on halves', () => {
    const gull = module('g', 'gull', 30);
    const halves = [module('a', 'cobble', 8.5), module('b', 'cobble', 13.5)];
    expect(push([gull, ...cobbles(5, 10)], [{ module: 'g', atHp: 2 }])).toEqual({ g: 2, a: 7, b: 12 });
    expect(push([gull, ...halves], [{ module: 'g', atHp: 4.3 }])).toEqual({ g: 4.3, a: 9, b: 14 });
    expect(push([module('m', 'gull', 0), module('a', 'cobble', 3)], [{ module: 'm', atHp: 0.25 }])).toEqual({
      m: 0.25,
      a: 5,
    });
  });

  it('stops at a pinned module: what cannot give way stays, overlapped', () => {
    const [a, b, c, d] = cobbles(50, 10, 15, 21) as [Module, Module, Module, Module];
    const modules = [a, b, c, { ...d, pinned: true }];
    expect(push(modules, [{ module: 'a', atHp: 6 }])).toEqual({ a: 6, b: 11, c: 16, d: 21 });
    expect(push(modules, [{ module: 'a', atHp: 7 }])).toEqual({ a: 7, b: 10, c: 15, d: 21 });
  });

  it('stops at the ends of the row', () => {
    expect(push(cobbles(30, 0, 5), [{ module: 'a', atHp: 8 }])).toEqual({ a: 8, b: 0, c: 5 });
    expect(push(cobbles(30, 50, 55), [{ module: 'a', atHp: 47 }])).toEqual({ a: 47, b: 50, c: 55 });
    expect(push(cobbles(30, 49, 54), [{ module: 'a', atHp: 45 }])).toEqual({ a: 45, b: 50, c: 55 });
  });

  it('takes several moved modules with no room between them as one', () => {
    const [a, b, c] = cobbles(0, 5, 32) as [Module, Module, Module];
    const moves = (atHp: number) => [
      { module: 'a', atHp },
      { module: 'b', atHp: atHp + 5 },
    ];
    expect(push([a, b, c], moves(30))).toEqual({ a: 30, b: 35, c: 25 });
    expect(push([a, b, c], moves(28))).toEqual({ a: 28, b: 33, c: 38 });
  });

  it('leaves a neighbour between two moved modules where it has room', () => {
    const moves = [
      { module: 'a', atHp: 20 },
      { module: 'b', atHp: 32 },
    ];
    expect(push(cobbles(0, 12, 24), moves)).toEqual({ a: 20, b: 32, c: 25 });
  });

  it('holds a pinned module against moved ones on both sides of it', () => {
    const [a, b, c, d, e] = cobbles(40, 50, 14, 19, 25) as [Module, Module, Module, Module, Module];
    const moves = [
      { module: 'a', atHp: 10 },
      { module: 'b', atHp: 30 },
    ];
    expect(push([a, b, c, { ...d, pinned: true }, e], moves)).toEqual({ a: 10, b: 30, c: 14, d: 19, e: 25 });
  });

  it('takes moved modules that lie on one another as one', () => {
    const modules = [
      module('n', 'boulder', 11),
      module('p', 'cobble', 27, { pinned: true }),
      ...['a', 'b'].map((id) => module(id, 'mark', 0, { row: 'low' })),
      module('c', 'cobble', 0, { row: 'low' }),
    ];
    const moves = [
      { module: 'a', atHp: 4 },
      { module: 'c', atHp: 26 },
      { module: 'b', atHp: 4 },
    ];
    expect(push(modules, moves)).toEqual({ n: 11, p: 27, a: 4, b: 4, c: 26 });
  });

  it('does nothing around a module that stays where it is', () => {
    const layout = littleLayout({ modules: cobbles(0, 3) });
    expect(applied(layout, dropped([{ module: 'a', atHp: 0 }]))).toBe(layout);
  });

  it('works in every row that something is moved to, and in no other', () => {
    const modules = [
      ...cobbles(0, 10),
      module('x', 'cobble', 10, { row: 'low' }),
      module('y', 'cobble', 0, { row: 'low' }),
    ];
    const after = takeOf(
      applied(littleLayout({ modules }), dropped([{ module: 'a', atHp: 8 }], 'low')),
    ).modules;
    expect(after.map(({ row: rowId, atHp }) => [rowId, atHp])).toEqual([
      ['low', 8],
      ['top', 10],
      ['low', 13],
      ['low', 0],
    ]);
    expect(after[1]).toBe(modules[1]);
    expect(after[3]).toBe(modules[3]);
  });
});

interface Scene {
  readonly neighbours: readonly Module[];
  readonly moved: readonly Module[];
  readonly moves: readonly Drop[];
}

/** Neighbours that overlap nothing, on whole HP, some pinned; and modules to drop among them. */
const scene = (movedModules: number, pins: boolean): fc.Arbitrary<Scene> =>
  fc
    .record({
      gaps: fc.array(
        fc.record({
          gap: fc.nat({ max: 4 }),
          kind: fc.constantFrom('cobble', 'mark', 'boulder'),
          pinned: pins ? fc.boolean() : fc.constant(false),
        }),
        { minLength: 1, maxLength: 7 },
      ),
      drops: fc.array(
        fc.record({
          kind: fc.constantFrom('cobble', 'mark', 'boulder'),
          atHp: fc.integer({ min: 0, max: 45 }),
        }),
        { minLength: 1, maxLength: movedModules },
      ),
    })
    .map(({ gaps, drops }) => {
      const neighbours: Module[] = [];
      let atHp = 0;
      for (const [i, { gap, kind, pinned }] of gaps.entries()) {
        const next = module(`n${i}`, kind, atHp + gap, { pinned });
        if (next.atHp + widthHpOf(next) > ROW_HP) break;
        neighbours.push(next);
        atHp = next.atHp + widthHpOf(next);
      }
      const moved = drops.map(({ kind }, i) => module(`m${i}`, kind, 0, { row: 'low' }));
      return { neighbours, moved, moves: drops.map((drop, i) => ({ module: `m${i}`, atHp: drop.atHp })) };
    });

/** The row afterwards: neighbours in their old order, then the moved modules. */
function pushed({ neighbours, moved, moves }: Scene): { neighbours: Module[]; moved: Module[] } {
  const layout = littleLayout({ modules: [...neighbours, ...moved] });
  const { modules } = takeOf(applied(layout, dropped(moves)));
  return { neighbours: modules.slice(0, neighbours.length), moved: modules.slice(neighbours.length) };
}

const endOf = (each: Module): number => each.atHp + widthHpOf(each);
const overlap = (a: Module, b: Module): boolean => a.atHp < endOf(b) && b.atHp < endOf(a);
const middle = (each: Module): number => each.atHp + widthHpOf(each) / 2;
const widths = (modules: readonly Module[]): number =>
  modules.reduce((sum, each) => sum + widthHpOf(each), 0);

describe('any push', () => {
  it('keeps order and pins, and makes no overlap between neighbours', () => {
    const property = fc.property(scene(4, true), (drawn) => {
      const { neighbours, moved } = pushed(drawn);
      neighbours.forEach((each, i) => {
        const before = drawn.neighbours[i] as Module;
        if (before.pinned) expect(each).toBe(before);
        const next = neighbours[i + 1];
        if (next) expect(next.atHp).toBeGreaterThanOrEqual(endOf(each));
        expect(each.atHp).toBeGreaterThanOrEqual(0);
        expect(endOf(each)).toBeLessThanOrEqual(ROW_HP);
        for (const put of moved) if (!overlap(before, put)) expect(overlap(each, put)).toBe(false);
      });
      expect(moved.map(({ atHp }) => atHp)).toEqual(drawn.moves.map(({ atHp }) => atHp));
    });
    fc.assert(property, runs(2000));
  });

  it('moves each neighbour of a single module just as far as it must, where there is room to do so', () => {
    let roomy = 0;
    const property = fc.property(scene(1, true), (drawn) => {
      const { neighbours, moved } = pushed(drawn);
      const put = moved[0] as Module;
      const right = drawn.neighbours.filter((each) => middle(each) >= middle(put));
      const left = drawn.neighbours.filter((each) => middle(each) < middle(put)).reverse();
      const upTo = (queue: readonly Module[]) => {
        const pin = queue.findIndex(({ pinned }) => pinned);
        return pin < 0 ? queue : queue.slice(0, pin);
      };
      const freeRight = upTo(right);
      const freeLeft = upTo(left);
      const rightWall = right[freeRight.length]?.atHp ?? ROW_HP;
      const leftPin = left[freeLeft.length];
      const leftWall = leftPin ? endOf(leftPin) : 0;
      const after = new Map(neighbours.map((each) => [each.id, each.atHp]));

      if (widths(freeRight) <= rightWall - endOf(put)) {
        roomy++;
        let edge = endOf(put);
        for (const each of freeRight) {
          const atHp = Math.max(each.atHp, edge);
          expect(after.get(each.id)).toBe(atHp);
          edge = atHp + widthHpOf(each);
        }
      }
      if (widths(freeLeft) <= put.atHp - leftWall) {
        roomy++;
        let edge = put.atHp;
        for (const each of freeLeft) {
          const atHp = Math.min(each.atHp, edge - widthHpOf(each));
          expect(after.get(each.id)).toBe(atHp);
          edge = atHp;
        }
      }
    });
    fc.assert(property, runs(2000));
    expect(roomy).toBeGreaterThan(1000);
  });

  it('leaves no overlap with several modules where the row has room on either side of them', () => {
    let roomy = 0;
    const property = fc.property(scene(3, false), (drawn) => {
      const { neighbours, moved } = pushed(drawn);
      const roomLeft = Math.min(...moved.map(({ atHp }) => atHp));
      const roomRight = ROW_HP - Math.max(...moved.map(endOf));
      if (widths(neighbours) > Math.min(roomLeft, roomRight)) return;
      roomy++;
      for (const each of neighbours) for (const put of moved) expect(overlap(each, put)).toBe(false);
    });
    fc.assert(property, runs(4500));
    expect(roomy).toBeGreaterThan(300);
  });
});
