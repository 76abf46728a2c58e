import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { powerOf } from '../../src/electrical/power.ts';
import { solveTake } from '../../src/electrical/solution.ts';
import { spanCurrents } from '../../src/electrical/span-currents.ts';
import { type Watts, wattsOf } from '../../src/electrical/watts.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout } from '../../src/layout/layout.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { bigLayout } from '../support/big-take.ts';
import { loopedLayout } from '../support/looped-layout.ts';
import { runs } from '../support/runs.ts';

const takesOf = ({ kit, takes }: Layout) => takes.map((take) => deriveTake(kit, take));

const sum = (values: Iterable<number>): number => [...values].reduce((total, value) => total + value, 0);

/** What is given and not accounted for, as a share of what is used. */
function missing({ supplies, modules, lost }: Watts): number {
  const used = sum(modules.values());
  return Math.abs(sum(supplies) - used - lost) / Math.max(1, used);
}

describe('watts', () => {
  it('of the demo are those of its kinds: nominal voltage times current, less what ribbons lose', () => {
    const [take] = takesOf(demoLayout());
    const watts = wattsOf(powerOf(take ?? expect.fail('no take')));
    // 930 mA of 12 V, 590 mA of −12 V and 30 mA of 5 V.
    expect(sum(watts.supplies)).toBeCloseTo(12 * 0.93 + 12 * 0.59 + 5 * 0.03, 9);
    expect(watts.lost).toBeGreaterThan(0);
    expect(missing(watts)).toBeLessThan(1e-9);
  });

  it('are conserved: what supplies give is what modules use and what wires lose', () => {
    for (const layout of [demoLayout(), bigLayout(60)])
      for (const take of takesOf(layout)) expect(missing(wattsOf(powerOf(take)))).toBeLessThan(1e-9);
    const property = fc.property(loopedLayout, (layout) => {
      for (const take of takesOf(layout)) expect(missing(wattsOf(powerOf(take)))).toBeLessThan(1e-9);
    });
    fc.assert(property, runs(150));
  });
});

describe('currents along ribbons', () => {
  it('are the segments of the solution, of which those between unused connectors are one', () => {
    const property = fc.property(loopedLayout, fc.constantFrom('+12', '-12', '+5', 'GND'), (layout, line) => {
      for (const take of takesOf(layout)) {
        const { segments } = solveTake(take);
        for (const { ribbon, from, to, ma, conductors } of spanCurrents(powerOf(take), line)) {
          const along = segments.filter(
            (segment) =>
              segment.ribbon === ribbon.id &&
              segment.line === line &&
              segment.from >= from &&
              segment.to <= to,
          );
          expect(along).toHaveLength(to - from);
          for (const segment of along) {
            expect(segment.ma).toBe(ma);
            expect(segment.perContactMa).toBe(ma / conductors);
          }
        }
      }
    });
    fc.assert(property, runs(100));
  });
});
