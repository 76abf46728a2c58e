import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  mapped,
  mirroredAbout,
  type PlanePoint,
  type Similarity,
  scaledTo,
  scaleOf,
  shiftedTo,
  throughPoints,
  unmapped,
} from '../../src/geometry/similarity.ts';
import { runs } from '../support/runs.ts';

const AS_IT_IS: Similarity = { mirrored: false, a: 1, b: 0, dx: 0, dy: 0 };

const figure = fc.double({ min: -500, max: 500, noNaN: true });
const anyPoint: fc.Arbitrary<PlanePoint> = fc.record({ x: figure, y: figure });
const anySimilarity: fc.Arbitrary<Similarity> = fc
  .record({ mirrored: fc.boolean(), scale: fc.double({ min: 0.05, max: 20, noNaN: true }), turn: figure })
  .chain(({ mirrored, scale, turn }) =>
    fc.record({
      mirrored: fc.constant(mirrored),
      a: fc.constant(scale * Math.cos(turn)),
      b: fc.constant(scale * Math.sin(turn)),
      dx: figure,
      dy: figure,
    }),
  );

function expectNear(a: PlanePoint, b: PlanePoint): void {
  expect(a.x).toBeCloseTo(b.x, 5);
  expect(a.y).toBeCloseTo(b.y, 5);
}

describe('laying a picture by two points', () => {
  it('scales two points to a typed distance, as worked by hand', () => {
    // (100, 200) and (400, 600) are 300 and 400 px apart, so 500 px by Pythagoras; 50 mm are 0.1 mm to the px.
    // The first point stays at (100, 200); the second goes 0.1 × (300, 400) further, to (130, 240).
    const laid = scaledTo(AS_IT_IS, { x: 100, y: 200 }, { x: 400, y: 600 }, 50);
    if (!laid) throw new Error('not laid');
    expect(scaleOf(laid)).toBeCloseTo(0.1, 12);
    expectNear(mapped(laid, { x: 100, y: 200 }), { x: 100, y: 200 });
    expectNear(mapped(laid, { x: 400, y: 600 }), { x: 130, y: 240 });
  });

  it('turns and scales two points onto two others, as worked by hand', () => {
    // From (0, 0) and (10, 0) to (5, 5) and (5, 25): a quarter turn and twice as large. Then (0, 10) is 10 px from the
    // first at a right angle to the second, so it lies 20 mm from (5, 5), a quarter turn on from (5, 25): (−15, 5).
    const laid = throughPoints(
      false,
      { from: { x: 0, y: 0 }, to: { x: 5, y: 5 } },
      { from: { x: 10, y: 0 }, to: { x: 5, y: 25 } },
    );
    if (!laid) throw new Error('not laid');
    expect(scaleOf(laid)).toBeCloseTo(2, 12);
    expectNear(mapped(laid, { x: 0, y: 10 }), { x: -15, y: 5 });
  });

  it('mirrors first, where it is a picture from the other side', () => {
    // Mirrored, (10, 0) lies to the left of (0, 0); both land where they belong all the same.
    const laid = throughPoints(
      true,
      { from: { x: 0, y: 0 }, to: { x: 50, y: 0 } },
      { from: { x: 10, y: 0 }, to: { x: 40, y: 0 } },
    );
    expect(laid).toMatchObject({ mirrored: true, a: 1, dx: 50 });
    if (laid) expectNear(mapped(laid, { x: 0, y: 7 }), { x: 50, y: 7 });
  });

  it('refuses two points that are one, and no distance', () => {
    const at = { x: 3, y: 4 };
    expect(throughPoints(false, { from: at, to: { x: 0, y: 0 } }, { from: at, to: at })).toBeUndefined();
    expect(scaledTo(AS_IT_IS, at, at, 10)).toBeUndefined();
    expect(scaledTo(AS_IT_IS, at, { x: 0, y: 0 }, 0)).toBeUndefined();
  });

  it('takes both points where they belong, whichever they are', () => {
    const property = fc.property(
      fc.boolean(),
      fc.tuple(anyPoint, anyPoint),
      fc.tuple(anyPoint, anyPoint),
      (mirrored, [p, q], [to, other]) => {
        fc.pre(Math.hypot(p.x - q.x, p.y - q.y) > 1 && Math.hypot(to.x - other.x, to.y - other.y) > 1);
        const laid = throughPoints(mirrored, { from: p, to }, { from: q, to: other });
        if (!laid) throw new Error('not laid');
        expectNear(mapped(laid, p), to);
        expectNear(mapped(laid, q), other);
      },
    );
    fc.assert(property, runs(300));
  });

  it('goes there and back, shifts one point, and is itself when mirrored twice', () => {
    const property = fc.property(anySimilarity, anyPoint, anyPoint, figure, (by, point, to, x) => {
      expectNear(unmapped(by, mapped(by, point)), point);
      expectNear(mapped(shiftedTo(by, point, to), point), to);
      const over = mapped(mirroredAbout(by, x), point);
      expectNear(over, { x: 2 * x - mapped(by, point).x, y: mapped(by, point).y });
      expectNear(mapped(mirroredAbout(mirroredAbout(by, x), x), point), mapped(by, point));
    });
    fc.assert(property, runs(300));
  });
});
