import { describe, expect, it } from 'vitest';
import type { ModuleMove } from '../../src/edit/move-modules.ts';
import { applied, littleLayout, module, refusalOf, takeOf } from '../support/little-layout.ts';

const move = (...moves: readonly ModuleMove[]) => ({ type: 'move-modules', take: 'take', moves }) as const;

const layout = littleLayout({
  modules: [
    module('a', 'cobble', 0, { label: 'Cobble 1', pinned: true }),
    module('b', 'cobble', 5.000_04),
    module('c', 'gull', 20, { pinned: true }),
  ],
});
const { modules } = takeOf(layout);

describe('move-modules', () => {
  it('moves within a row and to another, past its ends and onto others', () => {
    const after = takeOf(applied(layout, move({ module: 'b', row: 'low', atHp: -3 }))).modules;
    expect(after[1]).toEqual(module('b', 'cobble', -3, { row: 'low' }));
    expect([after[0], after[2]]).toEqual([modules[0], modules[2]]);
    expect(after[0]).toBe(modules[0]);
  });

  it('changes nothing where a module stands already, noise included', () => {
    expect(applied(layout, move({ module: 'b', row: 'top', atHp: 5.000_04 }))).toBe(layout);
    expect(applied(layout, move())).toBe(layout);
  });

  it('tidies a place that it is asked to tidy', () => {
    expect(takeOf(applied(layout, move({ module: 'b', row: 'top', atHp: 5 }))).modules[1]?.atHp).toBe(5);
  });

  it('leaves pinned ones of a group where they are', () => {
    const after = applied(
      layout,
      move({ module: 'a', row: 'top', atHp: 30 }, { module: 'b', row: 'top', atHp: 35 }),
    );
    expect(takeOf(after).modules.map(({ atHp }) => atHp)).toEqual([0, 35, 20]);
  });

  it('is refused where all are pinned', () => {
    const a = { module: 'a', row: 'top', atHp: 30 };
    const c = { module: 'c', row: 'top', atHp: 40 };
    expect(refusalOf(layout, move(a))).toBe('Cobble 1 is pinned');
    expect(refusalOf(layout, move(c))).toBe('Gull is pinned');
    expect(refusalOf(layout, move(a, c))).toBe('All 2 modules are pinned');
  });
});
