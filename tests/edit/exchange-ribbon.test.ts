import { describe, expect, it } from 'vitest';
import type { Edit } from '../../src/edit/edit.ts';
import { applied, littleLayout, module, refusalOf, ribbon, seats, takeOf } from '../support/little-layout.ts';

const layout = littleLayout({
  modules: ['a', 'b', 'c'].map((id, i) => module(id, 'cobble', i * 5)),
  ribbons: [
    ribbon('long', 'shore3', seats('a', null, 'b'), { stripe: 'up', twists: [0, 1] }),
    ribbon('in it', 'extension', seats(['long', 1], 'c')),
    ribbon('held', 'shore3', seats('c'), { locked: true }),
  ],
});

const change = (id: string, kind: string, connectors?: readonly number[]): Edit => ({
  type: 'exchange-ribbon',
  take: 'take',
  ribbon: id,
  kind,
  ...(connectors && { connectors }),
});

const ribbonAfter = (edit: Edit, id: string) =>
  takeOf(applied(layout, edit)).ribbons.find((r) => r.id === id);

describe('changing the kind of a ribbon', () => {
  it('keeps every seat where the new kind has as many connectors', () => {
    expect(ribbonAfter(change('long', 'extension'), 'long')).toEqual(
      ribbon('long', 'extension', seats('a', null, 'b'), { stripe: 'up', twists: [0, 1] }),
    );
    expect(ribbonAfter(change('long', 'extension'), 'in it')).toBe(takeOf(layout).ribbons[1]);
  });

  it('puts connectors where it is told, and the plugs that sit in them along', () => {
    const kept = change('in it', 'shore3', [1, 2]);
    expect(ribbonAfter(kept, 'in it')?.seats.map(({ connector }) => connector)).toEqual([1, 2]);
    const plugged = littleLayout({
      modules: [module('a', 'cobble', 0)],
      ribbons: [ribbon('r', 'shore3', seats('a')), ribbon('s', 'extension', seats(['r', 1]))],
    });
    const after = takeOf(applied(plugged, change('r', 'extension', [0, 2])));
    expect(after.ribbons[1]?.seats).toEqual(seats(['r', 2]));
  });

  it('takes the first ones in order where the new kind is shorter, and none of the stripe where it hangs loose', () => {
    const two = littleLayout({
      modules: [module('a', 'cobble', 0), module('b', 'cobble', 5)],
      ribbons: [ribbon('r', 'shore3', seats(null, 'a', 'b'), { stripe: 'up', twists: [1, 1] })],
    });
    expect(takeOf(applied(two, change('r', 'lead'))).ribbons[0]).toEqual(
      ribbon('r', 'lead', seats('a', 'b')),
    );
  });

  it('refuses what would leave a connector without a place', () => {
    expect(refusalOf(layout, change('long', 'lead'))).toBe('Lead has 2 connectors, too few for long');
    expect(refusalOf(layout, change('long', 'extension', [0, 2]))).toContain('3 connectors in use');
    expect(refusalOf(layout, change('long', 'extension', [2, 1, 0]))).toContain('3 connectors in use');
    expect(refusalOf(layout, change('held', 'extension'))).toBe('held is locked');
    expect(refusalOf(layout, change('long', 'nothing'))).toBe('There is no kind of ribbon "nothing"');
    expect(refusalOf(layout, change('nobody', 'lead'))).toBe('There is no ribbon "nobody"');
  });

  it('changes nothing where it is of that kind', () => {
    expect(applied(layout, change('long', 'shore3'))).toBe(layout);
  });
});
