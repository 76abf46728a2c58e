import { describe, expect, it } from 'vitest';
import { demoLayout } from '../../src/layout/demo.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { joinedWith } from '../../src/wiring/joined.ts';

const { kit, takes } = demoLayout();
const [take] = takes;
if (!take) throw new Error('no take');
const derived = deriveTake(kit, take);

function joined(modules: readonly string[], ribbons: readonly string[] = []) {
  const found = joinedWith(derived, { modules: new Set(modules), ribbons: new Set(ribbons) });
  return [[...found.modules].sort(), [...found.ribbons].sort()];
}

const VOICES = ['boulder-1', 'cobble-1', 'cobble-2', 'jetty-a'];
const JETTIES = ['harbour', 'jetty-a', 'jetty-b', 'jetty-c'];

describe('what is joined', () => {
  it('with a voice is its group and the ribbon of it, and no lead', () => {
    expect(joined(['cobble-1'])).toEqual([VOICES, ['s1']]);
  });

  it('with a ribbon is all of its harness, joints and other rows included', () => {
    expect(joined([], ['t3'])).toEqual([JETTIES, ['t1', 't2', 't3']]);
  });

  it('with a module of two groups is both; asked again it goes one group further', () => {
    const both = joined(['jetty-a']);
    expect(both).toEqual([[...new Set([...VOICES, ...JETTIES])].sort(), ['s1', 't1', 't2', 't3']]);
    expect(joined(both[0] ?? [], both[1])[1]).toEqual(['s1', 's2', 's3', 't1', 't2', 't3']);
  });

  it('with a lead starts from the module that it feeds', () => {
    expect(joined([], ['l2'])).toEqual([VOICES, ['l2', 's1']]);
  });

  it('with a module on nothing but its lead is itself', () => {
    expect(joined(['gull-1'])).toEqual([['gull-1'], []]);
    expect(joined([])).toEqual([[], []]);
  });

  it('holds what a ribbon sits on even where it does not conduct', () => {
    const doubled = {
      ...take,
      ribbons: [
        ...take.ribbons,
        {
          id: 'second',
          kind: 'shore-2',
          seats: [
            { connector: 0, on: { module: 'cobble-3', header: 'shore' } },
            { connector: 1, on: { module: 'cobble-5', header: 'shore' } },
          ],
        },
      ],
    };
    const { modules } = joinedWith(deriveTake(kit, doubled), {
      modules: new Set(),
      ribbons: new Set(['second']),
    });
    expect([...modules].sort()).toEqual(['cobble-3', 'cobble-5']);
  });
});
