import { describe, expect, it } from 'vitest';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout, Take } from '../../src/layout/layout.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { seatedOnOf, seatPlaces } from '../../src/wiring/seat-places.ts';

const demo = demoLayout();

function without(take: Take, ribbon: string, connector: number): Take {
  return {
    ...take,
    ribbons: take.ribbons.map((one) =>
      one.id === ribbon ? { ...one, seats: one.seats.filter((seat) => seat.connector !== connector) } : one,
    ),
  };
}

function placesOf({ kit, takes: [take] }: Layout, ribbonId: string, connector: number, lifted = true) {
  const derived = deriveTake(kit, lifted ? without(take as Take, ribbonId, connector) : (take as Take));
  const ribbon = derived.wiring.ribbonById.get(ribbonId);
  if (!ribbon) throw new Error('no ribbon');
  return seatPlaces(derived, ribbon, connector).map(seatedOnOf);
}

describe('places for a connector', () => {
  it('are the free headers of its lines, the nearest first', () => {
    expect(placesOf(demo, 's1', 3)).toEqual([{ module: 'cobble-1', header: 'shore' }]);
    const [take] = demo.takes as [Take];
    const noS2 = { ...demo, takes: [{ ...take, ribbons: take.ribbons.filter(({ id }) => id !== 's2') }] };
    expect(placesOf(noS2, 's1', 0).map((on) => 'module' in on && on.module)).toEqual([
      'boulder-1',
      'jetty-b',
      'boulder-2',
      'cobble-3',
      'cobble-4',
    ]);
  });

  it('are none where all are taken, its own included: that one is not free', () => {
    expect(placesOf(demo, 's1', 3, false)).toEqual([]);
  });

  it('of a plug are sockets without one', () => {
    expect(placesOf(demo, 't2', 2)).toEqual([{ ribbon: 't1', connector: 0 }]);
  });

  it('of a lead are on boards too, and only where it has no more contacts than there are pins', () => {
    const wide = placesOf(demo, 'l1', 0);
    expect(wide.filter((on) => 'board' in on).length).toBe(9);
    expect(wide.some((on) => 'module' in on && on.module.startsWith('cobble'))).toBe(false);
  });

  it('of a lead from a board are on modules', () => {
    const narrow = placesOf(demo, 'l2', 1);
    expect(narrow.every((on) => 'module' in on)).toBe(true);
    expect(narrow).toContainEqual({ module: 'boulder-1', header: 'power' });
    expect(narrow).toContainEqual({ module: 'cobble-5', header: 'power' });
  });
});
