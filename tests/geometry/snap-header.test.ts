import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { panelSizeMm } from '../../src/geometry/edges.ts';
import { SNAP_GRID_MM, snapHeader } from '../../src/geometry/snap-header.ts';
import { runs } from '../support/runs.ts';

const size = panelSizeMm(10, 3);
const anyMm = fc.double({ min: -20, max: 150, noNaN: true });
const anyPlace = fc.record({ xMm: anyMm, yMm: anyMm });

describe('snapping a header', () => {
  it('holds it to the centre line and to another header, and draws both lines', () => {
    expect(snapHeader({ xMm: 24.9, yMm: 37.2 }, [{ xMm: 8, yMm: 38 }], size, 1)).toEqual({
      xMm: 25.4,
      yMm: 38,
      guides: [
        { along: 'x', atMm: 25.4 },
        { along: 'y', atMm: 38 },
      ],
    });
  });

  it('takes the nearer of two lines', () => {
    expect(snapHeader({ xMm: 24.8, yMm: 10 }, [{ xMm: 24.6, yMm: 90 }], size, 1).xMm).toBe(24.6);
  });

  it('puts it on the grid of half pins where no line is near, and draws none', () => {
    // By hand: 25.4 − 8 × 1.27 = 15.24 and 30 × 1.27 = 38.1.
    expect(snapHeader({ xMm: 15.5, yMm: 38.6 }, [], size, 1)).toEqual({ xMm: 15.24, yMm: 38.1, guides: [] });
  });

  it('never moves it further than half a step of the grid, or the reach', () => {
    const property = fc.property(anyPlace, fc.array(anyPlace, { maxLength: 4 }), (at, others) => {
      const snapped = snapHeader(at, others, size, 1);
      const most = Math.max(1, SNAP_GRID_MM / 2) + 0.001;
      expect(Math.abs(snapped.xMm - at.xMm)).toBeLessThanOrEqual(most);
      expect(Math.abs(snapped.yMm - at.yMm)).toBeLessThanOrEqual(most);
    });
    fc.assert(property, runs(300));
  });
});
