import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Knot } from '../../src/drawing/knot.ts';
import { leadCurve } from '../../src/drawing/lead-curve.ts';
import { type Run, runOf } from '../../src/drawing/runs.ts';
import { headerPoint, layOutSheet, type Sheet, type SheetRow, yOf } from '../../src/drawing/sheet.ts';
import type { Ribbon, Take } from '../../src/index.ts';
import { deriveRack, mixedTake } from '../app/canvas/rack.ts';

const SCALE = 2;

/** The mixed take with other ribbons, or others among them. */
const withRibbons = (...ribbons: Ribbon[]): Take => ({ ...mixedTake(), ribbons });

function runIn(take: Take, id: string): { run: Run; sheet: Sheet } {
  const derived = deriveRack(take);
  const sheet = layOutSheet(derived, 'rear', SCALE);
  const ribbon = derived.wiring.ribbonById.get(id);
  const run = ribbon && runOf(sheet, derived, ribbon);
  if (!run) throw new Error(`${id} runs nowhere`);
  return { run, sheet };
}

const seat = (connector: number, module: string, header = 'h0') => ({ connector, on: { module, header } });
const states = ({ knots }: Run) => knots.map(({ state }) => state);

describe('a ribbon that does not bend', () => {
  const { run, sheet } = runIn(mixedTake(), 's1');

  it('lies straight where most of its seats agree, first connector left in the rear view', () => {
    const [a, b, c] = run.knots as [Knot, Knot, Knot];
    expect(b.x - a.x).toBeCloseTo(25.4 * SCALE, 9);
    expect(c.x - b.x).toBeCloseTo(25.4 * SCALE, 9);
    expect(new Set(run.knots.map(({ y }) => y)).size).toBe(1);
  });

  it('misses a header that stands half an HP off, and says by how much', () => {
    expect(states(run)).toEqual(['seated', 'missing', 'seated']);
    const stray = run.knots[1]?.stray;
    expect(Math.abs(stray?.dxMm ?? 0)).toBeCloseTo(2.54, 9);
    const header = deriveRack(mixedTake()).places.moduleById.get('b')?.headers[0];
    expect(stray?.x).toBeCloseTo((header && headerPoint(sheet, header).x) ?? 0, 9);
  });

  it('has its free connectors where the pitch puts them', () => {
    const { run: spare } = runIn(withRibbons({ id: 'r', kind: 'pair', seats: [seat(2, 'a')] }), 'r');
    expect(states(spare)).toEqual(['free', 'free', 'seated']);
    expect((spare.knots[2]?.x ?? 0) - (spare.knots[0]?.x ?? 0)).toBeCloseTo(50.8 * SCALE, 9);
  });

  it('runs the other way with the stripe up', () => {
    const { run: turned } = runIn(
      withRibbons({ id: 'r', kind: 'pair', stripe: 'up', seats: [seat(0, 'c'), seat(2, 'a')] }),
      'r',
    );
    expect(turned.knots[0]?.pin1).toBe('up');
    expect(turned.knots[2]?.x).toBeLessThan(turned.knots[0]?.x ?? 0);
  });

  it('changes the edge of its stripe with each half-twist', () => {
    const { run: twisted } = runIn(
      withRibbons({ id: 'r', kind: 'pair', twists: [1, 0], seats: [seat(0, 'c'), seat(2, 'a')] }),
      'r',
    );
    expect(twisted.knots.map(({ pin1 }) => pin1)).toEqual(['down', 'up', 'up']);
  });
});

describe('any ribbon', () => {
  it('runs nowhere while it is seated on nothing', () => {
    const derived = deriveRack(withRibbons({ id: 'r', kind: 'pair', seats: [] }));
    const [ribbon] = derived.wiring.ribbons;
    expect(ribbon && runOf(layOutSheet(derived, 'rear', 1), derived, ribbon)).toBeUndefined();
  });

  it('is drawn even where its joints lead round in a circle', () => {
    const derived = deriveRack(
      withRibbons(
        { id: 'p', kind: 'lead', seats: [{ connector: 0, on: { ribbon: 'q', connector: 0 } }] },
        { id: 'q', kind: 'lead', seats: [{ connector: 1, on: { ribbon: 'p', connector: 1 } }] },
      ),
    );
    const sheet = layOutSheet(derived, 'rear', 1);
    for (const ribbon of derived.wiring.ribbons) expect(runOf(sheet, derived, ribbon)).toBeUndefined();
  });

  it('lies within its box', () => {
    for (const id of ['s1', 'l1']) {
      const { run } = runIn(mixedTake(), id);
      const { left, right, top, bottom } = run.box;
      for (const { x, y } of [...run.line, ...run.knots]) {
        expect(x).toBeGreaterThanOrEqual(left);
        expect(x).toBeLessThanOrEqual(right);
        expect(y).toBeGreaterThanOrEqual(top);
        expect(y).toBeLessThanOrEqual(bottom);
      }
    }
  });
});

describe('a lead', () => {
  const sheet = layOutSheet(deriveRack(mixedTake()), 'rear', SCALE);
  const row = sheet.rows[1] as SheetRow;
  const { run } = runIn(mixedTake(), 'l1');
  const end = run.knots[0] as Knot;
  const at = (x: number, heightMm: number): Knot => ({ ...end, x, y: yOf(row, heightMm), state: 'seated' });
  const lowest = (a: Knot, b: Knot) => Math.max(...leadCurve(sheet, a, b).map(({ y }) => y));

  it('hangs from connector to connector', () => {
    expect(states(run)).toEqual(['seated', 'seated']);
    expect(run.feeds).toBe(true);
    expect(run.line[0]?.x).toBeCloseTo(run.knots[0]?.x ?? 0, 9);
    expect(run.line.at(-1)?.x).toBeCloseTo(run.knots[1]?.x ?? 0, 9);
  });

  it('hangs the lower the wider it is, so that leads nest, and never below its row', () => {
    const width = fc.double({ min: 5, max: 500, noNaN: true });
    fc.assert(
      fc.property(width, width, (a, b) => {
        const [narrow, wide] = [Math.min(a, b), Math.max(a, b)];
        const low = lowest(at(600, 60), at(600 - narrow, 60));
        const lower = lowest(at(600, 60), at(600 - wide, 60));
        expect(lower).toBeGreaterThanOrEqual(low - 1e-9);
        expect(lower).toBeLessThan(row.bottom);
      }),
    );
  });
});
