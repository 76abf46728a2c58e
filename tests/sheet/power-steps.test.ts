import { describe, expect, it } from 'vitest';
import { powerOf } from '../../src/electrical/power.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout, Take } from '../../src/layout/layout.ts';
import { emptyLayout } from '../../src/layout/starter.ts';
import { powerSteps } from '../../src/sheet/power-steps.ts';
import { deriveTake } from '../../src/wiring/derive.ts';

const steps = (layout: Layout) => powerSteps(powerOf(deriveTake(layout.kit, layout.takes[0] as Take)));

describe('the order of powering up', () => {
  const demo = steps(demoLayout());

  it('goes from unplugged by the supply alone and boards to one island after another', () => {
    expect(demo.map(({ title }) => title.replace(/: .*/, ''))).toEqual([
      'Unplugged',
      'Supply alone',
      'Boards, no modules',
      ...Array.from({ length: demo.length - 4 }, (_, i) => `Island ${i + 1}`),
      'All together',
    ]);
    expect(new Set(demo.map(({ key }) => key)).size).toBe(demo.length);
  });

  it('expects in all what the islands draw together', () => {
    const drawn = demo
      .slice(3, -1)
      .flatMap(({ places }) => places.flatMap(({ lines }) => lines))
      .filter(({ line }) => line === '+12')
      .reduce((sum, { ma = 0 }) => sum + ma, 0);
    const [supply] = demo.at(-1)?.places ?? [];
    expect(supply?.lines.find(({ line }) => line === '+12')?.ma).toBeCloseTo(drawn, 6);
  });

  it('expects at each module a little less than the supply gives', () => {
    for (const { lines } of demo.slice(3, -1).flatMap(({ places }) => places)) {
      for (const { volts = 0, nominal } of lines) {
        expect(Math.abs(volts)).toBeLessThan(Math.abs(nominal));
        expect(Math.abs(volts)).toBeGreaterThan(Math.abs(nominal) * 0.98);
      }
    }
  });

  it('ends with the boards where nothing is fed yet, and before the supply where none gives anything', () => {
    const empty = emptyLayout();
    expect(steps(empty).map(({ title }) => title)).toEqual([
      'Unplugged',
      'Supply alone',
      'Boards, no modules',
    ]);
    const takes = empty.takes.map((take) => ({ ...take, supplies: [] }));
    expect(steps({ ...empty, takes }).map(({ title }) => title)).toEqual(['Unplugged']);
  });
});
