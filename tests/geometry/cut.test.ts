import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkTake } from '../../src/checks/run.ts';
import { solveArch } from '../../src/geometry/arch.ts';
import { CUT_END_MM, type CutCase, type CutFlaw, cutRibbon, usualSlacks } from '../../src/geometry/cut.ts';
import { LIMIT_FACTS, limitsOf } from '../../src/layout/defaults.ts';
import type { Layout, Limits } from '../../src/layout/layout.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { connectorsAt, measure, seatsOnMeasured } from '../../src/wiring/measure.ts';
import { runs } from '../support/runs.ts';

const limits: Limits = limitsOf({ voltages: [], buses: [], modules: [], ribbons: [] });
const cutCase = (xsMm: readonly number[], more: Partial<CutCase> = {}): CutCase => ({
  places: xsMm.map((xMm) => ({ xMm, yMm: 38, zMm: 30 })),
  depthMm: 60,
  limits,
  ...more,
});

/*
 * Worked by hand after the elastica for small slack: with the free length ℓ = L − 6 and the slack s, the height is
 * (2/π)·√(ℓ·s) (1 − …), see the arch's own tests for its table. The figures below are that arch at the very L and d.
 */
describe('a ribbon cut to measure', () => {
  it('lies straight, its places those of the headers, where it shall not bend', () => {
    const cut = cutRibbon(cutCase([76.2, 50.8, 0]));
    expect(cut.placesMm).toEqual([0, 25.4, 76.2]);
    expect(cut.lengthMm).toBe(76.2 + 2 * CUT_END_MM);
    expect(cut.gaps.map(({ clearanceMm, flaws }) => [clearanceMm, flaws])).toEqual([
      [29, []],
      [29, []],
    ]);
  });

  it('has 5 mm of slack between near headers, and 8 % between far ones', () => {
    // 8 % of 25.4 mm is 2.03 mm, of 100 mm 8 mm.
    expect(usualSlacks(cutCase([125.4, 100, 0]))).toEqual([5, 8]);
    const cut = cutRibbon(cutCase([125.4, 100, 0]), [5, 8]);
    expect(cut.placesMm).toEqual([0, 30.4, 138.4]);
    expect(cut.lengthMm).toBe(148.4);
  });

  it('stands up in the arch of its free length', () => {
    const [gap] = cutRibbon(cutCase([25.4, 0]), [5]).gaps;
    // 30.4 mm of ribbon, 6 mm of them held: 24.4 mm of free length over 19.4 mm.
    const { heightMm, radiusMm } = solveArch(24.4, 19.4);
    expect(gap?.arch).toMatchObject({ kind: 'arch', ratio: 19.4 / 24.4 });
    expect(gap?.arch?.heightMm).toBeCloseTo(heightMm, 9);
    expect(gap?.arch?.kind === 'arch' && gap.arch.radiusMm).toBeCloseTo(radiusMm, 9);
    // Small-slack estimates: (2/π)·√(24.4 · 5) = 7.03 mm, 24.4/(4π·√(5/24.4)) = 4.29 mm; both exceed by under a tenth.
    expect(heightMm).toBeGreaterThan(6.4);
    expect(heightMm).toBeLessThan(7.04);
    expect(radiusMm).toBeGreaterThan(3.9);
    expect(radiusMm).toBeLessThan(4.8);
    expect(gap?.clearanceMm).toBeCloseTo(60 - 30 - heightMm - 1, 9);
  });

  it('takes less slack where the case is shallow: the smaller of both, then what clears, then none', () => {
    // Of 100 mm, 8 mm would stand 18 mm high and 5 mm 14 mm.
    const clear = (depthMm: number) => usualSlacks(cutCase([100, 0], { depthMm }))[0] as number;
    expect(clear(60)).toBe(8);
    expect(clear(46)).toBe(5);
    const little = clear(40);
    expect(little).toBeGreaterThan(0);
    expect(little).toBeLessThan(5);
    const of = cutCase([100, 0], { depthMm: 40 });
    expect(cutRibbon(of, [little]).gaps[0]?.flaws).toEqual([]);
    expect(cutRibbon(of, [little + 0.1]).gaps[0]?.flaws).toEqual(['no-clearance']);
    // Straight, it reaches 31 mm; up to 1 mm of slack is play and no arch.
    expect(clear(31)).toBe(1);
    expect(
      usualSlacks(cutCase([100, 0], { depthMm: 31, limits: { ...limits, seatToleranceMm: 0 } })),
    ).toEqual([0]);
  });

  it('takes less slack where the headers are so near that it would bend too sharply', () => {
    const [slack] = usualSlacks(cutCase([12.7, 0]));
    expect(slack).toBeLessThan(5);
    expect(cutRibbon(cutCase([12.7, 0]), [5]).gaps[0]?.flaws).toContain('tight-bend');
    expect(cutRibbon(cutCase([12.7, 0]), [slack as number]).gaps[0]?.flaws).toEqual([]);
  });

  it('says what no cut can mend', () => {
    const flaws = (of: CutCase, slacks?: number[]): readonly CutFlaw[] =>
      cutRibbon(of, slacks).gaps.flatMap((gap) => gap.flaws);
    const at = (xMm: number, yMm = 38, zMm = 30) => ({ xMm, yMm, zMm });
    expect(flaws(cutCase([6, 0]))).toEqual(['crowded']);
    expect(flaws(cutCase([30, 0], { places: [at(30), at(0, 41.5)] }), [0])).toEqual(['out-of-line']);
    expect(flaws(cutCase([], { places: [at(30), at(0, 40)] }))).toEqual(['out-of-line']);
    expect(flaws(cutCase([], { places: [at(30), at(0, 40)] }), [0])).toEqual([]);
    expect(flaws(cutCase([], { places: [at(30), at(0, 38, 59.5)] }))).toEqual(['no-clearance']);
    // Each is within 1 mm of the next, the last 1.8 mm above the first.
    expect(flaws(cutCase([], { places: [at(60), at(30, 38.9), at(0, 39.8)] }))).toEqual([
      'out-of-line',
      'out-of-line',
    ]);
  });
});

