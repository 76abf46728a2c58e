import { describe, expect, it } from 'vitest';
import { applied, littleLayout, module, refusalOf, ribbon, seats, takeOf } from '../support/little-layout.ts';

const layout = littleLayout({
  modules: [module('a', 'cobble', 0), module('b', 'cobble', 5)],
  ribbons: [ribbon('r', 'shore3', seats('a', 'b')), ribbon('fast', 'shore3', seats('a'), { locked: true })],
});

const unseat = (id: string, connector: number) =>
  ({ type: 'unseat', take: 'take', ribbon: id, connector }) as const;

describe('unseat', () => {
  it('takes one connector off, and leaves a ribbon without any seat as a spare', () => {
    const once = applied(layout, unseat('r', 0));
    expect(takeOf(once).ribbons[0]?.seats).toEqual(seats(null, 'b'));
    expect(takeOf(applied(once, unseat('r', 1))).ribbons[0]).toEqual(ribbon('r', 'shore3', []));
  });

  it('changes nothing for a connector that sits on nothing', () => {
    expect(applied(layout, unseat('r', 2))).toBe(layout);
  });

  it('is refused for a locked ribbon', () => {
    expect(refusalOf(layout, unseat('fast', 0))).toBe('fast is locked');
  });
});
