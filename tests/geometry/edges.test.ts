import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DOCUMENT_EDGES, type Edges, measuredFrom, panelSizeMm } from '../../src/geometry/edges.ts';
import { runs } from '../support/runs.ts';

const REAR_TOP: Edges = { across: 'rear-left', up: 'top' };

const anyEdges: fc.Arbitrary<Edges> = fc.record({
  across: fc.constantFrom('front-left', 'rear-left'),
  up: fc.constantFrom('bottom', 'top'),
});
const anySize = fc
  .tuple(fc.integer({ min: 1, max: 200 }), fc.constantFrom(1, 3, 6))
  .map(([halves, heightU]) => panelSizeMm(halves / 2, heightU));
/** As finely as a caliper reads, and ten times finer. */
const anyMm = fc.integer({ min: -50_000, max: 500_000 }).map((thousandths) => thousandths / 1000);
const anyPlace = fc.record({ xMm: anyMm, yMm: anyMm });

describe('edges of a panel', () => {
  it('measures from the side that is looked at', () => {
    // By hand: 5 HP are 25.4 mm; a panel of 3U is 128.4 mm high (IEC 60297-3-101, as quoted in secondary texts).
    const size = panelSizeMm(5, 3);
    expect(measuredFrom(REAR_TOP, size, { xMm: 5.4, yMm: 38 })).toEqual({ xMm: 20, yMm: 90.4 });
    expect(measuredFrom(DOCUMENT_EDGES, size, { xMm: 5.4, yMm: 38 })).toEqual({ xMm: 5.4, yMm: 38 });
    expect(measuredFrom({ across: 'rear-left', up: 'bottom' }, size, { xMm: 12.7, yMm: 38 })).toEqual({
      xMm: 12.7,
      yMm: 38,
    });
  });

  it('gives the very place again when it is measured back', () => {
    const property = fc.property(anyEdges, anySize, anyPlace, (edges, size, place) => {
      expect(measuredFrom(edges, size, measuredFrom(edges, size, place))).toEqual(place);
    });
    fc.assert(property, runs(500));
  });

  it('keeps distances between places, whatever they are measured from', () => {
    const property = fc.property(anyEdges, anySize, anyPlace, anyPlace, (edges, size, a, b) => {
      const [from, to] = [measuredFrom(edges, size, a), measuredFrom(edges, size, b)];
      expect(Math.abs(from.xMm - to.xMm)).toBeCloseTo(Math.abs(a.xMm - b.xMm), 5);
      expect(Math.abs(from.yMm - to.yMm)).toBeCloseTo(Math.abs(a.yMm - b.yMm), 5);
    });
    fc.assert(property, runs(200));
  });
});