describe('what is cut to measure, laid on its headers', () => {
  const gap = fc.constantFrom(6.5, 9, 12.7, 25.4, 30.48, 50.8, 76.2, 127.77, 254);
  const header = fc.record({
    gap,
    yMm: fc.constantFrom(38, 38, 38, 38.4, 40, 60),
    zMm: fc.integer({ min: 10, max: 50 }),
  });
  const row = fc.record({
    headers: fc.array(header, { minLength: 2, maxLength: 7 }),
    up: fc.boolean(),
    bends: fc.boolean(),
    depthMm: fc.integer({ min: 30, max: 90 }),
    limits: fc.record(
      {
        seatToleranceMm: fc.constantFrom(0, 0.5, 1),
        bendRadiusMm: fc.constantFrom(0, 3, 9),
        connectorBodyMm: fc.constantFrom(6, 8),
        ribbonMm: fc.constantFrom(1, LIMIT_FACTS.ribbonMm.value * 2),
      },
      { requiredKeys: [] },
    ),
  });

  const CHECKS: ReadonlySet<string> = new Set([
    'short-ribbon',
    'tight-bend',
    'no-clearance',
    'off-pitch',
    'out-of-line',
    'crowded',
    'displaced',
    'stripe-reversed',
  ]);

  type Drawn = typeof row extends fc.Arbitrary<infer T> ? T : never;

  /** One module for each header, wide enough for its own to stand alone. */
  function drawn({ headers, up, bends, depthMm, limits: own }: Drawn) {
    let xMm = 0;
    const kinds = headers.map(({ gap: away, yMm, zMm }, i) => {
      xMm += away;
      const pin1 = up ? 'up' : 'down';
      const place = { id: 'h', bus: 'shore', role: 'member' as const, xMm, yMm, zMm, pin1 } as const;
      return { id: `k${i}`, name: `K${i}`, widthHp: 1, depthMm: 5, draws: {}, headers: [place] };
    });
    const bus = { id: 'shore', name: 'Shore', pinout: ['GND', 'mix', 'GND', 'mix'] };
    const empty: Layout = {
      format: 'ribbonwright',
      version: 1,
      title: 'Cut',
      kit: { voltages: [], buses: [bus], modules: kinds, ribbons: [], limits: own },
      takes: [
        {
          id: 'take',
          name: 'Take',
          rows: [{ id: 'row', widthHp: 500, heightU: 3, depthMm }],
          supplies: [],
          modules: kinds.map(({ id }) => ({ id, kind: id, row: 'row', atHp: 0 })),
          ribbons: [],
        },
      ],
    };
    const [take] = empty.takes as [Layout['takes'][number]];
    const derived = deriveTake(empty.kit, take);
    const measured = measure(
      derived,
      derived.places.modules.flatMap((module) => module.headers),
    );
    if (!measured) throw new Error('fewer than two headers');
    const cut = cutRibbon(measured.cutCase, bends ? usualSlacks(measured.cutCase) : undefined);
    const kind = {
      id: 'cut',
      name: 'Cut',
      bus: 'shore',
      lay: 'flat' as const,
      ...(bends && { bends }),
      connectors: connectorsAt(cut.placesMm),
    };
    const laid = deriveTake(
      { ...empty.kit, ribbons: [kind] },
      {
        ...take,
        ribbons: [{ id: 'r', kind: 'cut', stripe: measured.stripe, seats: seatsOnMeasured(measured) }],
      },
    );
    return { cut, notes: checkTake(laid).filter(({ check }) => CHECKS.has(check)) };
  }

  it('has no note but what was said of it, and each that was said', () => {
    const property = fc.property(row, (rowDrawn) => {
      const { cut, notes } = drawn(rowDrawn);
      const said = new Set(cut.gaps.flatMap(({ flaws }) => flaws));
      // A stiff ribbon off its line may also be said to be displaced by whole pins.
      const found = new Set(notes.map(({ check }) => (check === 'displaced' ? 'out-of-line' : check)));
      expect([...found].sort()).toEqual([...said].sort());
      const isMended = (flaw: CutFlaw) => flaw === 'tight-bend';
      expect([...said].filter(isMended)).toEqual([]);
    });
    fc.assert(property, runs(400));
  });
});
