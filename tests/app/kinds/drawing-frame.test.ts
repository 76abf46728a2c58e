import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frameOf, transformOf } from '../../../app/kinds/drawing-frame.ts';
import { nudged } from '../../../app/kinds/header-drawing.tsx';
import { featuresOf } from '../../../app/kinds/photograph-hands.tsx';
import { panelSizeMm } from '../../../src/index.ts';
import { runs } from '../../support/runs.ts';

const size = panelSizeMm(10, 3);
const box = { width: 500, height: 640 };
const anyMm = fc.double({ min: -20, max: 150, noNaN: true });

describe('the frame of a drawing', () => {
  it('mirrors left and right for the rear, and only these', () => {
    const [rear, front] = [frameOf(size, 'rear', box, 1), frameOf(size, 'front', box, 1)];
    const place = { xMm: 10, yMm: 38 };
    expect(rear.at(place).y).toBe(front.at(place).y);
    expect(rear.at(place).x + front.at(place).x).toBeCloseTo(2 * rear.left + size.widthMm * rear.scale, 9);
    expect(rear.at({ xMm: 0, yMm: 0 }).x).toBeGreaterThan(rear.at({ xMm: 50, yMm: 0 }).x);
  });

  it('leads from the drawing back to the place, on both sides and at every size', () => {
    const property = fc.property(
      fc.constantFrom('rear', 'front' as const),
      fc.constantFrom(1, 2, 4),
      anyMm,
      anyMm,
      (side, zoom, xMm, yMm) => {
        const frame = frameOf(size, side, box, zoom);
        const back = frame.placeAt(frame.at({ xMm, yMm }));
        expect(back.xMm).toBeCloseTo(xMm, 9);
        expect(back.yMm).toBeCloseTo(yMm, 9);
        const rear = frame.rearAt(frame.atRear({ x: xMm, y: yMm }));
        expect(rear.x).toBeCloseTo(xMm, 9);
        expect(rear.y).toBeCloseTo(yMm, 9);
      },
    );
    fc.assert(property, runs(200));
  });

  it('has one point for a place as the document has it and as it is seen from the rear', () => {
    for (const side of ['rear', 'front'] as const) {
      const frame = frameOf(size, side, box, 1);
      const [a, b] = [
        frame.at({ xMm: 10, yMm: 38 }),
        frame.atRear({ x: size.widthMm - 10, y: size.heightMm - 38 }),
      ];
      expect(b.x).toBeCloseTo(a.x, 9);
      expect(b.y).toBeCloseTo(a.y, 9);
    }
  });

  it('says how a photograph is drawn, turned over for the front', () => {
    const laid = { mirrored: true, a: 0.1, b: 0, dx: 5, dy: 6 };
    expect(transformOf(frameOf(size, 'rear', box, 1), laid)).toMatch(
      /matrix\(0\.1 0 0 0\.1 5 6\) scale\(-1 1\)$/,
    );
    expect(transformOf(frameOf(size, 'front', box, 1), laid)).toContain('translate(50.8 0) scale(-1 1)');
  });
});

describe('arrow keys on the drawing', () => {
  const at = { xMm: 12.7, yMm: 38 };
  const press = (key: string, part: { altKey?: boolean; shiftKey?: boolean } = {}) => ({
    key,
    altKey: false,
    shiftKey: false,
    ...part,
  });

  it('move what one sees, so that right is left of the document from the rear', () => {
    expect(nudged(at, 'rear', press('ArrowRight'))).toEqual({ xMm: 12.2, yMm: 38 });
    expect(nudged(at, 'front', press('ArrowRight'))).toEqual({ xMm: 13.2, yMm: 38 });
    expect(nudged(at, 'rear', press('ArrowUp', { altKey: true }))).toEqual({ xMm: 12.7, yMm: 38.1 });
    expect(nudged(at, 'rear', press('ArrowDown', { shiftKey: true }))).toEqual({ xMm: 12.7, yMm: 35.46 });
    expect(nudged(at, 'rear', press('Home'))).toBeUndefined();
  });
});

describe('features that a photograph catches on', () => {
  it('are the corners and the mounting holes, as seen from the rear', () => {
    // Of 10 HP: 50.8 by 128.4 mm; holes 7.62 mm from either side and 2.95 mm from the edges.
    const features = featuresOf(size, { widthHp: 10, heightU: 3 });
    expect(features).toHaveLength(8);
    expect(features).toContainEqual({ x: 50.8, y: 128.4 });
    const near = features.some(({ x, y }) => Math.abs(x - 7.62) < 1e-9 && Math.abs(y - 2.95) < 1e-9);
    expect(near).toBe(true);
  });
});
