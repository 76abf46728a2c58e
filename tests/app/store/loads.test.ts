import { describe, expect, test } from 'vitest';
import { analyse } from '../../../app/store/analysis.ts';
import { loadsOf } from '../../../app/store/loads.ts';
import type { Layout } from '../../../src/index.ts';
import { demoLayout } from '../../../src/layout/demo.ts';

const loadsOfTake = ({ kit, takes }: Layout, take: number) => {
  const shown = takes[take];
  if (!shown) throw new Error('no such take');
  return loadsOf(analyse(kit, shown).derived);
};

const figures = (loads: readonly { voltage: string; ma: number; rating: number }[] | undefined) =>
  loads?.map(({ voltage, ma, rating }) => [voltage, ma, rating]);

describe('loads', () => {
  test('are the sums of what the kinds of the fed modules draw', () => {
    // Added up by hand from the demo's kinds: 120 + 3·50 + 6·35 + 2·60 + 2·80 + 60 + 110, and so on.
    const { supplies, unfed } = loadsOfTake(demoLayout(), 0);
    expect(figures(supplies[0]?.loads)).toEqual([
      ['+12', 930, 1600],
      ['-12', 590, 800],
      ['+5', 30, 500],
    ]);
    expect(unfed).toEqual([]);
  });

  test('what has no lead stands apart', () => {
    // Jetty A, Cobble 1 to 3 and Boulder 1: 50 + 3·35 + 60 and 45 + 3·25 + 45.
    const { supplies, unfed } = loadsOfTake(demoLayout(), 1);
    expect(figures(unfed)).toEqual([
      ['+12', 215, 0],
      ['-12', 165, 0],
    ]);
    expect(figures(supplies[0]?.loads)?.[0]).toEqual(['+12', 715, 1600]);
  });

  test('an unknown draw makes the sum a least one', () => {
    const demo = demoLayout();
    const modules = demo.kit.modules.map((kind) =>
      kind.id === 'kelp' ? { ...kind, draws: { '+12': null } } : kind,
    );
    const { supplies } = loadsOfTake({ ...demo, kit: { ...demo.kit, modules } }, 0);
    expect(supplies[0]?.loads[0]).toMatchObject({ voltage: '+12', ma: 870, atLeast: true });
    expect(supplies[0]?.loads[1]?.atLeast).toBe(false);
  });
});
