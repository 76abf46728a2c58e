import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Viewport } from '../../../app/canvas/model.ts';
import {
  clampViewport,
  fitViewport,
  panBy,
  SCALES,
  turnViewport,
  zoomAbout,
} from '../../../app/canvas/viewport.ts';
import { sheetMm } from '../../../src/drawing/sheet.ts';
import { deriveRack, mixedTake, rackTake } from './rack.ts';

const { rows } = deriveRack(mixedTake()).places;

const DESK = { width: 1440, height: 900 };
const PHONE = { width: 390, height: 844 };

const px = fc.double({ min: -5000, max: 5000, noNaN: true });
const viewports: fc.Arbitrary<Viewport> = fc.record({
  scale: fc.double({ min: SCALES.least, max: SCALES.most, noNaN: true }),
  x: px,
  y: px,
});

const under = ({ scale, x, y }: Viewport, screenX: number, screenY: number) => [
  (screenX - x) / scale,
  (screenY - y) / scale,
];

describe('zooming', () => {
  it('leaves the place under the point where it is', () => {
    fc.assert(
      fc.property(
        viewports,
        fc.double({ min: 0.2, max: 5, noNaN: true }),
        px,
        px,
        (viewport, factor, x, y) => {
          const [mmX, mmY] = under(viewport, x, y) as [number, number];
          const [nextX, nextY] = under(zoomAbout(viewport, factor, x, y), x, y) as [number, number];
          expect(nextX).toBeCloseTo(mmX, 4);
          expect(nextY).toBeCloseTo(mmY, 4);
        },
      ),
    );
  });

  it('stops at the bounds of the scale, and moves nothing there', () => {
    const most: Viewport = { scale: SCALES.most, x: 10, y: 20 };
    expect(zoomAbout(most, 2, 100, 100)).toEqual(most);
    expect(zoomAbout({ scale: 1, x: 0, y: 0 }, 1e-6, 0, 0).scale).toBe(SCALES.least);
  });
});

describe('keeping the rack in sight', () => {
  it('leaves part of the sheet on the screen however far it is pushed', () => {
    fc.assert(
      fc.property(viewports, (viewport) => {
        const { scale, x, y } = clampViewport(viewport, rows, PHONE);
        const sheet = sheetMm(rows);
        expect(x).toBeLessThan(PHONE.width);
        expect(y).toBeLessThan(PHONE.height);
        expect(x + sheet.width * scale).toBeGreaterThan(0);
        expect(y + sheet.height * scale).toBeGreaterThan(0);
      }),
    );
  });

  it('changes nothing the second time', () => {
    fc.assert(
      fc.property(viewports, (viewport) => {
        const once = clampViewport(viewport, rows, DESK);
        expect(clampViewport(once, rows, DESK)).toEqual(once);
      }),
    );
  });

  it('pans freely within', () => {
    const fitted = fitViewport(rows, 'rear', DESK);
    const panned = panBy(fitted, 30, -20);
    expect(clampViewport(panned, rows, DESK)).toEqual(panned);
  });
});

describe('fitting', () => {
  const insets = { top: 0, right: 362, bottom: 12, left: 0 };

  it('fits the widest row beside what covers the canvas', () => {
    const { scale, x } = fitViewport(rows, 'rear', DESK, insets);
    expect(x).toBeGreaterThanOrEqual(0);
    expect(x + sheetMm(rows).width * scale).toBeLessThanOrEqual(DESK.width - insets.right + 1e-6);
  });

  it('stays legible on a phone, and starts at the front left on either side', () => {
    const front = fitViewport(rows, 'front', PHONE);
    const rear = fitViewport(rows, 'rear', PHONE);
    expect(front.scale).toBeGreaterThanOrEqual(1);
    expect(front.x).toBe(0);
    expect(rear.x + sheetMm(rows).width * rear.scale).toBeCloseTo(PHONE.width, 6);
  });

  it('does not shrink below what can be read for the sake of many rows', () => {
    const many = deriveRack(rackTake(200)).places.rows;
    expect(fitViewport(many, 'rear', DESK).scale).toBeGreaterThanOrEqual(1);
  });
});

describe('turning', () => {
  it('keeps in the middle what is there, and comes back', () => {
    fc.assert(
      fc.property(viewports, (viewport) => {
        const turned = turnViewport(viewport, rows, DESK);
        const width = sheetMm(rows).width * viewport.scale;
        const middle = DESK.width / 2;
        expect(middle - turned.x).toBeCloseTo(width - (middle - viewport.x), 6);
        expect(turnViewport(turned, rows, DESK).x).toBeCloseTo(viewport.x, 6);
      }),
    );
  });
});
