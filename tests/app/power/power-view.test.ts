import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { moduleRows } from '../../../app/power/module-rows.ts';
import { powerView } from '../../../app/power/power-view.ts';
import { solveTake } from '../../../src/electrical/solution.ts';
import { deriveTake, GND, type Layout, powerOf } from '../../../src/index.ts';
import { demoLayout } from '../../../src/layout/demo.ts';
import { loopedLayout } from '../../support/looped-layout.ts';
import { runs } from '../../support/runs.ts';

const deriveAt = ({ kit, takes }: Layout, at = 0) => deriveTake(kit, takes[at] ?? expect.fail('no take'));

const viewOf = (layout: Layout, at = 0) => powerView(powerOf(deriveAt(layout, at)));

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** The demo with a change of one kind. */
function withKind(id: string, change: object): Layout {
  const demo = demoLayout();
  const modules = demo.kit.modules.map((kind) => (kind.id === id ? { ...kind, ...change } : kind));
  return { ...demo, kit: { ...demo.kit, modules } };
}

describe('the power view', () => {
  test('tells for each supply and voltage what is drawn, what may be, and who draws most', () => {
    const [supply] = viewOf(demoLayout()).supplies;
    expect(supply?.bars.map(({ voltage, ma, ratingMa }) => [voltage, Math.round(ma), ratingMa])).toEqual([
      ['+12', 930, 1600],
      ['-12', 590, 800],
      ['+5', 30, 500],
    ]);
    const [plus] = supply?.bars ?? [];
    expect(plus?.untilHeadroomMa).toBeCloseTo(0.8 * 1600, 9);
    expect(plus?.eaters.slice(0, 2).map(({ name, ma }) => [name, ma])).toEqual([
      ['Harbour', 120],
      ['Foghorn', 110],
    ]);
    expect(plus?.eaters[0]?.share).toBeCloseTo(120 / 930, 9);
  });

  test('tells who draws nobody knows how much', () => {
    const [plus] = viewOf(withKind('kelp', { draws: { '+12': null } })).supplies[0]?.bars ?? [];
    expect(plus?.unknown).toEqual(['Kelp']);
    expect(plus?.ma).toBeCloseTo(930 - 60, 9);
  });

  test('tells what is not fed, and counts it nowhere else', () => {
    const { unfed, supplies } = viewOf(demoLayout(), 1);
    expect(unfed.map(({ name }) => name)).toEqual([
      'Jetty A',
      'Cobble 1',
      'Cobble 2',
      'Cobble 3',
      'Boulder 1',
    ]);
    expect(unfed[0]?.voltages).toEqual(['+12', '-12']);
    const names = supplies.flatMap(({ bars }) =>
      bars.flatMap(({ eaters }) => eaters.map(({ name }) => name)),
    );
    expect(names).not.toContain('Jetty A');
  });

  test('counts the headers of boards and tells their limits', () => {
    const demo = demoLayout();
    const [take, ...takes] = demo.takes;
    if (!take) throw new Error('no take');
    const supplies = take.supplies.map((supply) => ({
      ...supply,
      boards: supply.boards.map((board, i) => (i === 0 ? { ...board, limits: { '+12': 700 } } : board)),
    }));
    const { boards } = viewOf({ ...demo, takes: [{ ...take, supplies }, ...takes] });
    expect(boards.map(({ name, used, headers }) => [name, used, headers])).toEqual([
      ['Board 1', 5, 8],
      ['Board 2', 3, 8],
    ]);
    expect(boards[0]?.lines[0]).toMatchObject({ voltage: '+12', limitMa: 700 });
    expect(boards[0]?.lines[1]?.limitMa).toBeUndefined();
    expect(sum(boards.map(({ lines }) => lines[0]?.ma ?? 0))).toBeCloseTo(930, 9);
  });

  test('conserves: draws are the solution’s, eaters make up what one supply gives, watts in are watts out', () => {
    const property = fc.property(loopedLayout, (layout) => {
      const take = deriveAt(layout);
      const { supplies, boards } = solveTake(take);
      const view = powerView(powerOf(take));
      for (const { id, bars } of view.supplies)
        for (const { voltage, ma } of bars) expect(ma).toBe(supplies[id]?.[voltage]);
      for (const { id, lines } of view.boards)
        for (const { voltage, ma } of lines) expect(ma).toBe(boards[id]?.[voltage]);
      const { given, used, lost, rows } = view.watts;
      expect(Math.abs(given - used - lost)).toBeLessThan(1e-9 * Math.max(1, given));
      expect(sum(rows.map(({ watts }) => watts))).toBeCloseTo(used, 9);
      expect(sum(view.supplies.map(({ watts }) => watts))).toBeCloseTo(given, 9);
    });
    fc.assert(property, runs(100));
    for (const { bars } of viewOf(demoLayout()).supplies)
      for (const { ma, eaters } of bars) expect(sum(eaters.map((eater) => eater.ma))).toBeCloseTo(ma, 9);
  });
});

