import { describe, expect, it } from 'vitest';
import type { Edit } from '../../src/edit/edit.ts';
import { applied, littleLayout, module, refusalOf, ribbon, seats, takeOf } from '../support/little-layout.ts';

const layout = littleLayout({
  modules: [module('a', 'cobble', 0), module('b', 'cobble', 5)],
  ribbons: [
    ribbon('r', 'shore3', seats('a', 'b'), { twists: [1] }),
    ribbon('loose', 'lead', []),
    ribbon('held', 'shore3', [], { locked: true }),
  ],
});

const twist = (id: string, after: number, halfTwists: number): Edit => ({
  type: 'twist-ribbon',
  take: 'take',
  ribbon: id,
  after,
  halfTwists,
});

const twists = (edit: Edit) => takeOf(applied(layout, edit)).ribbons[0]?.twists;

describe('twisting a ribbon', () => {
  it('sets one gap and leaves the others', () => {
    expect(twists(twist('r', 1, 2))).toEqual([1, 2]);
    expect(twists(twist('r', 0, 3))).toEqual([3]);
  });

  it('leaves no list of nothing behind', () => {
    expect(takeOf(applied(layout, twist('r', 0, 0))).ribbons[0]).not.toHaveProperty('twists');
  });

  it('changes nothing where nothing would be other', () => {
    expect(applied(layout, twist('r', 0, 1))).toBe(layout);
    expect(applied(layout, twist('r', 1, 0))).toBe(layout);
  });

  it('refuses loose and locked ribbons, gaps that are not there, and parts of a twist', () => {
    expect(refusalOf(layout, twist('loose', 0, 1))).toBe('loose hangs loose and has no twists');
    expect(refusalOf(layout, twist('held', 0, 1))).toBe('held is locked');
    expect(refusalOf(layout, twist('r', 2, 1))).toBe('r has no gap after connector 3');
    for (const part of [0.5, -1, Number.NaN])
      expect(refusalOf(layout, twist('r', 0, part))).toContain('whole');
  });
});
