import { describe, expect, it } from 'vitest';
import { crossed } from '../../src/checks/rules/crossed.ts';
import { stripeReversed } from '../../src/checks/rules/stripe-reversed.ts';
import type { Layout } from '../../src/layout/layout.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { applied, littleLayout, module, refusalOf, ribbon, seats, takeOf } from '../support/little-layout.ts';

const turn = (id: string, mode: 'keep' | 'mirror') =>
  ({ type: 'turn-ribbon', take: 'take', ribbon: id, seats: mode }) as const;

/** Connectors run from right to left seen from the front; the headers have pin 1 up, the stripe lies down. */
const layout = littleLayout({
  modules: [
    module('a', 'cobble', 10),
    module('b', 'cobble', 5),
    module('c', 'cobble', 0),
    module('d', 'cobble', 20),
  ],
  ribbons: [
    ribbon('main', 'shore3', seats('a', 'b', 'c')),
    ribbon('tail', 'extension', seats(['main', 2], 'd')),
    ribbon('own', 'extension', seats(['own', 1])),
    ribbon('loose', 'lead', seats('a', 'd'), { label: 'L1' }),
    ribbon('fast', 'shore3', seats('a'), { locked: true }),
  ],
});

const found = (check: typeof crossed, of: Layout) =>
  [...check.find(deriveTake(of.kit, takeOf(of)))].filter(({ subjects }) => subjects[0]?.id === 'main');

describe('turn-ribbon', () => {
  it('only turns the stripe where seats are kept, and back again', () => {
    const turned = applied(layout, turn('main', 'keep'));
    expect(takeOf(turned).ribbons[0]).toEqual({ ...takeOf(layout).ribbons[0], stripe: 'up' });
    expect(takeOf(turned).ribbons[1]).toBe(takeOf(layout).ribbons[1]);
    expect(applied(turned, turn('main', 'keep'))).toEqual(layout);
  });

  it('numbers seats from the other end where they are mirrored, joints of others and its own included', () => {
    const turned = takeOf(applied(layout, turn('main', 'mirror'))).ribbons;
    expect(turned[0]?.seats.map(({ connector }) => connector)).toEqual([2, 1, 0]);
    expect(turned[0]?.seats.map(({ on }) => on)).toEqual(
      takeOf(layout).ribbons[0]?.seats.map(({ on }) => on),
    );
    expect(turned[1]?.seats).toEqual(seats(['main', 0], 'd'));
    const looped = takeOf(applied(layout, turn('own', 'mirror'))).ribbons[2];
    expect(looped?.seats).toEqual([{ connector: 2, on: { ribbon: 'own', connector: 1 } }]);
  });

  it('mends a reversed stripe and keeps the order when mirrored', () => {
    expect(found(stripeReversed, layout)).toHaveLength(3);
    const turned = applied(layout, turn('main', 'mirror'));
    expect(found(stripeReversed, turned)).toEqual([]);
    expect(found(crossed, turned)).toEqual([]);
    expect(applied(turned, turn('main', 'mirror'))).toEqual(layout);
  });

  it('is refused for a loose ribbon and for a locked one', () => {
    expect(refusalOf(layout, turn('loose', 'keep'))).toBe('L1 hangs loose and has no way round');
    expect(refusalOf(layout, turn('fast', 'keep'))).toBe('fast is locked');
  });
});
