import { describe, expect, it } from 'vitest';
import type { SeatedOn } from '../../src/layout/layout.ts';
import { applied, littleLayout, module, refusalOf, ribbon, seats, takeOf } from '../support/little-layout.ts';

const layout = littleLayout({
  modules: [module('a', 'cobble', 0), module('b', 'cobble', 5), module('j', 'jetty', 10)],
  ribbons: [
    ribbon('r', 'shore3', [...seats('a', 'b'), ...seats('j')]),
    ribbon('tail', 'extension', []),
    ribbon('fast', 'shore3', [], { label: 'S9', locked: true }),
  ],
});

const seat = (id: string, connector: number, on: SeatedOn) =>
  ({ type: 'seat-connector', take: 'take', ribbon: id, connector, on }) as const;

const seatsAfter = (id: string, connector: number, on: SeatedOn) =>
  takeOf(applied(layout, seat(id, connector, on))).ribbons.find((each) => each.id === id)?.seats;

const onJetty = { module: 'j', header: 'tide' };

describe('seat-connector', () => {
  it('seats a free connector on a header, a board or another ribbon', () => {
    expect(seatsAfter('tail', 1, onJetty)).toEqual([{ connector: 1, on: onJetty }]);
    expect(seatsAfter('tail', 1, { board: 'board', header: 'p1' })).toHaveLength(1);
    expect(seatsAfter('tail', 0, { ribbon: 'r', connector: 2 })).toEqual(seats(['r', 2]));
  });

  it('takes a connector off all that it sat on, in the place of its first seat', () => {
    expect(seatsAfter('r', 0, onJetty)).toEqual([{ connector: 0, on: onJetty }, ...seats(null, 'b')]);
  });

  it('ends a double seat also where the first of the two is meant', () => {
    expect(seatsAfter('r', 0, { module: 'a', header: 'shore' })).toEqual(seats('a', 'b'));
  });

  it('changes nothing where it sits there already', () => {
    expect(applied(layout, seat('r', 1, { module: 'b', header: 'shore' }))).toBe(layout);
  });

  it('is refused for a locked ribbon', () => {
    expect(refusalOf(layout, seat('fast', 0, onJetty))).toBe('S9 is locked');
  });
});