describe('what arrives at modules', () => {
  const rowsOf = (layout: Layout, line: string, at = 0) => moduleRows(powerOf(deriveAt(layout, at)), line);

  test('is what the solution says, the worst first', () => {
    const take = deriveAt(demoLayout());
    const { modules } = solveTake(take);
    for (const [line, nominal] of [
      ['+12', 12],
      ['-12', -12],
    ] as const) {
      const rows = moduleRows(powerOf(take), line);
      expect(rows).toHaveLength(take.places.modules.length);
      for (const { id, arrival } of rows) {
        const between = (modules[id]?.[line] ?? 0) - (modules[id]?.GND ?? 0);
        expect(arrival?.volts).toBeCloseTo(between, 9);
        expect(arrival?.mv).toBeCloseTo(1000 * Math.abs(nominal - between), 6);
        expect(arrival?.groundMv).toBeCloseTo(1000 * (modules[id]?.GND ?? 0), 6);
        expect(arrival?.allowedMv).toBe(250);
      }
      const losses = rows.map(({ arrival }) => arrival?.mv ?? Number.NaN);
      expect(losses).toEqual(losses.toSorted((a, b) => b - a));
    }
  });

  test('tells first what does not arrive, and leaves out what does not use it', () => {
    const rows = rowsOf(demoLayout(), '+12', 1);
    expect(rows.slice(0, 5).map(({ arrival }) => arrival)).toEqual(new Array(5).fill(undefined));
    expect(rows[5]?.arrival).toBeDefined();
    // +5 V comes on 16-way leads only; of those that it does not reach none draws it.
    const five = rowsOf(demoLayout(), '+5');
    expect(five.length).toBeGreaterThan(0);
    expect(five.every(({ arrival }) => arrival)).toBe(true);
    expect(five.map(({ name }) => name)).not.toContain('Cobble 1');
  });

  test('of ground is its shift, against what is worth knowing', () => {
    const [worst] = rowsOf(demoLayout(), GND);
    expect(worst?.arrival).toMatchObject({ allowedMv: 5 });
    expect(worst?.arrival?.volts).toBeUndefined();
    expect(worst?.arrival?.mv).toBe(worst?.arrival?.groundMv);
  });

  test('tells what the figures rest on', () => {
    const known = new Map(rowsOf(demoLayout(), '+12').map((row) => [row.name, row.known]));
    expect([known.get('Cobble 1'), known.get('Gull 1'), known.get('Kelp')]).toEqual([
      'measured',
      'published',
      'guessed',
    ]);
    const kelp = rowsOf(withKind('kelp', { known: undefined, draws: { '+12': null } }), '+12').find(
      ({ name }) => name === 'Kelp',
    );
    expect(kelp).toMatchObject({ known: 'not said', isDrawUnknown: true, atLeast: true });
    // A voice of unknown draw: what is linked to it loses more than is told, and nothing else.
    const rows = rowsOf(withKind('boulder', { draws: { '+12': null, '-12': 45 } }), '+12');
    const of = (name: string) => rows.find((row) => row.name === name);
    expect(of('Boulder 1')).toMatchObject({ isDrawUnknown: true, atLeast: true });
    expect(of('Cobble 1')).toMatchObject({ isDrawUnknown: false, atLeast: true });
    expect(of('Gull 1')).toMatchObject({ isDrawUnknown: false, atLeast: false });
  });
});
