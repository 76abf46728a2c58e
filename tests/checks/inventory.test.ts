import { describe, expect, it } from 'vitest';
import { type Count, inventoryOf, leftOf, shoppingFor, shortOf } from '../../src/checks/inventory.ts';
import { searchSubstitutes } from '../../src/checks/remedies/substitutes.ts';
import { checkTake } from '../../src/checks/run.ts';
import { applyEdit } from '../../src/edit/apply.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout, RibbonKind } from '../../src/layout/layout.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import type { WholeTake } from '../../src/wiring/whole-take.ts';

const demo = demoLayout();

const taken = (layout: Layout, take: number): WholeTake => {
  const found = layout.takes[take];
  if (!found) throw new Error('no such take');
  return deriveTake(layout.kit, found);
};

/** The demo with some figures of its ribbon kinds changed. */
const demoWith = (change: (kind: RibbonKind) => Partial<RibbonKind> | undefined): Layout => ({
  ...demo,
  kit: { ...demo.kit, ribbons: demo.kit.ribbons.map((kind) => ({ ...kind, ...change(kind) })) },
});

const line = (count: Count): string =>
  `${count.name}: ${count.used} of ${count.owned ?? '?'}, ${leftOf(count) ?? '?'} left, ${shortOf(count)} short`;

function substitutes(take: WholeTake, kind: string) {
  const search = searchSubstitutes(take, kind);
  for (;;) {
    const { done, value } = search.next();
    if (done) return value;
  }
}

describe('what the demo’s first take uses', () => {
  const counts = inventoryOf(taken(demo, 0));
  // Counted by hand in the lists of src/layout/demo.ts.
  it('is counted module by module', () => {
    expect(counts.filter(({ sort }) => sort === 'module').map(line)).toEqual([
      'Harbour: 1 of 1, 0 left, 0 short',
      'Jetty: 3 of 3, 0 left, 0 short',
      'Cobble: 6 of 6, 0 left, 0 short',
      'Boulder: 2 of 2, 0 left, 0 short',
      'Gull: 2 of 2, 0 left, 0 short',
      'Kelp: 1 of 1, 0 left, 0 short',
      'Foghorn: 1 of 1, 0 left, 0 short',
    ]);
  });

  it('and ribbon by ribbon, lead by lead', () => {
    expect(counts.filter(({ sort, used }) => sort === 'ribbon' && used > 0).map(line)).toEqual([
      'Shore, 3 at 5 HP: 1 of 1, 0 left, 0 short',
      'Shore, 5 at 5 HP: 1 of 1, 0 left, 0 short',
      'Shore, 4 bending: 1 of 1, 0 left, 0 short',
      'Tide, 3 bending: 1 of 1, 0 left, 0 short',
      'Tide, extension: 1 of 1, 0 left, 0 short',
      'Tide, loose link: 1 of 1, 0 left, 0 short',
    ]);
    expect(counts.filter(({ sort }) => sort === 'lead').map(line)).toEqual([
      'Lead 16-way, 150 mm: 3 of 3, 0 left, 0 short',
      'Lead 16 to 10, 150 mm: 0 of 3, 3 left, 0 short',
      'Lead 16-way, 250 mm: 1 of 3, 2 left, 0 short',
      'Lead 16 to 10, 250 mm: 1 of 3, 2 left, 0 short',
      'Lead 16-way, 400 mm: 1 of 3, 2 left, 0 short',
      'Lead 16 to 10, 400 mm: 2 of 3, 1 left, 0 short',
      'Lead 16-way, 600 mm: 0 of 3, 3 left, 0 short',
      'Lead 16 to 10, 600 mm: 0 of 3, 3 left, 0 short',
    ]);
    expect(shoppingFor(counts)).toEqual({ pieces: 0, cost: 0, unpriced: 0 });
  });

  it('costs what is short, as far as prices are known', () => {
    const poor = demoWith(({ id }) =>
      id === 'lead-16-150' ? { owned: 1 } : id === 'shore-5' ? { owned: 0 } : undefined,
    );
    // Two leads at 4 each, and one ribbon of which the demo names no price.
    expect(shoppingFor(inventoryOf(taken(poor, 0)))).toEqual({ pieces: 3, cost: 8, unpriced: 1 });
  });

  it('is not said to be short of what nobody counts', () => {
    const uncounted = demo.kit.ribbons.map(({ owned: _, ...kind }): RibbonKind => kind);
    const layout: Layout = { ...demo, kit: { ...demo.kit, ribbons: uncounted } };
    const shore = inventoryOf(taken(layout, 0)).find(({ id }) => id === 'shore-5') as Count;
    expect([leftOf(shore), shortOf(shore)]).toEqual([undefined, 0]);
  });
});

describe('a substitute', () => {
  const severe = (take: WholeTake) => checkTake(take).filter(({ level }) => level !== 'reminder').length;

  it('for a lead is a longer one that is owned', () => {
    const poor = demoWith(({ id }) => (id === 'lead-16-150' ? { owned: 2 } : undefined));
    const found = substitutes(taken(poor, 0), 'lead-16-150');
    expect(found.map(({ label }) => label)).toEqual([
      'Use Lead 16-way, 250 mm for L4',
      'Use Lead 16-way, 400 mm for L4',
      'Use Lead 16-way, 600 mm for L4',
    ]);
    const none = demoWith(({ id }) =>
      id === 'lead-16-150' ? { owned: 2 } : id.startsWith('lead-') ? { owned: 0 } : undefined,
    );
    expect(substitutes(taken(none, 0), 'lead-16-150')).toEqual([]);
  });

  it('for a ribbon lies over the same headers and brings no fault', () => {
    const poor = demoWith(({ id }) => (id === 'shore-5' ? { owned: 0 } : undefined));
    const take = taken(poor, 0);
    const found = substitutes(take, 'shore-5');
    // Boulder 1 lies two pitches from Cobble 2: six or seven at that pitch reach as well.
    expect(found.map(({ label }) => label)).toEqual(
      expect.arrayContaining(['Use Shore, 6 at 5 HP for S1', 'Use Shore, 7 at 5 HP for S1']),
    );
    for (const { edit } of found) {
      const done = applyEdit(poor, edit);
      if (!done.ok) throw new Error(done.error.message);
      const after = taken(done.value, 0);
      expect(severe(after)).toBe(severe(take));
      expect(shoppingFor(inventoryOf(after)).pieces).toBe(0);
    }
  });

  it('is not offered for a ribbon that is locked, nor one that is used already', () => {
    const poor = demoWith(({ id }) => (id === 'shore-5' ? { owned: 0 } : undefined));
    const [first] = poor.takes;
    const locked = applyEdit(poor, {
      type: 'lock-ribbon',
      take: first?.id ?? '',
      ribbons: ['s1'],
      locked: true,
    });
    if (!locked.ok) throw new Error(locked.error.message);
    expect(substitutes(taken(locked.value, 0), 'shore-5')).toEqual([]);
    // Shore, 3 at 5 HP is owned once and lies as S3.
    const three = demoWith(({ id }) => (id === 'shore-bend-4' ? { owned: 0 } : undefined));
    const labels = substitutes(taken(three, 0), 'shore-bend-4').map(({ label }) => label);
    expect(labels.join()).not.toContain('Shore, 3 at');
  });
});
