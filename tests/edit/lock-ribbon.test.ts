import { describe, expect, it } from 'vitest';
import { applied, littleLayout, module, refusalOf, ribbon, seats, takeOf } from '../support/little-layout.ts';

const lock = (locked: boolean, ...ribbons: string[]) =>
  ({ type: 'lock-ribbon', take: 'take', ribbons, locked }) as const;

const layout = littleLayout({
  modules: [module('a', 'cobble', 0), module('b', 'cobble', 5)],
  ribbons: [ribbon('r', 'shore3', seats('a', 'b')), ribbon('s', 'shore3', [], { locked: false })],
});

describe('lock-ribbon', () => {
  it('locks ribbons and lets them go again', () => {
    const locked = applied(layout, lock(true, 'r', 's'));
    expect(takeOf(locked).ribbons.map((one) => one.locked)).toEqual([true, true]);
    expect(applied(applied(layout, lock(true, 'r')), lock(false, 'r'))).toEqual(layout);
  });

  it('gives back the very layout where they are so already, said or not', () => {
    expect(applied(layout, lock(false, 'r', 's'))).toBe(layout);
  });

  it('holds off every change but label, unlocking and removal', () => {
    const locked = applied(layout, lock(true, 'r'));
    const of = { take: 'take', ribbon: 'r' };
    const on = { module: 'a', header: 'shore' };
    for (const edit of [
      { type: 'unseat', ...of, connector: 0 },
      { type: 'seat-connector', ...of, connector: 2, on },
      { type: 'turn-ribbon', ...of, seats: 'keep' },
      { type: 'twist-ribbon', ...of, after: 0, halfTwists: 1 },
      { type: 'slide-ribbon', ...of, to: { headers: 1 } },
      { type: 'slide-ribbon', ...of, to: { connector: 0, on: { module: 'b', header: 'shore' } } },
    ] as const)
      expect(refusalOf(locked, edit), edit.type).toBe('r is locked');
    expect(refusalOf(locked, { type: 'label-ribbon', ...of, label: 'S1' })).toBeUndefined();
    expect(refusalOf(locked, { type: 'remove-ribbons', take: 'take', ribbons: ['r'] })).toBeUndefined();
  });
});
